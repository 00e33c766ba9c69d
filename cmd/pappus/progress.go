package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"
)

// patience is how long a command works before it says what it does.
const patience = 1500 * time.Millisecond

// progress says on a terminal what is being done, once that takes long.
type progress struct {
	w     io.Writer
	start time.Time
	mu    sync.Mutex
	said  bool
	over  bool
}

// startProgress returns a progress that stays silent if quiet is true or if w is
// no terminal.
func startProgress(w io.Writer, quiet bool) *progress {
	f, ok := w.(*os.File)
	return &progress{w: w, start: time.Now(), over: quiet || !ok || !terminal(f)}
}

func terminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// say may be called of none.
func (p *progress) say(what string) {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.over || time.Since(p.start) < patience {
		return
	}
	p.said = true
	fmt.Fprintf(p.w, "\r%-60.60s", what)
}

// note writes a line that stays. It may be called of none.
func (p *progress) note(line string) {
	if p == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if !p.over {
		fmt.Fprintf(p.w, "\r%-60s\n", line)
	}
}

// stop clears the line for good. It may be called twice.
func (p *progress) stop() {
	p.clear()
	p.mu.Lock()
	defer p.mu.Unlock()
	p.over = true
}

// clear takes away what stands on the line.
func (p *progress) clear() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.said {
		fmt.Fprintf(p.w, "\r%60s\r", "")
	}
	p.said = false
}
