package search

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"pappus/testdata/drawn"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// FuzzJournal: any bytes are a journal, whose lines come back as they were when they are written
// again, or one of another job.
func FuzzJournal(f *testing.F) {
	header := JournalBegins + "00112233445566778899aabb\n" + strings.Join(columns, ",") + "\n"
	line := func(stage string) string {
		return stage + ",7,,-0.5,88.25,1e3,,150,24,4,120,0.5,1.25,10.5,4,0.3,0.25,0.3,1\n"
	}
	drawn.Bytes(f, []string{"", header, header[:30], header + line("screened") + line("full"), header + line("screened") + line("full")[:20],
		header + strings.Replace(line("full"), ",7,,", ",3,width_m,", 1)}, func(t testing.TB, data []byte) {
		got, size, err := readLines(bytes.NewReader(data), header)
		if err != nil {
			if !errors.Is(err, ErrJournal) || strings.ContainsAny(err.Error(), "\n\r\x1b") {
				t.Fatalf("%q", err)
			}
			return
		}
		if size < 0 || size > int64(len(data)) {
			t.Fatalf("%d of %d bytes", size, len(data))
		}
		var written bytes.Buffer
		again := journal{to: &written}
		for _, s := range got.screened {
			again.note("screened", s)
		}
		for _, s := range got.full {
			again.note("full", s)
		}
		if err := again.flush(); err != nil {
			t.Fatal(err)
		}
		back, err := readJournal(strings.NewReader(header+written.String()), header)
		if err != nil {
			t.Fatal(err)
		}
		same := cmp.Options{cmp.AllowUnexported(journal{}, screened{}), cmpopts.IgnoreFields(journal{}, "to", "lines"), cmpopts.EquateNaNs(), cmpopts.EquateEmpty()}
		if len(got.screened)+len(got.full) > 0 {
			if diff := cmp.Diff(got, back, same); diff != "" {
				t.Fatal(diff)
			}
		}
	})
}
