package preview

import (
	"context"

	"github.com/gopxl/beep/v2"
)

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
