package page

import (
	"context"
	"embed"
	"io/fs"
	"net/http"
	"net/netip"
	"sync"

	"pappus/layout/design"
	"pappus/render/outdir"
	"pappus/timing"
	"pappus/timing/verdict"

	"gonum.org/v1/gonum/spatial/r3"
)

//go:generate go run ./bundle

//go:embed built
var built embed.FS

// Options is what a page is made of.
type Options struct {
	Path    string // of the design; empty: the built-in demo, which cannot be saved
	Version string // of the program, for people
	Found   *Found // what a search found, to choose from; nil: nothing

	// What can be heard and had, in the order in which it is offered.
	Programmes, Cases, Files []Named

	// Stems returns what each channel gives at a place in m, for some cases. Errors may wrap
	// ErrAsked, as those of Loudness may.
	Stems func(p *timing.Spot, at r3.Vec, cases []string, h Hearing) (*Stems, error)
	// Loudness returns by which factors all cases of the plan are equally loud there.
	Loudness func(ctx context.Context, p *timing.Spot, at r3.Vec, h Hearing) (map[string]float64, error)
	// Programme returns what is played.
	Programme func(name string) (Sound, error)
	Pace      float64 // m/s, of who walks
	// Measure holds recordings of an array that plays a case against a plan. Whatever is
	// wrong with them is its error.
	Measure func(ctx context.Context, p *timing.Plan, recorded []verdict.Recording, played timing.Case) (verdict.Found, error)
	// Write lists the files of one name of Files.
	Write func(what string, p *timing.Plan) ([]outdir.File, error)
}

// Named is something to choose, by its name, and what people call it.
type Named struct {
	Name  string `json:"name"`
	Words string `json:"words"`
	Seats bool   `json:"seats,omitempty"` // only where there are several seats
}

// Page is the page's server side; it is an http.Handler.
type Page struct {
	options Options
	plans   *plans
	solver  *solver // of bodies' fields
	maker   *solver // of printed parts
	kits    kits
	moved   elsewhere
	disk    disk
	ticks   ticks
	lock    lock
	sockets struct{ live, watch, solve sockets }
	phone   phoneAnswer   // how a phone comes to the bench
	working chan struct{} // heavy work
	opening sync.Mutex    // held while a plan is made ahead
	handler http.Handler
}

// How much may go on at once.
const (
	mostWork     = 2
	mostRequests = 16
	mostSockets  = 8
)

const manyRequests = "too many requests at once; try again"

// New returns a page. The design at the path must be readable; a fault in it is
// for the page to show.
func New(o Options) (*Page, error) {
	p := &Page{
		options: o,
		plans:   newPlans(o.Path),
		solver:  newSolver(),
		maker:   newSolver(),
		kits:    newKits(),
		moved:   elsewhere{kept: lastUsed[movedTo, *timing.Spot](mostMoved)},
		disk:    disk{path: o.Path},
		ticks:   ticksOf(o.Path),
		phone:   phoneAnswer{Code: []string{}},
		lock: newLock("/", "the program was started anew, or this browser was not here yet: open the address that the program printed when it started, "+
			"in this browser; a page of it that is open here already then goes on by itself"),
		working: make(chan struct{}, mostWork),
	}
	p.plans.own = p.disk.own
	for _, s := range []*sockets{&p.sockets.live, &p.sockets.watch, &p.sockets.solve} {
		s.pulse = pulse
	}
	if o.Path != "" {
		if _, err := p.disk.load(); err != nil {
			return nil, err
		}
	}
	files, err := fs.Sub(built, "built")
	if err != nil {
		return nil, err
	}
	few := atMost(mostRequests, manyRequests)
	mux, asking := http.NewServeMux(), whole(mostBody, "too large; at most 1 MB of text", few)
	mux.Handle("GET /", http.FileServerFS(files))
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, r *http.Request) {
		go p.ahead(context.WithoutCancel(r.Context()))
		http.ServeFileFS(w, r, files, "index.html")
	})
	for _, view := range []string{"bench", "book"} {
		mux.HandleFunc("GET /"+view, func(w http.ResponseWriter, r *http.Request) { http.ServeFileFS(w, r, files, view+".html") })
	}
	mux.HandleFunc("GET /api/live", p.live)
	mux.HandleFunc("GET /api/watch", p.watch)
	mux.HandleFunc("GET /api/solve", p.solve)
	mux.Handle("GET /api/start", asking(p.start))
	mux.Handle("GET /api/found", asking(p.found))
	mux.Handle("GET /api/phone", asking(p.phoneLink))
	mux.Handle("GET /api/programme", asking(p.programme))
	// Recordings are held in memory, those of one measurement at a time.
	mux.Handle("POST /api/measure", few(atMost(1, "another measurement is being looked at; try again")(p.measure)))
	for path, answer := range map[string]http.HandlerFunc{
		"plan": answer(p.plan), "survey": answer(p.survey), "edit": answer(p.edit), "save": answer(p.save),
		"ears": answer(p.ears), "loudness": answer(p.loudness), "walk": answer(p.walk), "where": answer(p.where), "offered": answer(p.offered), "files": answer(p.files),
		"bench": answer(p.bench), "book": answer(p.book), "parts": answer(p.parts), "ticks": answer(p.readTicks), "tick": answer(p.tick), "merge": answer(p.merge),
	} {
		mux.Handle("POST /api/"+path, asking(answer))
	}
	way := door{loopback, "this page answers only to its own machine, as localhost", p.lock}
	p.handler = way.guard(mux)
	return p, nil
}

