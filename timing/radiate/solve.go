package radiate

import (
	"bytes"
	"cmp"
	"context"
	"encoding/gob"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"sync"

	"pappus/layout"
	"pappus/timing/boundary"
	"pappus/timing/store"

	lru "github.com/hashicorp/golang-lru/v2"
	"gonum.org/v1/gonum/spatial/r3"
)

// solvedVersion goes up where the same body would be solved otherwise.
const solvedVersion = 2

// LongestSeconds is the longest that a body may take on two cores, by forecast: where its top
// would take longer, it is solved up to a lower one. Five minutes are a tea's time, and what a
// library's laptop does while one prints the sheets.
const LongestSeconds = 300

// speedAt20 is the speed of sound in m/s at 20 degrees C (ISO 9613-1): by it the top in Hz is made
// a wavenumber, so that a body that is solved for need not be so again in other weather.
const speedAt20 = 343.2

// solving is all that the true field of a body hangs on. Places that are left empty are pistons
// too, in the order of their numbers, so that drivers may be left out and put back.
type solving struct {
	Faces  [][]r3.Vec // of a body with faces, m
	Radius float64    // of a ball
	Cut    float64    // its height; below -Radius where it is not cut
	Centre r3.Vec     // of the ball that stands for the body
	Inside r3.Vec
	Plane  boundary.Plane
	Piston []boundary.Piston
	Top    float64 // rad/m
}

// newSolving returns that of an array, and the index of the piston of each mount, on any body, by its number.
func newSolving(a *layout.Array) (solving, map[int]int) {
	b := a.Body
	x := solving{Radius: b.Radius, Cut: -2 * b.Radius, Centre: b.BallCentre, Inside: b.VolumeCentroid(), Plane: plane(a)}
	if b.IsCut && b.IsBall() {
		x.Cut = b.Cut
	}
	for _, face := range b.Faces {
		corners := make([]r3.Vec, len(face.Corners))
		for i, c := range face.Corners {
			corners[i] = b.Vertices[c]
		}
		x.Faces = append(x.Faces, corners)
	}
	own := a.Own()
	places := slices.Concat(own, a.Empty)
	slices.SortFunc(places, func(a, b layout.Mount) int { return cmp.Compare(a.ID, b.ID) })
	index := map[int]int{}
	at := map[r3.Vec]int{}
	for i, m := range places {
		at[m.Point], index[m.ID] = i, i
		x.Piston = append(x.Piston, boundary.Piston{At: m.Point, Axis: m.Normal, Radius: a.Driver.ConeRadius})
	}
	for _, m := range a.Mounts[len(own):] { // other bodies have the first one's again
		index[m.ID] = at[m.Point]
	}
	x.Top = 2 * math.Pi * a.Timing.SolveTo * joins / speedAt20
	return x, index
}

// plane returns the surface that one body stands over, hangs below or is fixed to, as the body
// has it; none where there are several bodies, whose images are free ones.
func plane(a *layout.Array) boundary.Plane {
	if !a.Surface.Near || len(a.Bodies()) > 1 {
		return boundary.Plane{}
	}
	flip, shift := a.Surface.Mirror()
	normal := r3.Vec{X: (1 - flip.X) / 2, Z: (1 - flip.Z) / 2}
	height := r3.Dot(shift, normal) / 2
	if a.Surface.On == layout.OnCeiling {
		normal, height = r3.Scale(-1, normal), -height
	}
	p := a.Bodies()[0]
	return boundary.Plane{Present: true, Normal: p.In(normal), Height: height - r3.Dot(normal, p.At)}
}

// problem returns the patches and the rest.
func (x *solving) problem() *boundary.Problem {
	p := &boundary.Problem{Inside: x.Inside, Centre: x.Centre, Plane: x.Plane}
	if x.Faces == nil {
		p.Patches = boundary.CutBall(x.Radius, x.Cut)
	} else {
		p.Patches = boundary.Polyhedron(x.Faces)
	}
	return p
}

// key is that of the kept result.
func (x *solving) key() (store.Key, error) {
	input, err := json.Marshal(x)
	return store.KeyOf("field of a body", solvedVersion, input), err
}

// Kept is where solved fields are kept; the zero Store keeps none. It is set before the first is
// asked for.
var Kept store.Store

// held are the fields that were asked for last: each is some 10 MB.
var held = func() *lru.Cache[store.Key, *boundary.Table] {
	c, err := lru.New[store.Key, *boundary.Table](4)
	if err != nil {
		panic(err) // of a size that is none
	}
	return c
}()

// one lets one be solved at a time: each takes all cores.
var one sync.Mutex

