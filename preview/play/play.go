package play

import (
	"context"
	"errors"
	"math"
	"time"

	"pappus/preview/limit"

	"github.com/gopxl/beep/v2"
	"github.com/gopxl/beep/v2/effects"
)

// ErrNoDevice is wrapped by the error of Play where there is no device.
var ErrNoDevice = errors.New("no sound device answers")

var errStalled = errors.New("the sound device has stopped taking sound")

// DefaultLevel is a quiet start, in dB below the stream's own level.
const DefaultLevel = -20.0

// Times of the safe start and the stop.
const (
	Rise = 2 * time.Second
	fall = 30 * time.Millisecond
)

// ceiling is the limiter's, 1 dB below full scale.
var ceiling = math.Pow(10, -1.0/20)

// Play plays s, at rate samples a second and level dB (DefaultLevel unless
// someone asked for another), until it ends or ctx is done. It returns nil at the
// end, ctx's error when stopped, ErrNoDevice where no device takes sound within 2
// s, another where one stops doing so, or the stream's error. Once Play has
// returned nothing reads s any more.
//
// One process plays at one rate; another rate than the first is an error. Play
// must not be called again before it has returned.
func Play(ctx context.Context, rate beep.SampleRate, s beep.Streamer, level float64) error {
	d, err := open(ctx, rate)
	if err != nil {
		return err
	}
	safe := guard(s, rate, level)
	return run(ctx, d, safe)
}

// guard makes a stream safe to play: level, fade and limiter.
func guard(s beep.Streamer, rate beep.SampleRate, level float64) *limit.Fader {
	quiet := &effects.Gain{Streamer: s, Gain: math.Pow(10, level/20) - 1}
	return limit.Fade(limit.New(quiet, ceiling, rate), rate.N(Rise), rate.N(fall))
}
