package preview

import "sync"

// Desk streams a Switch and turns it to the next source every so many samples,
// round and round, until someone chooses a source by hand.
type Desk struct {
	*Switch
	every int
	end   int // samples that all turns take; below 0: no end
	on    func(int)

	mu           sync.Mutex
	given        int // samples so far
	next         int // after how many the next turn begins
	now, earlier int
	held, alone  bool
}

// NewDesk returns a Desk that gives each source so many samples a turn and ends
// after so many turns; 0 turns have no end. It tells on, which may be nil, which
// source is on, the first one too, as the sample that begins the change is
// streamed or a source is chosen; on must be quick.
func NewDesk(s *Switch, every, turns int, on func(source int)) *Desk {
	d := &Desk{Switch: s, every: max(every, 1), end: -1, on: on}
	if turns > 0 {
		d.end = turns * d.every
	}
	return d
}

// Alone says that nobody chooses any more: the stream ends when all turns would have
// been over, even where a source was chosen. It may be called from any goroutine, as
// may Given.
func (d *Desk) Alone() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.alone = true
}

// Given returns how many samples were streamed.
func (d *Desk) Given() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.given
}

// Choose turns to a source, at once, and ends the turns: the stream then lasts
// until its sources end, or as Alone says. A source that is not there is not chosen. It may be
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
		d.give(got)
		if got < want {
			break
		}
	}
	return n, n > 0 || len(samples) == 0
}

func (d *Desk) give(n int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.given += n
}

// due begins the next turn where it is time and returns how many of the wanted
// samples belong to what is on; 0 at the end.
func (d *Desk) due(wanted int) int {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.end >= 0 && (d.alone || !d.held) {
		wanted = max(0, min(wanted, d.end-d.given))
	}
	if d.held || wanted == 0 {
		return wanted
	}
	if d.given == d.next {
		d.turn(d.next / d.every % len(d.sources))
		d.next += d.every
	}
	return min(wanted, d.next-d.given)
}
