package preview

import (
	"context"

	"github.com/gopxl/beep/v2"
)

// each streams a source to its end and gives what comes, piece by piece.
func each(src beep.Streamer, do func(samples [][2]float64)) {
	samples := make([][2]float64, 4096)
	for {
		n, ok := src.Stream(samples)
		if !ok {
			return
		}
		do(samples[:n])
	}
}

// leftOf returns the left side of a source, to its end.
func leftOf(src beep.Streamer) (left []float64) {
	each(src, func(samples [][2]float64) {
		for _, v := range samples {
			left = append(left, v[0])
		}
	})
	return left
}

// Until streams a source until ctx ends, whose error it has then.
func Until(ctx context.Context, src beep.Streamer) beep.Streamer { return &until{src, ctx} }

type until struct {
	beep.Streamer
	ctx context.Context
}

// Stream fills samples. It allocates nothing.
func (u *until) Stream(samples [][2]float64) (n int, ok bool) {
	if u.ctx.Err() != nil {
		return 0, false
	}
	return u.Streamer.Stream(samples)
}

// Err is that of ctx, or the source's.
func (u *until) Err() error {
	if err := u.ctx.Err(); err != nil {
		return err
	}
	return u.Streamer.Err()
}
