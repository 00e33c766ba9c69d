package drawn

import "testing"

// TestMutatorVaries: the same seed draws the same inputs, another others, few of them twice and
// none that is too long.
func TestMutatorVaries(t *testing.T) {
	seeds := []string{"[body]\nradius_mm = 150\n", "", "a,b\n1,2\n"}
	a, b, c := newMutator(seeds, 1), newMutator(seeds, 1), newMutator(seeds, 2)
	seen, same := map[string]bool{}, 0
	for range 10000 {
		x, y, z := a.next(), b.next(), c.next()
		if string(x) != string(y) {
			t.Fatalf("%q and %q", x, y)
		}
		if string(x) == string(z) {
			same++
		}
		if len(x) > len(seeds[0])+room {
			t.Fatalf("%d bytes", len(x))
		}
		seen[string(x)] = true
	}
	if len(seen) < 8000 || same > 500 {
		t.Errorf("%d differ, %d are those of another seed", len(seen), same)
	}
}
