package page

import (
	"context"
	"os"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestLook sees a file change only once it stands still, and only where it holds something else.
func TestLook(t *testing.T) {
	p, path := newPage(t, small)
	s := stand{}
	look := func(want onDisk, news bool) {
		t.Helper()
		if got, ok := p.disk.look(&s); ok != news || news && got != want {
			t.Errorf("news %t of %.40q, want %t", ok, got.Text, news)
		}
	}
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	first := onDisk{Read: hashOf([]byte(small)), Text: small}
	look(onDisk{}, false)
	look(first, true)
	look(first, false)
	longer := small + "# more\n"
	write(longer)
	look(onDisk{}, false)
	write(longer + "# and more\n")
	look(onDisk{}, false)
	look(onDisk{Read: hashOf([]byte(longer + "# and more\n")), Text: longer + "# and more\n"}, true)
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	look(onDisk{Gone: true}, true)
	look(onDisk{}, false)
	write(small)
	look(onDisk{}, false)
	look(first, true)
}

// TestMergeOfPages puts two people's changes together.
func TestMergeOfPages(t *testing.T) {
	p, _ := newPage(t, small)
	swap := func(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(small) }
	in := merging{small, swap("radius_mm = 100", "radius_mm = 110", "x_m = 2", "x_m = 3"), swap("radius_mm = 100", "radius_mm = 120", "count = 6", "count = 8"), []string{}}
	want := merged{swap("radius_mm = 100", "radius_mm = 120", "count = 6", "count = 8", "x_m = 2", "x_m = 3"), []string{"spot.x_m"}, []conflict{{"body.radius_mm", "100", "110", "120"}}}
	if diff := cmp.Diff(want, ask[merged](t, p, "/api/merge", in)); diff != "" {
		t.Error(diff)
	}
}

// TestWatch tells of a file after the second look, a second after the first by a made-up clock.
func TestWatch(t *testing.T) {
	p, _ := newPage(t, small)
	synctest.Test(t, func(t *testing.T) {
		ctx, stop := context.WithCancel(t.Context())
		began, after := time.Now(), time.Duration(0)
		err := p.disk.watch(ctx, func(news onDisk) error {
			after = time.Since(began)
			stop()
			return nil
		})
		if err != nil || after != time.Second {
			t.Errorf("told after %v, %v", after, err)
		}
	})
}
