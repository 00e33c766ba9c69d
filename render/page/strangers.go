package page

import (
	"container/list"
	"context"
	"net"
	"net/http"
	"sync"
)

// mostStrangers is how many connections there may be at once that have not shown the secret. A
// browser opens six to one host at the most; a system that gives a program few files gives it 1,024.
const mostStrangers = 256

// strangers are the connections that have not shown the secret: of too many the one that came
// first is closed, so that who fills them up with requests that never end shuts nobody out.
type strangers struct {
	mu   sync.Mutex
	most int
	all  *list.List // of net.Conn, the first to come in front
	of   map[net.Conn]*list.Element
}

func newStrangers(most int) *strangers {
	return &strangers{most: most, all: list.New(), of: map[net.Conn]*list.Element{}}
}

// came takes one in, and closes the first of too many.
func (s *strangers) came(c net.Conn) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.of[c] = s.all.PushBack(c)
	if s.all.Len() > s.most {
		first := s.all.Remove(s.all.Front()).(net.Conn)
		delete(s.of, first)
		_ = first.Close() // its goroutine sees it
	}
}

// left forgets one that is gone, or is known.
func (s *strangers) left(c net.Conn) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if e := s.of[c]; e != nil {
		s.all.Remove(e)
		delete(s.of, c)
	}
}

// close closes all.
func (s *strangers) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for c := range s.of {
		_ = c.Close() // its goroutine sees it
	}
}

type strangerKey struct{}

// watch has a server tell of its connections.
func (s *strangers) watch(to *http.Server) {
	to.ConnContext = func(ctx context.Context, c net.Conn) context.Context {
		s.came(c)
		return context.WithValue(ctx, strangerKey{}, func() { s.left(c) })
	}
	to.ConnState = func(c net.Conn, state http.ConnState) {
		if state == http.StateClosed || state == http.StateHijacked {
			s.left(c)
		}
	}
}

// noStranger tells that a request has shown the secret.
func noStranger(r *http.Request) {
	if left, ok := r.Context().Value(strangerKey{}).(func()); ok {
		left()
	}
}
