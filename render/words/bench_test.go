package words

import (
	"strings"
	"testing"
)

func TestBench(t *testing.T) {
	said := strings.Join(Bench(0.05), "\n")
	for _, want := range []string{"give or take 5 %.", "before any power", "The iron is hot", "Leave mains to licensed people."} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in %q", want, said)
		}
	}
}
