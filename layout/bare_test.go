package layout_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"

	"github.com/google/go-cmp/cmp"
)

// TestBareTables: tables without a line of names, as measuring programs write them.
func TestBareTables(t *testing.T) {
	want := []layout.ImpedancePoint{{Frequency: 20, Ohm: 7.1, Degrees: -3.5}, {Frequency: 40, Ohm: 8.25, Degrees: 12}}
	tests := []struct{ name, file, text, says string }{
		{"remarks and blanks", "a.zma", "* a driver\n* hz ohm deg\n\n  20.000  7.1000 -3.5\n  40.000  8.2500 12.0\n", ""},
		{"tabs, as a text", "a.txt", "20\t7.1\t-3.5\r\n40\t8.25\t12\r\n", ""},
		{"commas and more columns", "a.TXT", "\"made up\"\n20, 7.1, -3.5, 1\n40, 8.25, 12, 1\n", ""},
		{"semicolons", "a.txt", "20;7.1;-3.5\n40;8.25;12\n", ""},
		{"with names", "a.txt", "frequency_hz,ohm,degrees\n20,7.1,-3.5\n40,8.25,12\n", ""},
		{"too few columns", "a.zma", "* a driver\n20 7.1\n", ".zma:2: "},
		{"falling", "a.zma", "20 7.1 0\n10 7.1 0\n", ".zma:2: "},
		{"none of that in a CSV", "a.csv", "20 7.1 0\n40 7.1 0\n", "frequency_hz"},
		{"nothing", "a.zma", "* nothing\n", "0 lines of numbers"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), test.file)
			if err := os.WriteFile(path, []byte(test.text), 0o600); err != nil {
				t.Fatal(err)
			}
			got, err := layout.ReadImpedance(path)
			if test.says != "" {
				if err == nil || !strings.Contains(err.Error(), test.says) {
					t.Errorf("%v, want one that says %q", err, test.says)
				}
				return
			}
			if diff := cmp.Diff(want, got); diff != "" || err != nil {
				t.Errorf("%v\n%s", err, diff)
			}
		})
	}
}
