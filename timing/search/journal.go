package search

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// ErrJournal is a journal of another job, or of another program's figures.
var ErrJournal = errors.New("not this search's journal")

// ErrMissing are candidates that no journal holds.
var ErrMissing = errors.New("candidates are missing")

// figuresVersion stands in journals. It goes up where the same design would get other figures.
const figuresVersion = 2

// journal is what was found, one line each: a CSV. Lines of stage screened hold candidates as
// screening left them, of stage full those with full figures. Numbers are exact.
type journal struct {
	to       io.Writer // nil: nothing is written down
	lines    bytes.Buffer
	screened map[int]screened
	full     map[int]screened
}

var columns = []string{"stage", "variant", "broken", "loss_db", "level_db", "onset_hz", "evenness_db", "lowest_hz", "drivers", "channels",
	"price", "plastic_kg", "mass_kg", "hours", "litres", "width_m", "height_m", "depth_m", "pieces"}

// JournalBegins is what each journal begins with.
const JournalBegins = "pappus search,"

// header are a journal's first two lines: what job it is of, and the columns.
func (r *run) header() string {
	h := sha256.New()
	fmt.Fprintf(h, "%d\n%d\n%d\n%s", figuresVersion, r.Space, r.Job.Seed, r.Job.Text)
	return JournalBegins + hex.EncodeToString(h.Sum(nil)[:12]) + "\n" + strings.Join(columns, ",") + "\n"
}

// openJournal reads what a journal holds, takes off a last line that is not whole, and goes on
// at its end; nil is one that holds nothing and keeps nothing.
func openJournal(j Journal, header string) (*journal, error) {
	if j == nil {
		return &journal{}, nil
	}
	if _, err := j.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	out, size, err := readLines(j, header)
	if err != nil {
		return nil, err
	}
	if err := j.Truncate(size); err != nil {
		return nil, err
	}
	if _, err := j.Seek(size, io.SeekStart); err != nil {
		return nil, err
	}
	if out.to = j; size == 0 {
		_, err = io.WriteString(j, header)
	}
	return out, err
}

// readJournal reads what a journal holds.
func readJournal(from io.Reader, header string) (*journal, error) {
	out, _, err := readLines(from, header)
	return out, err
}

// readLines reads whole lines, and says how many bytes they are.
func readLines(from io.Reader, header string) (*journal, int64, error) {
	out := &journal{screened: map[int]screened{}, full: map[int]screened{}}
	in, size, begin := bufio.NewReader(from), int64(0), ""
	for number := 1; ; number++ {
		line, err := in.ReadString('\n')
		if err == io.EOF { // the last line is not whole
			if size < int64(len(header)) {
				if !strings.HasPrefix(header, begin+line) {
					return nil, 0, ErrJournal
				}
				size = 0
			}
			return out, size, nil
		}
		if err != nil {
			return nil, 0, err
		}
		if size += int64(len(line)); size <= int64(len(header)) {
			if begin += line; !strings.HasPrefix(header, begin) {
				return nil, 0, ErrJournal
			}
			continue
		}
		if err := out.take(strings.TrimSuffix(line, "\n")); err != nil {
			return nil, 0, fmt.Errorf("line %d: %w: %w", number, ErrJournal, err)
		}
	}
}

// take takes one line in.
func (j *journal) take(line string) error {
	field := strings.Split(line, ",")
	if len(field) != len(columns) {
		return fmt.Errorf("%d columns in place of %d", len(field), len(columns))
	}
	var s screened
	var err error
	if s.variant, err = strconv.Atoi(field[1]); err != nil {
		return err
	}
	s.Broken = field[2]
	for i, to := range s.numbers() {
		if err := to.read(field[3+i]); err != nil {
			return err
		}
	}
	switch field[0] {
	case "screened":
		j.screened[s.variant] = s
	case "full":
		j.full[s.variant] = s
	default:
		return fmt.Errorf("no stage is called %q", field[0])
	}
	return nil
}

// cell is a figure in a line: one of both.
type cell struct {
	real  *float64
	whole *int
}

// numbers are the figures in the order of their columns.
func (f *Figures) numbers() []cell {
	r := func(v *float64) cell { return cell{real: v} }
	n := func(v *int) cell { return cell{whole: v} }
	return []cell{r(&f.Loss), r(&f.Level), r(&f.Onset), r(&f.Evenness), r(&f.Lowest), n(&f.Drivers), n(&f.Channels),
		r(&f.Price), r(&f.Plastic), r(&f.Mass), r(&f.Hours), r(&f.Litres), r(&f.Width), r(&f.Height), r(&f.Depth), n(&f.Pieces)}
}

func (c cell) read(text string) (err error) {
	switch {
	case c.whole != nil:
		*c.whole, err = strconv.Atoi(text)
	case text == "":
		*c.real = math.NaN()
	default:
		*c.real, err = strconv.ParseFloat(text, 64)
	}
	return err
}

func (c cell) String() string {
	switch {
	case c.whole != nil:
		return strconv.Itoa(*c.whole)
	case math.IsNaN(*c.real):
		return ""
	}
	return strconv.FormatFloat(*c.real, 'g', -1, 64)
}

// note adds a line to what the next flush writes.
func (j *journal) note(stage string, s screened) {
	if j.to == nil {
		return
	}
	j.lines.WriteString(stage + "," + strconv.Itoa(s.variant) + "," + s.Broken)
	for _, c := range s.numbers() {
		j.lines.WriteString("," + c.String())
	}
	j.lines.WriteByte('\n')
}

// flush writes what was noted.
func (j *journal) flush() error {
	if j.to == nil || j.lines.Len() == 0 {
		return nil
	}
	_, err := j.lines.WriteTo(j.to)
	return err
}

// missing says which candidates no journal holds.
func missing(known map[int]screened, n int) error {
	first := 0
	for _, is := known[first]; is; _, is = known[first] {
		first++
	}
	return fmt.Errorf("%w: %d of %d, the first is %d", ErrMissing, n-len(known), n, first)
}
