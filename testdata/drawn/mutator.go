package drawn

import (
	"math/rand/v2"
	"regexp"
	"slices"
)

const (
	room    = 512 // bytes that an input may be longer than the longest seed
	deepest = 24  // mutations of a seed before another is taken
)

// edges are what parsers trip over: numbers at the ends of their kinds, marks, line ends, and
// the sizes of files in little and big endian.
var edges = []string{
	"0", "-0", "1", "-1", "2", "0.5", "1e-320", "1e308", "-1e309", "nan", "inf", "-inf", "0x1p12", "65536", "2147483647", "-2147483648",
	"4294967295", "9223372036854775807", "-9223372036854775808", "18446744073709551616", "1_000", "01", ".5", "5.", "1,5", "1.500,2", "true", "null",
	"\n", "\r", "\r\n", "\t", " ", "\"", "'", "\"\"\"", "'''", "\\", "\\u0000", "#", "[", "]", "[[", "]]", "{", "}", "=", ":", ",", ";", ".", "\x00", "\x1b[2J",
	"\ufeff", "\xff\xfe", "\xff", "\u2212", "°", "\u00a0", "\u202e", "é", "🔊", "\x00\x00\x00\x00", "\xff\xff\xff\xff", "\xff\xff\xff\x7f", "\x00\x00\x00\x80",
	"\x01\x00", "\x00\x01", "\x10\x00\x00\x00", "\x00\x00\x80\x7f", "\x00\x00\xc0\x7f", "\xff\xff\x7f\x7f",
}

// pieces are the words, numbers and marks of a text.
var pieces = regexp.MustCompile(`[A-Za-z_]+|-?[0-9][0-9.]*|[^\sA-Za-z0-9]|\n`)

// mutator makes inputs of seeds.
type mutator struct {
	*rand.Rand
	core  uint64
	seeds [][]byte
	words []string
	data  []byte
	spare []byte
	deep  int
	most  int
}

// newMutator draws by a seed, other inputs on each core.
func newMutator(seeds []string, seed, core uint64) *mutator {
	m := &mutator{Rand: rand.New(rand.NewPCG(seed, 1+core)), core: core, words: slices.Clone(edges), deep: deepest}
	for _, s := range seeds {
		m.seeds = append(m.seeds, []byte(s))
		m.words = append(m.words, pieces.FindAllString(s[:min(len(s), 1<<14)], 400)...)
		m.most = max(m.most, len(s)+room)
	}
	return m
}

// next is an input that is good until the next: that of before, or a seed, mutated a few
// times. What has drifted too far from its seed gives way to another.
func (m *mutator) next() []byte {
	if m.deep >= deepest || m.IntN(4) == 0 {
		m.data, m.deep = append(m.data[:0], m.seeds[m.IntN(len(m.seeds))]...), 0
	}
	for {
		m.once()
		m.deep++
		if m.IntN(2) == 0 || m.deep >= deepest {
			return m.data
		}
	}
}

// once mutates the data once.
func (m *mutator) once() {
	if len(m.data) == 0 {
		m.put(0, 0, []byte(m.word()))
		return
	}
	at := m.IntN(len(m.data))
	switch m.IntN(11) {
	case 0:
		m.data[at] ^= 1 << m.IntN(8)
	case 1:
		m.data[at] = byte(m.Uint32())
	case 2:
		m.put(at, at, []byte{byte(m.Uint32())})
	case 3:
		m.put(at, at+m.short(at), nil)
	case 4, 5:
		m.put(at, at, []byte(m.word()))
	case 6, 7:
		from, to := m.piece(at)
		m.put(from, to, []byte(m.word()))
	case 8:
		m.put(at, at, m.data[at:at+m.short(at)])
	case 9:
		from, to := m.line(at)
		other, until := m.line(m.IntN(len(m.data)))
		m.put(other, other+(until-other)*m.IntN(2), m.data[from:to])
	case 10:
		other := m.seeds[m.IntN(len(m.seeds))]
		if len(other) > 0 {
			from := m.IntN(len(other))
			m.put(at, at+m.short(at), other[from:from+min(1+m.IntN(64), len(other)-from)])
		}
	}
}

// put puts bytes in the place of some, unless that is too long.
func (m *mutator) put(from, to int, in []byte) {
	if len(m.data)-(to-from)+len(in) > m.most {
		return
	}
	m.spare = append(append(append(m.spare[:0], m.data[:from]...), in...), m.data[to:]...)
	m.data, m.spare = m.spare, m.data
}

func (m *mutator) word() string { return m.words[m.IntN(len(m.words))] }

// short is the length of a piece from there, mostly a short one.
func (m *mutator) short(at int) int {
	most := 8
	if m.IntN(8) == 0 {
		most = len(m.data)
	}
	return 1 + m.IntN(min(most, len(m.data)-at))
}

// piece is the word or number round a place.
func (m *mutator) piece(at int) (from, to int) {
	plain := func(b byte) bool {
		return b >= '0' && b <= '9' || b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' || b == '_' || b == '.' || b == '-'
	}
	for from, to = at, at+1; from > 0 && plain(m.data[from-1]); from-- {
	}
	for to < len(m.data) && plain(m.data[to]) {
		to++
	}
	return from, to
}

// line is the line round a place, with its end.
func (m *mutator) line(at int) (from, to int) {
	for from = at; from > 0 && m.data[from-1] != '\n'; from-- {
	}
	for to = at; to < len(m.data) && m.data[to] != '\n'; to++ {
	}
	return from, min(to+1, len(m.data))
}
