package console

import (
	"context"
	"fmt"
	"io"
	"strings"

	"pappus/preview"
	"pappus/preview/play"
)

// crossfade is how long a change takes, in samples: 10 ms.
const crossfade = preview.Rate / 100

// Caution stands before everything that plays.
const Caution = "Start with the volume all the way down, above all on headphones, and turn it up slowly.\n"

// Turns plays all cases in turn, so many times, or as the keys say. along says where the
// listener walks, a line each. Errors are those of play.Play.
func Turns(ctx context.Context, out io.Writer, in io.Reader, s *preview.Audition, rounds int, along string) error {
	k := openKeys(in)
	defer k.restore()
	out = k.writer(out)
	turn := s.Turn()
	fmt.Fprintf(out, "%s%s%s, %.1f s each%s.\n%s%s\n", Caution, s.Source.Words, s.Whereabouts()+s.LeftOut(), float64(turn)/preview.Rate, k.hint(), along, numbered(s.Cases))
	say := func(i int) { fmt.Fprintf(out, "now: %d %s\n", i+1, s.Cases[i].Words) }
	desk := preview.NewDesk(preview.NewSwitch(s.Endless(len(s.Cases)), crossfade), turn, rounds*len(s.Cases), say)
	volume := preview.NewVolume(desk, crossfade)
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	level := &levelKeys{volume: volume, out: out}
	go func() {
		k.each(ctx, func(key byte) { deskKey(key, desk, level, stop) })
		desk.Alone()
	}()
	return play.Play(ctx, preview.Rate, volume, play.DefaultLevel)
}

// numbered lists the cases with the keys that choose them.
func numbered(cases []preview.Case) string {
	var words []string
	for i, c := range cases {
		words = append(words, fmt.Sprintf("%d %s", i+1, c.Words))
	}
	return strings.Join(words, "  ")
}
