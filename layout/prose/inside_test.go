package prose

import "testing"

func TestDistance(t *testing.T) {
	cases := []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"a", "", 1}, {"", "ab", 2}, {"abc", "abc", 0}, {"abc", "abd", 1},
		{"abc", "ab", 1}, {"abc", "xabc", 1}, {"ab", "ba", 1}, {"cab", "acb", 1}, {"abcd", "badc", 2}, {"kitten", "sitting", 3},
		{"ab", "abcdefgh", 3}, // as far as it counts
	}
	for _, c := range cases {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}