// FieldKey names the field that an array's body is to be solved for, in the model "body": arrays
// that share it have the same. The error tells of a body whose measures are no numbers.
func FieldKey(a *layout.Array) (store.Key, error) {
	x, _ := newSolving(a)
	return x.key()
}

// IsSolved tells whether the field of an array's model is at hand: that of the body, in the
// model "body", has been solved for or kept.
func IsSolved(a *layout.Array) bool {
	if a.Timing.Model != BodyModel {
		return true
	}
	key, err := FieldKey(a)
	return err == nil && lookUp(key) != nil
}

// Solve solves for the field of an array's body, where its model is "body" and it is not at
// hand, and keeps it. progress may be nil; it is told the part that is done and the seconds that
// the whole takes by forecast. The error is that of ctx, or tells of a body that cannot be
// solved.
func Solve(ctx context.Context, a *layout.Array, progress func(done, seconds float64)) error {
	if a.Timing.Model != BodyModel {
		return nil
	}
	x, _ := newSolving(a)
	_, err := x.table(ctx, progress)
	return err
}

// foretold is the part of the work after which what it took tells better than the forecast how
// long the rest takes: the first steps are over in no time, and hardly tell.
const foretold = 0.1

// Left returns the seconds that are left of work of which a part is done: by a forecast of the
// whole at first, and then by what it has taken so far.
func Left(done, forecast, taken float64) float64 {
	if done < foretold {
		return forecast * (1 - done)
	}
	return taken / done * (1 - done)
}

// table returns the field, from where it is kept if it is there.
func (x *solving) table(ctx context.Context, progress func(done, seconds float64)) (*boundary.Table, error) {
	key, err := x.key()
	if err != nil {
		return nil, err
	}
	if t := lookUp(key); t != nil {
		return t, nil
	}
	one.Lock()
	defer one.Unlock()
	if t := lookUp(key); t != nil { // another did it meanwhile
		return t, nil
	}
	solver, err := x.problem().NewSolver(x.Piston)
	if err != nil {
		return nil, err
	}
	t, err := solver.Table(ctx, boundary.Plan{Top: x.Top, Most: LongestSeconds}, progress)
	if err != nil {
		return nil, err
	}
	held.Add(key, t)
	if data, err := pack(t); err == nil {
		_ = Kept.Put(key, data) // where it cannot be kept it is solved again another day
	}
	return t, nil
}

// lookUp returns a field that is at hand, or nil.
func lookUp(key store.Key) *boundary.Table {
	if t, ok := held.Get(key); ok {
		return t
	}
	data, ok := Kept.Get(key)
	if !ok {
		return nil
	}
	t, err := unpack(data)
	if err != nil {
		return nil
	}
	held.Add(key, t)
	return t
}

// packed is a table as it is kept: its waves, one after another.
type packed struct {
	Step, Reach float64
	Degree      []int
	Off         []float64
	Pistons     int
	Waves       []byte // by store.Pack
}

func pack(t *boundary.Table) ([]byte, error) {
	p := packed{Step: t.Step, Reach: t.Reach, Degree: t.Degree, Off: t.Off, Pistons: len(t.Waves[0])}
	var all []complex128
	for _, row := range t.Waves {
		for _, one := range row {
			for _, v := range one {
				all = append(all, complex128(v))
			}
		}
	}
	var err error
	if p.Waves, err = store.Pack(all); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	err = gob.NewEncoder(&out).Encode(p)
	return out.Bytes(), err
}

// errPacked is a table that nobody packed.
var errPacked = errors.New("not the waves of a body")

func unpack(data []byte) (*boundary.Table, error) {
	var p packed
	if err := gob.NewDecoder(bytes.NewReader(data)).Decode(&p); err != nil {
		return nil, err
	}
	if !(p.Step > 0 && p.Reach > 0) || len(p.Off) < 2 || len(p.Degree) != len(p.Off) || p.Pistons < 1 || p.Pistons > len(p.Waves) {
		return nil, errPacked
	}
	t := &boundary.Table{Step: p.Step, Reach: p.Reach, Degree: p.Degree, Off: p.Off}
	all, err := store.Unpack(p.Waves)
	if err != nil {
		return nil, err
	}
	for _, degree := range p.Degree {
		if degree < 0 || degree > len(all) || len(all)/p.Pistons < boundary.Wide(degree) {
			return nil, errPacked
		}
		row, wide := make([][]complex64, p.Pistons), boundary.Wide(degree)
		for i := range row {
			row[i] = make([]complex64, wide)
			for j, v := range all[:wide] {
				row[i][j] = complex64(v)
			}
			all = all[wide:]
		}
		t.Waves = append(t.Waves, row)
	}
	return t, nil
}
