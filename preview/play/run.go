package play

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"time"

	"pappus/layout/prose"
	"pappus/preview/limit"
)

const (
	patience = 2 * time.Second        // for a device that takes nothing
	hurry    = 300 * time.Millisecond // the same once it is to stop
	glance   = 10 * time.Millisecond  // between looks at the device
)

// device is what a sound device can do.
type device interface {
	player(io.Reader) player
	// Err is a failure that ends all playing.
	Err() error
	// drain waits until the device has sounded what it took.
	drain()
	// rest stops the device from taking silence.
	rest()
}

// player is one stream on its way to the device.
type player interface {
	Play()
	IsPlaying() bool
	BufferedSize() int
	Err() error
	PauseAndStopReading()
}

// run plays a stream on a device, as Play does.
func run(ctx context.Context, d device, s *limit.Fader) error {
	src := &source{stream: s}
	p := d.player(src)
	defer d.rest()
	defer p.PauseAndStopReading()
	p.Play()
	w := watch{device: d, player: p, source: src, moved: time.Now(), patience: patience}
	tick := time.NewTicker(glance)
	defer tick.Stop()
	stop := ctx.Done()
	for p.IsPlaying() {
		select {
		case <-stop:
			s.Stop()
			stop = nil // once; the fall is still to be heard
			w.patience = hurry
		case <-tick.C:
		}
		if err := w.look(); err != nil {
			return cmp.Or(ctx.Err(), err)
		}
	}
	if err := p.Err(); err != nil {
		return fmt.Errorf("playing: %w", err)
	}
	d.drain()
	return ctx.Err()
}

// watch sees whether the device takes sound.
type watch struct {
	device device
	player player
	source *source
	taken  int64
	moved  time.Time // when it last took some

	patience time.Duration
}

// look returns an error where the device has failed or has waited too long.
func (w *watch) look() error {
	if err := w.device.Err(); err != nil {
		return w.failure(err)
	}
	// What waits in the buffer was not taken. The stream may be read between the
	// two looks, which errs towards more taken, and is made good at the next.
	waiting := int64(w.player.BufferedSize())
	if taken := w.source.given.Load() - waiting; taken != w.taken || waiting == 0 {
		w.taken, w.moved = taken, time.Now()
	}
	if time.Since(w.moved) > w.patience {
		return w.failure(nil)
	}
	return nil
}

// failure is the error for a device that never worked, or no longer does.
func (w *watch) failure(cause error) error {
	if w.taken > 0 {
		return noDevice(errStalled, cause)
	}
	return noDevice(ErrNoDevice, cause)
}

// noDevice says kindly what went wrong, and keeps the driver's own words, if any, for
// errors.Is.
func noDevice(kind, cause error) error {
	if cause == nil {
		return kind
	}
	return prose.Saying(kind.Error(), kind, cause)
}
