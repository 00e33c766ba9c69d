package page

import (
	"errors"
	"fmt"
	"net/http"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/repair"
)

// mostChanges is how many keys one request may set.
const mostChanges = 200

// edits puts values into a design's text.
type edits struct {
	Text string   `json:"text"`
	Set  []change `json:"set"`
}

// change is a key's new value; null remarks it out.
type change struct {
	Key   string `json:"key"`
	Value any    `json:"value" ts:"Value"`
}

// edited is a text after its changes.
type edited struct {
	Text   string   `json:"text"`
	Mended []string `json:"mended"` // what was mended for them, in sentences without a full stop
}

func (p *Page) edit(_ http.ResponseWriter, _ *http.Request, in edits) (any, error) {
	if len(in.Set) > mostChanges {
		return nil, &failure{http.StatusBadRequest, "too many changes at once"}
	}
	if err := p.plans.refuse(in.Text, in.Set); err != nil {
		return nil, err
	}
	changes := make([]repair.Change, len(in.Set))
	for i, s := range in.Set {
		changes[i] = repair.Change(s)
	}
	out, err := repair.Edit(p.plans.name, []byte(in.Text), changes)
	if err != nil {
		return nil, faultyFor(faultOf(err))
	}
	return edited{string(out.Text), append([]string{}, out.Mended...)}, nil
}

// saving is a text for the design's file.
type saving struct {
	Text string `json:"text"`
	Read string `json:"read"` // what the file was when it was read
}

// saved is what the file is now.
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

// cured adds to what is wrong with a text how one press mends it, where one does.
func (p *Page) cured(err error, text string) error {
	var faults *faulty
	var found judged
	if errors.As(err, &found); !errors.As(err, &faults) || found.outside {
		return err
	}
	out, ok := repair.Cure(p.plans.name, []byte(text))
	if !ok && found.ways {
		out, ok = fewerWalls(p.plans.name, text)
	}
	if !ok {
		return err
	}
	return &faulty{faults.Words, faults.Faults, &edited{string(out.Text), out.Mended}}
}

// fewerWalls follows the sound in a room over as many walls as a page can: what is too
// much for it is no fault of the design.
func fewerWalls(name, text string) (repair.Result, bool) {
	d, err := design.Parse(name, []byte(text))
	if err != nil || !d.Room.Present {
		return repair.Result{}, false
	}
	a, err := layout.Build(d)
	if err != nil || len(a.Mounts)*reflections(a) <= mostWays {
		return repair.Result{}, false
	}
	was := a.Room.Order
	for a.Room.Order > 0 && len(a.Mounts)*reflections(a) > mostWays {
		a.Room.Order--
	}
	out, err := design.Set([]byte(text), "room.order", a.Room.Order)
	said := fmt.Sprintf("order becomes %d in place of %d: a page can follow the sound of %d drivers over no more walls", a.Room.Order, was, len(a.Mounts))
	return repair.Result{Text: out, Mended: []string{said}}, err == nil && len(a.Mounts)*reflections(a) <= mostWays
}
