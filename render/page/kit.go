package page

import (
	"bytes"
	"compress/gzip"
	"context"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"math"
	"net/http"
	"slices"
	"strings"
	"time"

	"pappus/layout/design"
	"pappus/layout/poly"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/sheets"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/store"

	lru "github.com/hashicorp/golang-lru/v2"
)

// kitFiles is the name of the printed parts among files.
const kitFiles = "kit"

// mostKits is how many kits are kept: that of the design, and the one before, for undo.
const mostKits = 2

// kits keeps the last printed parts that were made.
type kits struct {
	kept *lru.Cache[store.Key, *folder.Kit]
}

func newKits() kits { return kits{lastUsed[store.Key, *folder.Kit](mostKits)} }

// noMatter are the tables of a design on which no printed part hangs, and its name.
var noMatter = []string{"name", "area", "channel", "coverage", "part", "processor", "protection", "search", "seat", "seats", "spot", "timing", "wiring"}

// kitKey names the printed parts of a design: the same for the same, though others may have another
// name and the same parts. What files say of the body is in the plan's array; the cable that leaves it has its cores.
func kitKey(d *design.Design, p *timing.Plan) store.Key {
	values := d.Values()
	for key := range values {
		if table, _, _ := strings.Cut(key, "."); slices.Contains(noMatter, strings.TrimRight(table, "[]0123456789")) {
			delete(values, key)
		}
	}
	var at []any
	for _, m := range p.Array.Mounts {
		at = append(at, []any{m.ID, document.TripleOf(9, 1, m.Point), document.TripleOf(9, 1, m.Normal)})
	}
	var body []triple
	for _, v := range p.Array.Body.Vertices {
		body = append(body, document.TripleOf(9, 1, v))
	}
	input, err := json.Marshal([]any{values, at, body, folder.Cores(p)})
	if err != nil {
		panic(err) // of a value that a file of a design cannot hold
	}
	return store.KeyOf("kit", 1, input)
}

// kitName is what the page calls a design's parts.
func kitName(made *planned) string { return hex.EncodeToString(made.kit[:8]) }

// held returns a design's parts; nil where they are not made.
func (k kits) held(made *planned) *folder.Kit {
	found, _ := k.kept.Get(made.kit)
	return found
}

// of returns a design's parts, if they are made.
func (k kits) of(made *planned) (folder.Kit, error) {
	found := k.held(made)
	if found == nil {
		return folder.Kit{}, &failure{http.StatusConflict, words.PartsNotMade}
	}
	return found.Of(made.plan)
}

// task is the making of a design's parts.
func (k kits) task(made *planned) task {
	return task{made.kit, func(ctx context.Context, progress func(done, seconds float64)) error {
		began := time.Now()
		kit, err := folder.NewKit(ctx, made.plan, func(n, of int) {
			done := float64(n) / float64(of)
			progress(done, time.Since(began).Seconds()/done)
		})
		if err == nil {
			k.kept.Add(made.kit, &kit)
		}
		return err
	}, words.MakingLeft, words.NotMade}
}

// partsHead is the printed parts, in front of their meshes.
type partsHead struct {
	Kit   string     `json:"kit"`   // as in planAnswer
	Apart number     `json:"apart"` // how far they are moved in the picture of the whole taken apart, over away_m
	Say   []string   `json:"say"`   // what they take, and what to mind, in sentences
	Parts []partHead `json:"parts"`
}

// partHead is one of them, with what its mesh is made of.
type partHead struct {
	document.KitPart
	Loose     bool   `json:"loose"`  // not where it goes in the whole: a jig, a cartridge, a test piece
	Fitted    bool   `json:"fitted"` // the loose part of that name where it goes: it is counted there
	Away      triple `json:"away_m"` // where it goes when the whole is taken apart
	Low       triple `json:"low_m"`  // the lowest of each coordinate
	Step      number `json:"step_m"`
	Corners   int    `json:"corners"`
	Triangles int    `json:"triangles"`
}

// parts sends the printed parts, once they are made.
func (p *Page) parts(w http.ResponseWriter, r *http.Request, in asked) (any, error) {
	made, done, err := p.workOn(r.Context(), in.Text)
	if err != nil {
		return nil, err
	}
	defer done()
	k, err := p.kits.of(made)
	if err != nil {
		return nil, err
	}
	head := partsHead{Kit: kitName(made), Apart: sheets.Explode, Say: k.Sentences(), Parts: []partHead{}}
	rows := k.Document(document.Written{}).Parts
	var meshes []byte
	for i, part := range slices.Concat(k.Parts(), k.Fitted()) {
		row, fitted := document.KitPart{Name: part.Name}, i >= len(rows)
		if !fitted {
			row = rows[i]
		}
		c := coarse(part.Mesh)
		head.Parts = append(head.Parts, partHead{row, part.Loose, fitted, document.TripleOf(6, 1, part.Away), c.low, c.step, len(c.corners), len(c.triangles)})
		meshes = c.append(meshes)
	}
	body, err := headed(head)
	if err != nil {
		return nil, err
	}
	sendPacked(w, r, append(body, meshes...))
	return nil, nil
}

// finest is the least step in m of corners that are sent: far finer than what can be seen.
const finest = 20e-6

// grid is a mesh whose corners are whole steps from its lowest ones.
type grid struct {
	low       triple
	step      number
	corners   [][3]uint16
	triangles [][3]uint32
}

// coarse puts a mesh's corners on a grid; those that fall together are one, and triangles that have
// no area then are left out.
func coarse(m poly.Mesh) grid {
	box := m.Bounds()
	size := box.Size()
	g := grid{low: document.TripleOf(6, 1, box.Min), step: document.To(9, max(finest, max(size.X, size.Y, size.Z)/(math.MaxUint16-1)))}
	index := make(map[[3]uint16]uint32, len(m.Vertices))
	at := make([]uint32, len(m.Vertices))
	for i, v := range m.Vertices {
		var c [3]uint16
		for k, x := range []float64{v.X, v.Y, v.Z} {
			c[k] = uint16(max(0, math.Round((x-g.low[k])/float64(g.step))))
		}
		n, ok := index[c]
		if !ok {
			n = uint32(len(g.corners))
			index[c], g.corners = n, append(g.corners, c)
		}
		at[i] = n
	}
	for _, t := range m.Triangles {
		if c := [3]uint32{at[t[0]], at[t[1]], at[t[2]]}; c[0] != c[1] && c[1] != c[2] && c[2] != c[0] {
			g.triangles = append(g.triangles, c)
		}
	}
	return g
}

// append puts the numbers of a mesh behind others.
func (g grid) append(to []byte) []byte {
	for _, c := range g.corners {
		for _, x := range c {
			to = binary.LittleEndian.AppendUint16(to, x)
		}
	}
	if len(g.corners)%2 == 1 {
		to = append(to, 0, 0)
	}
	for _, t := range g.triangles {
		for _, i := range t {
			to = binary.LittleEndian.AppendUint32(to, i)
		}
	}
	return to
}

// sendPacked sends bytes, packed where the browser takes that (gzip, RFC 9110, 8.4.1.3).
func sendPacked(w http.ResponseWriter, r *http.Request, body []byte) {
	if !strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
		sendBinary(w, body)
		return
	}
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	_, _ = z.Write(body) // a buffer takes all
	_ = z.Close()
	w.Header().Set("Content-Encoding", "gzip")
	sendBinary(w, b.Bytes())
}