// Address is what to open in the browser where the page is served at a place: whoever has it is
// let in, and nobody else.
func (p *Page) Address(at netip.AddrPort) string { return p.lock.address(at) }

// AddressOnce is Address for one who opens it at once, on a command line say: it lets in the first
// who comes, within a minute, and nobody after.
func (p *Page) AddressOnce(at netip.AddrPort) string {
	return "http://" + at.String() + "/" + p.lock.ticket.anew()
}

// ServeHTTP answers a request.
func (p *Page) ServeHTTP(w http.ResponseWriter, r *http.Request) { p.handler.ServeHTTP(w, r) }

// atMost lets only so many requests in at once; others are told to come back, in words.
func atMost(n int, words string) func(http.HandlerFunc) http.HandlerFunc {
	in := make(chan struct{}, n)
	return func(next http.HandlerFunc) http.HandlerFunc {
		return func(w http.ResponseWriter, r *http.Request) {
			select {
			case in <- struct{}{}:
				defer func() { <-in }()
				next(w, r)
			default:
				w.Header().Set("Retry-After", "1")
				fail(w, &failure{http.StatusTooManyRequests, words})
			}
		}
	}
}

// work waits for its turn to do something heavy, or for ctx to end. The caller
// calls done afterwards.
func (p *Page) work(ctx context.Context) (done func(), err error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	select {
	case p.working <- struct{}{}:
		return func() { <-p.working }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// workOn plans a design's text and waits for a turn to do more with it, as work does.
func (p *Page) workOn(ctx context.Context, text string) (made *planned, done func(), err error) {
	if made, err = p.plans.of(ctx, text, p.work); err == nil {
		done, err = p.work(ctx)
	}
	return made, done, err
}

// ahead plans the design that a page which is being opened will ask for, beside the browser that
// still reads the page. It is for one at a time, and as patient as one who waits for an answer.
func (p *Page) ahead(ctx context.Context) {
	if !p.opening.TryLock() {
		return
	}
	defer p.opening.Unlock()
	ctx, stop := context.WithTimeout(ctx, patience)
	defer stop()
	if text, err := p.disk.read(); err == nil {
		_, _ = p.plans.of(ctx, string(text), p.work) // whoever asks for it is told what is wrong
	}
}

// start answers with what the page begins from.
func (p *Page) start(w http.ResponseWriter, r *http.Request) {
	text, err := p.disk.read()
	if err != nil {
		fail(w, err)
		return
	}
	out := started{
		Path: p.options.Path, Text: string(text), CanSave: p.options.Path != "", Version: p.options.Version, Read: hashOf(text),
		Programmes: p.options.Programmes, Cases: p.options.Cases, Files: p.options.Files, Walks: walkNames(), Found: p.options.Found != nil,
	}
	if d, err := design.Parse(p.plans.name, text); err == nil {
		out.Name = d.Name
	}
	for _, k := range design.Keys() {
		out.Keys = append(out.Keys, keyRow(k))
	}
	for _, t := range design.Tables() {
		out.Tables = append(out.Tables, tableRow(t))
	}
	reply(w, out)
}

// started is what the page begins from.
type started struct {
	Path       string     `json:"path"`
	Name       string     `json:"name"`
	Text       string     `json:"text"`
	CanSave    bool       `json:"can_save"`
	Version    string     `json:"version"`
	Read       string     `json:"read"` // what the file was when it was read, for save
	Programmes []Named    `json:"programmes"`
	Cases      []Named    `json:"cases"`
	Files      []Named    `json:"files"` // null: none
	Walks      []Named    `json:"walks"`
	Found      bool       `json:"found"` // there is what a search found
	Keys       []keyRow   `json:"keys"`
	Tables     []tableRow `json:"tables"`
}

// keyRow is one key of the design file, as a field of the form.
type keyRow struct {
	Path    string      `json:"key"`
	Table   string      `json:"table"`
	Name    string      `json:"name"`
	Label   string      `json:"label"` // what it is, in a few words
	Unit    string      `json:"unit"`
	Kind    design.Kind `json:"kind" ts:"Kind"`
	Low     float64     `json:"low"`
	High    float64     `json:"high"`
	Choices []string    `json:"choices"` // null: it is no choice
	Default any         `json:"default" ts:"Value"`
	Needed  bool        `json:"needed"`
	Remark  string      `json:"remark"`
}

// tableRow is one table of the design file.
type tableRow struct {
	Name     string `json:"table"`
	Optional bool   `json:"optional"` // it stands for a thing that is there only if the table is
	Many     bool   `json:"many"`     // there may be several, [[name]]
	Remark   string `json:"remark"`
}
