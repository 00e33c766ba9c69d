package preview

import (
	"context"
	"fmt"
	"sync"

	"pappus/preview/programme"
	"pappus/timing"

	"github.com/hashicorp/golang-lru/v2/simplelru"
	"gonum.org/v1/gonum/spatial/r3"
)

// mostKept is for two places, two programmes and two ways to listen.
const mostKept = 8

// Heard is a programme as it is heard in every case of CasesOf its plan.
type Heard struct {
	Plan         *timing.Spot
	Programme    string
	At           r3.Vec // m, of the head's middle
	TwoEars, Dry bool
}

// Kept matches sounds one by one, and keeps the gains of the last few. It may be used from
// several goroutines.
type Kept struct {
	mu    sync.Mutex
	gains *simplelru.LRU[Heard, []float64]
}

// NewKept returns a Kept that has matched nothing.
func NewKept() *Kept {
	gains, err := simplelru.NewLRU[Heard, []float64](mostKept, nil)
	if err != nil {
		panic(err) // of a size below 1
	}
	return &Kept{gains: gains}
}

// Gains returns the factors by which a Set makes the cases of a programme equally loud.
// Errors are those of NewSet.
func (k *Kept) Gains(ctx context.Context, h Heard) ([]float64, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if gains, ok := k.gains.Get(h); ok {
		return gains, nil
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	kind, ok := programme.Named(h.Programme)
	if !ok {
		return nil, fmt.Errorf("no programme is called %s", h.Programme)
	}
	who := Listener{TwoEars: h.TwoEars, Dry: h.Dry, At: &h.At}
	set, err := NewSet(ctx, h.Plan, who, CasesOf(h.Plan), FromProgramme(kind).lasting(0), Rate)
	if err != nil {
		return nil, err
	}
	k.gains.Add(h, set.gains)
	return set.gains, nil
}
