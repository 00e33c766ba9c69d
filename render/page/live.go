package page

import (
	"bytes"
	"context"
	"net/http"
	"time"

	"pappus/layout/prose"
	"pappus/timing"

	"github.com/coder/websocket"
)

const (
	mostMessage = 16 << 10         // bytes of one move
	patience    = 10 * time.Second // for an answer to be taken
)

// packed is from how many bytes on an answer is compressed: what fits the ten packets that go out
// without waiting for any to be received (RFC 6928; 1,460 bytes each) is there sooner as it is.
const packed = 10 * 1460

// accept opens a socket that answers large enough go compressed through.
func accept(w http.ResponseWriter, r *http.Request) (*websocket.Conn, error) {
	return websocket.Accept(w, r, &websocket.AcceptOptions{CompressionMode: websocket.CompressionNoContextTakeover, CompressionThreshold: packed})
}

// live answers the moves of one client until it goes.
func (p *Page) live(w http.ResponseWriter, r *http.Request) {
	conn, err := p.sockets.live.accept(w, r)
	if err != nil {
		return // it has been answered
	}
	defer conn.leave()
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
	in := newNewest[message]()
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
func listen(ctx context.Context, conn *socket, in *newest[message]) {
	for {
		kind, body, err := conn.Read(ctx)
		if err != nil {
			return
		}
		if kind != websocket.MessageText {
			_ = conn.Close(websocket.StatusUnsupportedData, "text alone")
			return
		}
		conn.used()
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

// follow answers the newest move, one after another, until ctx ends or an answer cannot be
// sent: with its figures at once, and with its map beside the figures of what comes next.
func (p *Page) follow(ctx context.Context, in *newest[message], send func([]byte) error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	sendJSON := func(v any) error {
		var b bytes.Buffer
		if err := encode(&b, v); err != nil {
			return err
		}
		return send(b.Bytes())
	}
	s, jobs := &session{plans: p.plans}, newNewest[job]()
	go func() {
		defer stop()
		newPainter(sendJSON).paint(ctx, jobs)
	}()
	for {
		m, _, err := in.take(ctx)
		if err != nil {
			return
		}
		jobs.cut() // the chair has moved on
		out, spot := moved{Seq: m.move.Seq}, (*timing.Spot)(nil)
		if m.err != nil {
			out.Error = prose.Error(m.err)
		} else {
			out, spot = s.answer(m.move)
		}
		if err := sendJSON(out); err != nil {
			return
		}
		if spot != nil {
			jobs.put(job{m.move, s.made, spot})
		}
	}
}
