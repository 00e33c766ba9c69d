package radiate

import "math"

// Solution tells how far up the true field of a body is solved for, and how well.
type Solution struct {
	// From and To in Hz are where the ball begins to take over from the true field, and where it
	// is alone.
	From, To float64
	// Short tells that it ends lower than the design asks for, since more would have taken longer
	// than LongestSeconds.
	Short bool

	off  []float64 // of the far field, at even steps in Hz from 0 on
	step float64   // Hz
}

// Solution tells of a scene's field, in air with a speed of sound in m/s; nil where the model is
// not that of the true field.
func (s *Scene) Solution(speed float64) *Solution {
	b, ok := s.Field.(*bodyField)
	if !ok {
		return nil
	}
	hz := speed / (2 * math.Pi) // of 1 rad/m
	asked, _ := newSolving(s.Array)
	to := b.table.Top() * hz
	return &Solution{From: to / joins, To: to, Short: b.table.Top() < asked.Top, off: b.table.Off, step: b.table.Step * hz}
}

// Share is the ball's part of the field at a frequency in Hz, from 0 to 1.
func (s *Solution) Share(hz float64) float64 { return ballShare(hz, s.To) }

// Off returns how far in dB the true field can be off at a frequency in Hz of a level, as two
// meshes have it: what a difference of their far fields, RMS over all directions and drivers,
// adds to a sound. Above To it is that of To.
func (s *Solution) Off(hz float64) float64 {
	at := min(hz/s.step, float64(len(s.off)-1))
	i := min(int(at), len(s.off)-2)
	off := s.off[i] + (s.off[i+1]-s.off[i])*(at-float64(i))
	return 20 * math.Log10(1+off)
}
