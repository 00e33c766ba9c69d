package preview

import (
	"sync/atomic"

	"pappus/preview/limit"

	"github.com/gopxl/beep/v2"
)

// Switch streams one of several sources at a time. All run on together, so that
// a change is heard at the same instant of the programme.
type Switch struct {
	sources []beep.Streamer
	wanted  atomic.Int64
	old, on int
	fade    []float64 // gain of the new source after each sample of a crossfade
	faded   int       // samples of the crossfade that are done
	work    [][][2]float64
}

// NewSwitch returns a Switch on sources, of which there must be one at least,
// with the first on. A change takes fade samples: the gains of old and new are
// raised cosines that add to 1, which keeps the level of sounds so much alike.
func NewSwitch(sources []beep.Streamer, fade int) *Switch {
	s := &Switch{sources: sources, fade: make([]float64, max(fade, 1)), work: make([][][2]float64, len(sources))}
	for i := range s.fade {
		s.fade[i] = limit.Rise(float64(i+1) / float64(len(s.fade)))
	}
	s.faded = len(s.fade)
	for i := range s.work {
		s.work[i] = make([][2]float64, 512)
	}
	return s
}

// Select turns to a source, at once or as soon as a change under way is done. It
// may be called from any goroutine and panics where there is no such source.
func (s *Switch) Select(i int) {
	_ = s.sources[i]
	s.wanted.Store(int64(i))
}

// Stream fills samples. It ends when the first of the sources ends, and
// allocates nothing.
func (s *Switch) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		got := s.pull(min(len(samples)-n, len(s.work[0])))
		if got == 0 {
			break
		}
		for i := range got {
			samples[n+i] = s.mix(i)
		}
		n += got
	}
	return n, n > 0 || len(samples) == 0
}

// pull reads n samples from each source and returns how many all have given.
func (s *Switch) pull(n int) int {
	for i, src := range s.sources {
		got, _ := src.Stream(s.work[i][:n])
		n = min(n, got)
	}
	return n
}

// mix returns sample i of what is on.
func (s *Switch) mix(i int) [2]float64 {
	if s.faded == len(s.fade) {
		wanted := int(s.wanted.Load())
		if wanted == s.on {
			return s.work[s.on][i]
		}
		s.old, s.on, s.faded = s.on, wanted, 0
	}
	gain := s.fade[s.faded]
	s.faded++
	old, on := s.work[s.old][i], s.work[s.on][i]
	for c := range on {
		on[c] = gain*on[c] + (1-gain)*old[c]
	}
	return on
}

// Err returns the first error of a source.
func (s *Switch) Err() error {
	for _, src := range s.sources {
		if err := src.Err(); err != nil {
			return err
		}
	}
	return nil
}
