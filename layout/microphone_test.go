package layout_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
)

const microphoneHead = "frequency_hz,level_db\n"

func TestReadMicrophone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "microphone.csv")
	if _, err := layout.ReadMicrophone(path); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("# number 7\r\n" + microphoneHead + "20, -1.5\r\n20000,2\r\n")
	got, err := layout.ReadMicrophone(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]layout.MicrophonePoint{{20, -1.5}, {20000, 2}}, got); d != "" {
		t.Error(d)
	}
	for _, c := range []struct {
		name, text, want string
		kind             error
	}{
		{"no head", "20,0\n30,0\n", ":1: must begin with the line frequency_hz,level_db", design.ErrSyntax},
		{"falls", microphoneHead + "20,0\n10,0\n", ":3: frequency_hz = 10: must be above the one before, 20", design.ErrRange},
		{"words", microphoneHead + "20,flat\n", `:2: level_db = "flat": must be a number from -100 to 100`, design.ErrType},
		{"one line", microphoneHead + "20,0\n", ": 1 line of numbers; must be at least 2", design.ErrRange},
		{"phase too", microphoneHead + "20,0,0\n", ":2: 3 values; must be 2: frequency_hz,level_db; where the comma is the decimal mark, separate values by semicolons, in the first line too", design.ErrSyntax},
	} {
		write(c.text)
		if _, err := layout.ReadMicrophone(path); !errors.Is(err, c.kind) || err.Error() != path+c.want {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
