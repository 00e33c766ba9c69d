package verdict

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"mime/multipart"
	"path/filepath"
	"slices"
	"strings"

	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/spatial/r3"
)

// Takes are recordings of a sweep, and how they are held against a plan.
type Takes struct {
	Sweep   sweep.Sweep
	Options recording.Options
	Wire    Wire
	// Folder has the recordings, named as package sweep says; those of Also are elsewhere.
	Folder string
	prefix string  // of their names
	Also   []Place // further recordings of all channels
	// Read returns a recording's rate in Hz and channels; fs.ErrNotExist where there is none.
	Read  func(path string) (rate int, channels [][]float64, err error)
	Level LevelSetting
}

// Recording is a sound file that somebody recorded.
type Recording struct {
	Name string
	Open func() (multipart.File, error)
}

// Wire is where a stereo recording has the player's signal.
type Wire int8

// The places there are.
const (
	WireRight Wire = iota
	WireLeft
	NoneWired
)

// Place is where in the room, in m, a recording was made.
type Place struct {
	Path string
	At   r3.Vec
}

// Found is what recordings came to.
type Found struct {
	Channels *Channels           // nil: not recorded one by one
	Level    *Level              // nil: all channels were not recorded together
	Whole    *recording.Measured // that recording, at the spot; the mean of its repeats
	Turns    *Turns              // of Whole; nil where Level is
	Seats    *Seats              // nil: nothing was recorded at seats
	Faults   []Fact              // of recordings and channels
	Notes    []Fact              // what else to know

	repeats []recording.Measured // of Whole
}

// ErrNone is when there is nothing to judge.
var ErrNone = errors.New("no recordings")

// Judge holds all recordings against a plan. One that cannot be used is named, and the
// others are judged; without any that can the first one's error is returned.
func (t Takes) Judge(p *timing.Plan) (Found, error) {
	out, err := t.atSpot(p)
	if err != nil && !errors.Is(err, ErrNone) {
		return out, err
	}
	none := err
	if out.Seats, err = t.seats(p, &out); err != nil {
		return out, err
	}
	if none == nil || out.Seats != nil {
		return out, nil
	}
	for _, f := range out.Faults {
		if f.Code == SeatUnusable {
			return out, f.Err
		}
	}
	if slices.ContainsFunc(out.Notes, func(f Fact) bool { return f.Code == SeatAlone }) {
		return out, fmt.Errorf("%w but one at a seat, which alone does not tell what is lost there: record at others, too, or the channels one by one at the spot", ErrNone)
	}
	return out, none
}

// atSpot judges what was recorded at the spot.
func (t Takes) atSpot(p *timing.Plan) (Found, error) {
	var out Found
	each, err := t.each(p)
	if err != nil {
		return out, err
	}
	at, err := t.repeated(t.path(sweep.RecordedName), t.path(sweep.WholeName))
	whole := at.mean
	switch {
	case err == nil || errors.Is(err, fs.ErrNotExist):
	case each.heard == 0 || isCut(err):
		return out, err
	default:
		out.Faults = append(out.Faults, Fact{Code: WholeUnusable, Err: err})
	}
	if whole == nil && each.heard == 0 {
		if each.err != nil {
			return out, each.err
		}
		names := []string{sweep.RecordedName + ".wav", sweep.RecordedChannelName(p.Channels[0].ID, 1) + ".wav"}
		if p.Seating != nil {
			names = append(names, sweep.RecordedSeatName(1)+".wav")
		}
		return out, fmt.Errorf("%w: has neither %s", ErrNone, strings.Join(names, " nor "))
	}
	if len(p.Channels) == 1 && each.heard == 1 && whole == nil {
		whole = each.measured[0] // one channel is all there is
	}
	out.Faults = append(append(out.Faults, at.faults...), each.faults...)
	if each.heard > 0 && len(p.Channels) > 1 {
		v, err := OfChannels(p, each.measured, Setting{Case: t.Level.Case, Missing: each.missing, Repeats: each.repeats, Whole: whole})
		switch {
		case err == nil:
			out.Channels, out.Faults, out.Notes = &v, append(out.Faults, v.Faults...), v.Notes
		case whole == nil:
			return out, each.besideSilent(p, err)
		default:
			out.Faults = append(append(out.Faults, each.silent(p)...), Fact{Code: Uncompared, Err: err})
		}
	}
	switch {
	case whole == nil:
		return out, nil
	case out.Channels != nil && out.Channels.OtherCase:
		out.Notes = append(out.Notes, Fact{Code: LevelUnjudged})
		return out, nil
	}
	out.Whole, out.repeats = whole, at.each
	return out, t.level(p, &out)
}

// isCut tells whether an error says that nobody waits for an answer any more.
func isCut(err error) bool {
	return errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded)
}

// path returns that of a recording by its name.
func (t Takes) path(name string) string { return filepath.Join(t.Folder, t.prefix+name+".wav") }

// analyse and mean are those of recordings: what hangs on no threshold of this package is kept where many are
// tried.
var analyse, mean = recording.Analyse, recording.Mean

// analyse reads and analyses one recording, the first of some paths that is there.
func (t Takes) analyse(paths ...string) (*recording.Measured, error) {
	path, take, err := t.take(paths...)
	if err != nil {
		return nil, err
	}
	m, err := analyse(take, t.Sweep, t.Options)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	return &m, nil
}

// take reads a recording, the first of some paths that is there.
func (t Takes) take(paths ...string) (path string, take recording.Take, err error) {
	var rate int
	var channels [][]float64
	err = fs.ErrNotExist
	for _, path = range paths {
		if rate, channels, err = t.Read(path); !errors.Is(err, fs.ErrNotExist) {
			break
		}
	}
	if err != nil {
		return path, take, err
	}
	take = recording.Take{Rate: float64(rate), Samples: channels[0]}
	switch {
	case len(channels) == 1 || t.Wire == NoneWired:
	case t.Wire == WireLeft:
		take.Samples, take.Reference = channels[1], channels[0]
	default:
		take.Reference = channels[1]
	}
	return path, take, nil
}

// level judges the level of the whole array at the spot and at further places.
func (t Takes) level(p *timing.Plan, out *Found) error {
	positions := []Position{{At: p.Array.Spot, Measured: *out.Whole, Repeats: out.repeats}}
	for _, also := range t.Also {
		at, err := t.repeated(also.Path)
		if err != nil {
			return err
		}
		out.Faults = append(out.Faults, at.faults...)
		positions = append(positions, Position{At: also.At, Measured: *at.mean, Repeats: at.each})
	}
	v, err := OfLevel(p, positions, t.Level)
	if err == nil {
		out.Level = &v
		out.Turns, err = turnsOf(p, *out.Whole, t.Level.Case)
	} else {
		out.Whole = nil
	}
	return err
}

// IsPart tells whether a file is named as a recording of one of a plan's channels, or as one
// at one of several seats, in small letters or capitals.
func IsPart(p *timing.Plan, file string) bool {
	file = strings.ToLower(file)
	var names []string
	for _, c := range p.Channels {
		names = append(names, sweep.RecordedChannelName(c.ID, 1), sweep.ChannelName(c.ID))
	}
	if p.Seating != nil {
		for i := range p.Array.Seats {
			names = append(names, sweep.RecordedSeatName(i+1))
		}
	}
	return slices.ContainsFunc(names, func(name string) bool { return file == name+".wav" || strings.HasPrefix(file, name+"_") })
}
