package page

import (
	"context"
	"net/http"
	"slices"
	"sync"
	"time"

	"github.com/coder/websocket"
)

// pulse is how often a browser is asked whether it is still there: one that sleeps, or is gone
// without a word, is found out before somebody who opens pages anew runs out of places.
const pulse = 30 * time.Second

// rests closes a socket that gave its place to a newer one (RFC 6455, 7.4.2: 4000 to 4999 are for
// private use); the page opens it again when somebody turns to it.
const rests websocket.StatusCode = 4001

// sockets are those of one kind that are open, mostSockets at the most: a new one takes the place of
// that which has been silent for longest.
type sockets struct {
	mu    sync.Mutex
	open  []*socket // the one that was silent for longest first
	pulse time.Duration
}

// socket is one of them, until it is left.
type socket struct {
	*websocket.Conn
	of   *sockets
	stop context.CancelFunc
}

// accept opens a socket; an error has been answered. The caller leaves it.
func (s *sockets) accept(w http.ResponseWriter, r *http.Request) (*socket, error) {
	conn, err := accept(w, r)
	if err != nil {
		return nil, err
	}
	conn.SetReadLimit(mostMessage)
	ctx, stop := context.WithCancel(context.WithoutCancel(r.Context()))
	out := &socket{conn, s, stop}
	go out.ask(ctx)
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.open = append(s.open, out); len(s.open) > mostSockets {
		first := s.open[0]
		s.open = s.open[1:]
		go func() { _ = first.Close(rests, "a newer page took its place") }() // it waits for the browser's word
	}
	return out, nil
}

// used notes that somebody has said something.
func (c *socket) used() {
	c.of.mu.Lock()
	defer c.of.mu.Unlock()
	if i := slices.Index(c.of.open, c); i >= 0 {
		c.of.open = append(slices.Delete(c.of.open, i, i+1), c)
	}
}

// leave closes the socket, and gives its place free.
func (c *socket) leave() {
	c.stop()
	c.CloseNow()
	c.of.mu.Lock()
	defer c.of.mu.Unlock()
	c.of.open = slices.DeleteFunc(c.of.open, func(o *socket) bool { return o == c })
}

// ask closes the socket of who does not answer within patience. Somebody else reads it.
func (c *socket) ask(ctx context.Context) {
	tick := time.NewTicker(c.of.pulse)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		ctx, stop := context.WithTimeout(ctx, min(patience, c.of.pulse))
		err := c.Ping(ctx)
		stop()
		if err != nil {
			c.CloseNow()
			return
		}
	}
}
