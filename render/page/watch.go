package page

import (
	"context"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"time"

	"pappus/layout/design"
	"pappus/layout/prose"

	"github.com/coder/websocket"
	"github.com/coder/websocket/wsjson"
)

// lookEvery is how often the design's file is looked at: somebody who saves in an editor and
// turns to the page sees it there (about the second that people wait without doing anything
// else; J. Nielsen, Usability Engineering, 1993, chapter 5), for one call of the system.
const lookEvery = time.Second

// onDisk is what the design's file holds now, sent when that is known and when it changes.
type onDisk struct {
	Read string `json:"read"` // as in started
	Text string `json:"text"`
	Gone bool   `json:"gone"` // there is no such file any more
	// Wrong is why what is there in its place is not read; empty: it is.
	Wrong string `json:"wrong"`
}

// watch tells one client what becomes of the design's file, until it goes.
func (p *Page) watch(w http.ResponseWriter, r *http.Request) {
	conn, err := p.sockets.watch.accept(w, r)
	if err != nil {
		return // it has been answered
	}
	defer conn.leave()
	ctx := conn.CloseRead(r.Context()) // it has nothing to say
	if p.disk.path == "" {
		<-ctx.Done()
		return
	}
	if p.disk.watch(ctx, func(news onDisk) error { return tell(ctx, conn, news) }) == nil {
		_ = conn.Close(websocket.StatusGoingAway, "the program ends")
	}
}

// watch tells what becomes of the file until ctx ends, or something cannot be told.
func (d *disk) watch(ctx context.Context, tell func(onDisk) error) error {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	for s := (stand{}); ; {
		if news, ok := d.look(&s); ok {
			if err := tell(news); err != nil {
				return err
			}
		}
		select {
		case <-ctx.Done():
			return nil
		case <-tick.C:
		}
	}
}

func tell(ctx context.Context, conn *socket, news any) error {
	ctx, stop := context.WithTimeout(ctx, patience)
	defer stop()
	return wsjson.Write(ctx, conn.Conn, news)
}

// stand is how a file stood when it was looked at last, and what was told of it.
type stand struct {
	size  int64
	mod   time.Time
	fresh bool // it has been like this for one look alone: somebody may still be writing
	told  onDisk
}

// look tells what a file holds where that has changed since, once it has stood still from one
// look to the next.
func (d *disk) look(s *stand) (onDisk, bool) {
	info, err := os.Stat(d.path)
	var news onDisk
	switch {
	case errors.Is(err, fs.ErrNotExist):
		news.Gone = true
		s.size, s.mod, s.fresh = 0, time.Time{}, false
	case err != nil:
		return news, false
	case info.Size() != s.size || !info.ModTime().Equal(s.mod):
		s.size, s.mod, s.fresh = info.Size(), info.ModTime(), true
		return news, false
	case !s.fresh:
		return news, false
	default:
		s.fresh = false
		text, err := d.read()
		if err != nil {
			news.Wrong = prose.Error(err)
		} else {
			news.Read, news.Text = hashOf(text), string(text)
		}
	}
	if news == s.told {
		return news, false
	}
	s.told = news
	return news, true
}

// merging is what two people made of one text.
type merging struct {
	Base   string   `json:"base"`
	Mine   string   `json:"mine"`
	Theirs string   `json:"theirs"`
	Keep   []string `json:"keep"` // keys where mine holds though theirs differs
}

// merged is a text with the changes of both.
type merged struct {
	Text      string     `json:"text"`
	Mine      []string   `json:"mine"` // keys that mine put there
	Conflicts []conflict `json:"conflicts"`
}

// conflict is a key that both set, and not alike; a value that is not there is empty.
type conflict struct {
	Key    string `json:"key"`
	Base   string `json:"base"`
	Mine   string `json:"mine"`
	Theirs string `json:"theirs"`
}

func (p *Page) merge(_ http.ResponseWriter, _ *http.Request, in merging) (any, error) {
	got, err := design.Merge([]byte(in.Base), []byte(in.Mine), []byte(in.Theirs), in.Keep)
	if err != nil {
		return nil, faultyFor(faultOf(err))
	}
	out := merged{string(got.Text), append([]string{}, got.Mine...), []conflict{}}
	for _, c := range got.Conflicts {
		out.Conflicts = append(out.Conflicts, conflict(c))
	}
	return out, nil
}
