package drawn

import "testing"

// TestMutatorVaries: the same seed draws the same inputs, another seed and another core others, few
// of them twice and none that is too long.
func TestMutatorVaries(t *testing.T) {
	seeds := []string{"[body]\nradius_mm = 150\n", "", "a,b\n1,2\n"}
	a, b, c, d := newMutator(seeds, 1, 0), newMutator(seeds, 1, 0), newMutator(seeds, 2, 0), newMutator(seeds, 1, 1)
	seen, same := map[string]bool{}, 0
	for range 10000 {
		x, y := string(a.next()), string(b.next())
		if x != y {
			t.Fatalf("%q and %q", x, y)
		}
		if x == string(c.next()) {
			same++
		}
		if x == string(d.next()) {
			same++
		}
		if len(x) > len(seeds[0])+room {
			t.Fatalf("%d bytes", len(x))
		}
		seen[x] = true
	}
	if len(seen) < 8000 || same > 1000 {
		t.Errorf("%d differ, %d are those of another seed or core", len(seen), same)
	}
}
