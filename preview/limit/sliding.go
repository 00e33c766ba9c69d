package limit

// sliding is the least of the last so many values.
type sliding struct {
	value []float64 // rising from first to last, a ring
	time  []int     // when each came
	first int
	count int
	now   int
}

func newSliding(length int) *sliding {
	return &sliding{value: make([]float64, length), time: make([]int, length)}
}

// push takes a value in and returns the least of it and the length-1 before.
func (s *sliding) push(v float64) float64 {
	n := len(s.value)
	if s.count > 0 && s.now-s.time[s.first] >= n {
		s.first = (s.first + 1) % n
		s.count--
	}
	for s.count > 0 && s.value[(s.first+s.count-1)%n] >= v {
		s.count--
	}
	last := (s.first + s.count) % n
	s.value[last], s.time[last] = v, s.now
	s.count++
	s.now++
	return s.value[s.first]
}
