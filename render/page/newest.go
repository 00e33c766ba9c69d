package page

import (
	"context"
	"sync"
)

// newest holds the newest of some things and drops what it overtakes. They come from one
// goroutine, and are taken by one.
type newest[T any] struct {
	held chan T
	mu   sync.Mutex
	stop context.CancelFunc // ends what is done with the one that was taken last
}

func newNewest[T any]() *newest[T] {
	return &newest[T]{held: make(chan T, 1), stop: func() {}}
}

// cut ends what is done with the one that was taken last.
func (n *newest[T]) cut() {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.stop()
}

// put takes one in.
func (n *newest[T]) put(v T) {
	n.cut() // before it is there to be taken: it is not to end its own work
	select {
	case <-n.held:
	default:
	}
	n.held <- v
}

// take waits for one, and returns with it the context to work in, which ends when a newer one
// comes.
func (n *newest[T]) take(ctx context.Context) (v T, work context.Context, err error) {
	select {
	case <-ctx.Done():
		return v, nil, ctx.Err()
	case v = <-n.held:
	}
	n.mu.Lock()
	defer n.mu.Unlock()
	n.stop() // of the one before
	work, n.stop = context.WithCancel(ctx)
	if len(n.held) > 0 {
		n.stop() // it came before this was known
	}
	return v, work, nil
}
