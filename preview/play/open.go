package play

import (
	"context"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"github.com/ebitengine/oto/v3"
	"github.com/gopxl/beep/v2"
)

// Sound on its way: in the device, and before it. Devices may hold more than
// they are asked to, so that draining is granted more.
const (
	deviceBuffer = 60 * time.Millisecond
	playerBuffer = 40 * time.Millisecond
	draining     = 150 * time.Millisecond
)

var errStuck = errors.New("the sound device does not answer")

// oto opens a device once in a process and never closes it.
var opened struct {
	sync.Mutex
	context *oto.Context
	ready   chan struct{}
	rate    beep.SampleRate
	err     error
}

// open returns the device, opened at the first call.
func open(ctx context.Context, rate beep.SampleRate) (device, error) {
	opened.Lock()
	defer opened.Unlock()
	if opened.ready == nil {
		quiet()
		opened.rate = rate
		opened.context, opened.ready, opened.err = oto.NewContext(&oto.NewContextOptions{
			SampleRate:      int(rate),
			ChannelCount:    2,
			Format:          oto.FormatFloat32LE,
			BufferSize:      deviceBuffer,
			ApplicationName: "pappus",
		})
		if opened.err != nil {
			opened.ready = make(chan struct{})
			close(opened.ready)
		}
	}
	if rate != opened.rate {
		return nil, fmt.Errorf("the sound device runs at %d samples a second, not %d", opened.rate, rate)
	}
	select {
	case <-opened.ready:
	case <-ctx.Done():
		return nil, ctx.Err()
	case <-time.After(patience):
		return nil, ErrNoDevice
	}
	if opened.err != nil {
		return nil, noDevice(ErrNoDevice, opened.err)
	}
	if err := opened.context.Err(); err != nil {
		return nil, noDevice(ErrNoDevice, err)
	}
	if err := bounded(patience, opened.context.Resume); err != nil {
		return nil, noDevice(ErrNoDevice, err)
	}
	return speaker{opened.context, rate}, nil
}

// speaker is oto's device.
type speaker struct {
	*oto.Context
	rate beep.SampleRate
}

func (s speaker) player(r io.Reader) player {
	p := s.NewPlayer(r)
	p.SetBufferSize(s.rate.N(playerBuffer) * frameBytes)
	return p
}

func (s speaker) drain() { time.Sleep(draining) }

// rest suspends the device, which would go on taking silence. What goes wrong
// here is found when it is next used.
func (s speaker) rest() { _ = bounded(draining, s.Suspend) }

// bounded calls f, which a stuck device may keep for ever, and gives up on it
// after a while.
func bounded(wait time.Duration, f func() error) error {
	done := make(chan error, 1)
	go func() { done <- f() }()
	select {
	case err := <-done:
		return err
	case <-time.After(wait):
		return errStuck
	}
}
