package preview

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestOwnFileRepeats: a file without an end begins again, and one that is gone
// says so.
func TestOwnFileRepeats(t *testing.T) {
	s, err := FromFile("decode/testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	once, endless := s.times(1), s.times(-1)
	buffer := make([][2]float64, 4800)
	length := 0
	for {
		n, ok := once.Stream(buffer)
		if length += n; !ok {
			break
		}
	}
	if once.Err() != nil || length == 0 {
		t.Fatalf("%d samples, %v", length, once.Err())
	}
	more := 0
	for more < 5*length {
		n, ok := endless.Stream(buffer)
		if more += n; !ok {
			t.Fatalf("ends after %d samples: %v", more, endless.Err())
		}
	}
	twice := 0
	for two := s.times(2); ; {
		n, ok := two.Stream(buffer)
		if twice += n; !ok {
			break
		}
	}
	if twice != 2*length || s.Warning() != "" {
		t.Errorf("twice: %d samples of %d, %q", twice, length, s.Warning())
	}
	gone := &reopened{path: "no such file", left: 1}
	if n, ok := gone.Stream(buffer); n != 0 || ok || gone.Err() == nil {
		t.Errorf("%d samples of nothing, %v", n, gone.Err())
	}
}

// TestCutFile: what is there of a file that is cut short is played, again and again,
// and the warning says how much that is.
func TestCutFile(t *testing.T) {
	whole, err := os.ReadFile("decode/testdata/tone16.wav")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "cut.wav")
	if err := os.WriteFile(path, whole[:len(whole)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := FromFile(path)
	if err != nil {
		t.Fatal(err)
	}
	level := LevelOf(s.times(3), rate)
	if level.Peak < 0.01 || s.Warning() == "" || !strings.Contains(s.Warning(), "cut short") {
		t.Errorf("%+v, %q", level, s.Warning())
	}
	t.Log(s.Warning())
}

// TestTurns are whole periods, but for what is long.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		period  int
		seconds float64
		want    int
	}{
		{16384, 4, 12 * 16384}, // 4.1 s of clicks
		{264000, 4, 264000},    // a sweep of 5.5 s
		{264000, 8, 528000},
		{300 * rate, 4, 4 * rate}, // a song
		{10 * rate, 15, 15 * rate},
	} {
		if have := (Source{period: c.period}).turn(c.seconds); have != c.want {
			t.Errorf("%d samples, %g s: %d, want %d", c.period, c.seconds, have, c.want)
		}
	}
}

func TestPlainName(t *testing.T) {
	for have, want := range map[string]string{"My song.v2": "My_song_v2", "": "sound", "../x": "___x", "ok-1": "ok-1"} {
		if got := plainName(have); got != want {
			t.Errorf("%q: %q, want %q", have, got, want)
		}
	}
}
