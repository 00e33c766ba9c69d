package proof

import (
	"flag"
	"math/rand/v2"
	"testing"

	"pappus/testdata/thorough"
	"pappus/timing/cores"
)

var anew = flag.Bool("write", false, "plan all designs of the spaces and write the tables")

// spaces are those with a table.
var spaces = []string{"bodies", "even", "seats", "held"}

// some is how many rows of a table an ordinary test checks.
const some = 12

// TestAnew checks rows of the tables by planning their designs: some by a seed.
func TestAnew(t *testing.T) {
	for _, name := range spaces {
		t.Run(name, func(t *testing.T) {
			s := readSpace(t, name)
			which := rand.New(rand.NewPCG(1, uint64(s.len()))).Perm(s.len())
			switch {
			case *anew:
			case thorough.Set:
				which = which[:len(which)/50]
			default:
				which = which[:some]
			}
			rows := make([]row, len(which))
			cores.Each(len(which), func(_, k int) { rows[k] = s.brute(t, which[k]) })
			if *anew {
				all := make([]row, len(which))
				for k, i := range which {
					all[i] = rows[k]
				}
				write(t, s, all)
			}
			want := table(t, s)
			for k, i := range which {
				if !want[i].near(rows[k]) {
					t.Errorf("design %d: the table has %+v, planned it is %+v", i, want[i], rows[k])
				}
			}
		})
	}
}
