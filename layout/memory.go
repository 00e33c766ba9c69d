package layout

import "sync"

// memory keeps what a slow function without side effects came to for the last few
// keys: a page builds its design anew at every press, and most presses leave the
// places as they are. What it keeps is shared and must not be changed.
type memory[T any] struct {
	mu     sync.Mutex
	keys   []string // the oldest first
	values map[string]T
}

// mostKept is how many answers are kept: those of the designs that a builder goes
// back and forth between.
const mostKept = 16

// get returns what is kept for a key, or else keeps what compute returns.
func (m *memory[T]) get(key string, compute func() T) T {
	m.mu.Lock()
	v, found := m.values[key]
	m.mu.Unlock()
	if found {
		return v
	}
	v = compute()
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.values == nil {
		m.values = map[string]T{}
	}
	if _, found := m.values[key]; !found {
		m.keys = append(m.keys, key)
	}
	m.values[key] = v
	if len(m.keys) > mostKept {
		delete(m.values, m.keys[0])
		m.keys = m.keys[1:]
	}
	return v
}
