package page

import (
	"net/http"

	"pappus/layout/design"
)

// mostChanges is how many keys one request may set.
const mostChanges = 200

type edits struct {
	Text string `json:"text"`
	Set  []struct {
		Key   string `json:"key"`
		Value any    `json:"value"`
	} `json:"set"`
}

func (p *Page) edit(_ http.ResponseWriter, r *http.Request, in edits) (any, error) {
	if len(in.Set) > mostChanges {
		return nil, &failure{http.StatusBadRequest, "too many changes at once"}
	}
	text := []byte(in.Text)
	for _, s := range in.Set {
		if err := r.Context().Err(); err != nil {
			return nil, err
		}
		var err error
		if text, err = design.Set(text, s.Key, s.Value); err != nil {
			return nil, faulty{faultOf(err)}
		}
	}
	return asked{string(text)}, nil
}

type saving struct {
	Text string `json:"text"`
	Read string `json:"read"`
}

type saved struct {
	Saved bool   `json:"saved"`
	Read  string `json:"read"`
}

func (p *Page) save(_ http.ResponseWriter, _ *http.Request, in saving) (any, error) {
	read, err := p.disk.save([]byte(in.Text), in.Read)
	if err != nil {
		return nil, err
	}
	return saved{true, read}, nil
}
