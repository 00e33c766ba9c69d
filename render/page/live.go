package page

import (
	"bytes"
	"context"
	"net/http"
	"sync"
	"time"

	"pappus/layout/prose"

	"github.com/coder/websocket"
)

const (
	mostMessage = 4 << 10          // bytes of one move
	patience    = 10 * time.Second // for an answer to be taken
)

// live answers the moves of one client until it goes.
func (p *Page) live(w http.ResponseWriter, r *http.Request) {
	conn, err := websocket.Accept(w, r, nil)
	if err != nil {
		return // it has been answered
	}
	defer conn.CloseNow()
	conn.SetReadLimit(mostMessage)
	ctx, stop := context.WithCancel(context.WithoutCancel(r.Context()))
	defer stop()
	go func() {
		select {
		case <-ctx.Done():
		case <-r.Context().Done(): // the server shuts down
			_ = conn.Close(websocket.StatusGoingAway, "the program ends")
			stop()
		}
	}()
	in := newNewest()
	go func() {
		defer stop()
		listen(ctx, conn, in)
	}()
	p.follow(ctx, in, func(body []byte) error {
		ctx, stop := context.WithTimeout(ctx, patience)
		defer stop()
		return conn.Write(ctx, websocket.MessageText, body)
	})
}

// listen takes moves in until the client goes.
func listen(ctx context.Context, conn *websocket.Conn, in *newest) {
	for {
		kind, body, err := conn.Read(ctx)
		if err != nil {
			return
		}
		if kind != websocket.MessageText {
			_ = conn.Close(websocket.StatusUnsupportedData, "text alone")
			return
		}
		in.put(read(body))
	}
}

// read reads a move; one that is not understood has error set.
func read(body []byte) message {
	var m move
	err := decode(bytes.NewReader(body), &m)
	return message{m, err}
}

// message is a move, or why it is none.
type message struct {
	move move
	err  error
}

// newest holds the newest message and drops what it overtakes. Messages come from one
// goroutine.
type newest struct {
	held chan message
	mu   sync.Mutex
	cut  context.CancelFunc // ends work that a newer message makes idle
}

func newNewest() *newest { return &newest{held: make(chan message, 1), cut: func() {}} }

// put takes a message in.
func (n *newest) put(m message) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.cut() // before it is there to be taken: it is not to end its own work
	select {
	case <-n.held:
	default:
	}
	n.held <- m
}

// take waits for a message, and returns with it the context to answer it in: for a
// spot at rest one that ends when a newer message comes.
func (n *newest) take(ctx context.Context) (m message, work context.Context, stop context.CancelFunc, err error) {
	select {
	case <-ctx.Done():
		return m, nil, nil, ctx.Err()
	case m = <-n.held:
	}
	work, stop = context.WithCancel(ctx)
	n.mu.Lock()
	defer n.mu.Unlock()
	if n.cut = stop; !m.move.rests() {
		n.cut = func() {}
	} else if len(n.held) > 0 {
		stop() // it came before this was known
	}
	return m, work, stop, nil
}

// follow answers the newest message, one after another, until ctx ends or an answer
// cannot be sent.
func (p *Page) follow(ctx context.Context, in *newest, send func([]byte) error) {
	s := &session{plans: p.plans}
	var b bytes.Buffer
	for {
		m, work, stop, err := in.take(ctx)
		if err != nil {
			return
		}
		out := moved{Seq: m.move.Seq}
		if m.err != nil {
			out.Error = prose.Error(m.err)
		} else if out, err = s.answer(work, m.move); err != nil && work.Err() == nil {
			out = moved{Seq: m.move.Seq, Error: prose.Error(err)}
			err = nil
		}
		stop()
		if err != nil {
			continue // overtaken
		}
		b.Reset()
		if err := encode(&b, out); err != nil {
			return
		}
		if err := send(b.Bytes()); err != nil {
			return
		}
	}
}
