package preview

import "sync"

// Desk streams a Switch and turns it to the next source every so many samples,
// round and round, until someone chooses a source by hand.
type Desk struct {
	*Switch
	every int
	turns int // that are left; below 0: no end
	on    func(int)

	mu           sync.Mutex
	left         int // samples of this turn
	now, earlier int
	held         bool
	begun        bool
}

// NewDesk returns a Desk that gives each source so many samples a turn and ends
// after so many turns; 0 turns have no end. It tells on, which may be nil, which
// source is on, the first one too, as the sample that begins the change is
// streamed or a source is chosen; on must be quick.
func NewDesk(s *Switch, every, turns int, on func(source int)) *Desk {
	if turns <= 0 {
		turns = -1
	}
	return &Desk{Switch: s, every: max(every, 1), turns: turns, on: on}
}

// Choose turns to a source, at once, and ends the turns: the stream then lasts
// until its sources end. A source that is not there is not chosen. It may be
// called from any goroutine, as may Next and Back.
func (d *Desk) Choose(i int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if i >= 0 && i < len(d.sources) {
		d.choose(i)
	}
}

// Next chooses the source after the one that is on.
func (d *Desk) Next() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.choose((d.now + 1) % len(d.sources))
}

// Back chooses the source that was on before, so that two can be held against
// each other.
func (d *Desk) Back() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.choose(d.earlier)
}

func (d *Desk) choose(i int) {
	d.held = true
	d.turn(i)
}

// turn makes a source the one that is on.
func (d *Desk) turn(i int) {
	if i != d.now {
		d.earlier, d.now = d.now, i
	}
	d.Select(i)
	if d.on != nil {
		d.on(i)
	}
}

// Stream fills samples. It allocates nothing.
func (d *Desk) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		want := d.due(len(samples) - n)
		if want == 0 {
			break
		}
		got, _ := d.Switch.Stream(samples[n : n+want])
		n += got
		if got < want {
			break
		}
	}
	return n, n > 0 || len(samples) == 0
}

// due begins the next turn where it is time and returns how many of the wanted
// samples belong to what is on; 0 at the end.
func (d *Desk) due(wanted int) int {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.held {
		return wanted
	}
	if d.left == 0 {
		if d.turns == 0 {
			return 0
		}
		d.turns--
		d.left = d.every
		if d.begun {
			d.turn((d.now + 1) % len(d.sources))
		} else {
			d.begun = true
			d.turn(d.now)
		}
	}
	n := min(d.left, wanted)
	d.left -= n
	return n
}
