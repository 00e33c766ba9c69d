package page

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net/http"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/wiring"
)

// mostBody is the most that a request may hold, in bytes: a text of 1 MB, written
// as JSON.
const mostBody = 3 << 20

// ErrAsked is wrapped by errors of what cannot be for what was asked: a way through
// the body, say.
var ErrAsked = errors.New("not possible")

// failure is an error with its status.
type failure struct {
	status int
	words  string
}

func (f *failure) Error() string { return f.words }

// faulty is a design that cannot be planned.
type faulty struct {
	Words  string  `json:"error"`
	Faults []fault `json:"faults"`
	Cure   *edited `json:"cure,omitempty"` // how one press mends it
}

func faultyFor(faults ...fault) *faulty { return &faulty{"the design has faults", faults, nil} }

func (f *faulty) Error() string { return f.Words }

// judged is faults, and what they are of.
type judged struct {
	*faulty
	outside bool // among them are files that are not to be read
	ways    bool // there are too many ways of sound
}

func (j judged) Unwrap() error { return j.faulty }

// fault is one thing that is wrong with a design.
type fault struct {
	Line   int    `json:"line"` // 0: none
	Key    string `json:"key"`  // may be empty
	Value  string `json:"value"`
	Reason string `json:"reason"`
}

// faultOf puts an error of a design, or of planning it, beside its key.
func faultOf(err error) fault {
	var d *design.Error
	if errors.As(err, &d) {
		return fault{d.Line, d.Key, d.Value, oneLine(d.Reason)}
	}
	f := fault{Reason: prose.Error(err)}
	if errors.Is(err, wiring.ErrLoad) {
		f.Key = "wiring.minimum_load_ohm"
	}
	return f
}

// oneLine keeps a text to one line.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// answer makes a handler of a function that takes a request's body. The answer is
// sent as JSON unless the function has sent it itself and returns nil.
func answer[In any](f func(w http.ResponseWriter, r *http.Request, in In) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		var in In
		if err := receive(r, &in); err != nil {
			fail(w, err)
			return
		}
		out, err := f(w, r, in)
		switch {
		case err != nil:
			fail(w, err)
		case out != nil:
			reply(w, out)
		}
	}
}

// receive reads one JSON value from a request.
func receive(r *http.Request, to any) error {
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != "application/json" {
		return &failure{http.StatusUnsupportedMediaType, "must be application/json"}
	}
	if err := decode(r.Body, to); err != nil {
		return &failure{http.StatusBadRequest, prose.Error(err)}
	}
	return nil
}

// whole has a request's body read, of so many bytes at most, before it takes one of the places that
// limit gives: who sends half a request keeps nobody else from being answered.
func whole(most int64, large string, limit func(http.HandlerFunc) http.HandlerFunc) func(http.HandlerFunc) http.HandlerFunc {
	return func(next http.HandlerFunc) http.HandlerFunc {
		next = limit(next)
		return func(w http.ResponseWriter, r *http.Request) {
			body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, most))
			switch tooLarge := new(http.MaxBytesError); {
			case errors.As(err, &tooLarge):
				turnAway(w, r, &failure{http.StatusRequestEntityTooLarge, large})
			case err != nil:
				turnAway(w, r, &failure{http.StatusBadRequest, "the request ends before its end"})
			default:
				r.Body = io.NopCloser(bytes.NewReader(body))
				next(w, r)
			}
		}
	}
}

// decode reads one JSON value that has no other fields than are known.
func decode(r io.Reader, to any) error {
	d := json.NewDecoder(r)
	d.DisallowUnknownFields()
	if err := d.Decode(to); err != nil {
		return err
	}
	if _, err := d.Token(); err != io.EOF {
		return errors.New("more than one JSON value")
	}
	return nil
}

// reply sends a value as JSON, whole or not at all.
func reply(w http.ResponseWriter, v any) {
	var b bytes.Buffer
	if err := encode(&b, v); err != nil {
		fail(w, err)
		return
	}
	send(w, http.StatusOK, b.Bytes())
}

func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(v)
}

func send(w http.ResponseWriter, status int, body []byte) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(body) // who is gone does not miss it
}

// fail sends what went wrong.
func fail(w http.ResponseWriter, err error) {
	status, body := http.StatusInternalServerError, any(map[string]string{"error": prose.Error(err)})
	var known *failure
	var faults *faulty
	switch {
	case errors.As(err, &known):
		status = known.status
	case errors.As(err, &faults):
		status, body = http.StatusUnprocessableEntity, faults
	case errors.Is(err, ErrAsked):
		status = http.StatusBadRequest
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		status = http.StatusServiceUnavailable
	}
	var b bytes.Buffer
	_ = encode(&b, body) // words alone
	send(w, status, b.Bytes())
}
