package page

import "pappus/timing"

// hasOwn tells whether there is a whole map of a job in which each place has its own delays.
func (b *painter) hasOwn(j job, q quantity) bool {
	if b.owned.slice.Columns == 0 {
		return false
	}
	s, _ := j.slice(b.owned.slice.Columns)
	return b.of(j, s, q, kind{own: true, perOctave: restOctave}).alike(b.owned)
}

// ownCells returns how many cells along a side a fine map has in which each place has its own
// delays: as many as it had the last time, since those of a slice are kept.
func (b *painter) ownCells(k kind, s timing.Slice) int {
	n := b.paces[k].within(ownTime, s.Columns, s.Rows)
	for _, kept := range b.maps.Keys() {
		if kept.own && kept.quantity == k.quantity && kept.perOctave == k.perOctave && kept.slice.Name == s.Name {
			n = kept.slice.Columns
		}
	}
	return n
}

// toChair makes a job one of the chair alone, of a design with seats.
func (b *painter) toChair(j *job) error {
	at := *j.spot.Array
	at.Seats = nil
	if b.alone == nil {
		var err error
		if b.alone, err = timing.NewPlanner(&at); err != nil {
			return err
		}
	}
	p, err := b.alone.Spot(at.Spot)
	if err != nil {
		return err
	}
	j.spot, err = b.alone.Tried(p, seconds(j.Turned))
	return err
}
