package csvtable_test

import (
	"encoding/binary"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"pappus/layout/csvtable"
	"pappus/layout/design"
	"pappus/testdata/drawn"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

var table = csvtable.Table{File: "t.csv", Columns: []csvtable.Column{
	{Name: "frequency_hz", Low: 1, High: 100000},
	{Name: "level_db", Low: -500, High: 500},
	{Name: "phase_deg", Low: -1e6, High: 1e6},
	{Name: "number", Low: 1, High: 10000, Optional: true},
}}

func read(data string) (rows [][]float64, lines []int, err error) {
	err = table.Read([]byte(data), func(line int, v []float64) error {
		rows, lines = append(rows, slices.Clone(v)), append(lines, line)
		return nil
	})
	return rows, lines, err
}

func utf16LE(s string) string {
	b := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(s)) {
		b = binary.LittleEndian.AppendUint16(b, u)
	}
	return string(b)
}

// Files as spreadsheets of several countries save them; each line has one reading.
func TestRead(t *testing.T) {
	no := math.NaN()
	const head = "frequency_hz,level_db,phase_deg\n"
	const semi = "frequency_hz;level_db;phase_deg\n"
	for _, c := range []struct {
		name, text string
		want       [][]float64
		lines      []int
	}{
		{"commas and points", head + "100,-1.5,90\n", [][]float64{{100, -1.5, 90, no}}, []int{2}},
		{"three decimals between commas", head + "1.500,-1.500,90\n", [][]float64{{1.5, -1.5, 90, no}}, []int{2}},
		{"semicolons and decimal commas", semi + "100,5;-1,5;90\n", [][]float64{{100.5, -1.5, 90, no}}, []int{2}},
		{"semicolons and points", semi + "100.5;-1.5;90\n", [][]float64{{100.5, -1.5, 90, no}}, []int{2}},
		{"tabs and decimal commas", strings.ReplaceAll(semi, ";", "\t") + "100\t-1,5\t90\n", [][]float64{{100, -1.5, 90, no}}, []int{2}},
		{"quoted decimal commas", head + `"100,5","-1,5","90"` + "\n", [][]float64{{100.5, -1.5, 90, no}}, []int{2}},
		{"one number shows the mark for all", semi + "1,500;0,5;90\n", [][]float64{{1.5, 0.5, 90, no}}, []int{2}},
		{"a column's range shows the mark", semi + "100;-82,125;90\n", [][]float64{{100, -82.125, 90, no}}, []int{2}},
		{"an apostrophe first, for text", semi + "100,5;'0,125;90\n", [][]float64{{100.5, 0.125, 90, no}}, []int{2}},
		{"with exponents", semi + "1,500e3;0;0\n", [][]float64{{1500, 0, 0, no}}, []int{2}},
		{"minus and degree signs", semi + "100;−1,5;−12,5°\n200;–2;12 °\n", [][]float64{{100, -1.5, -12.5, no}, {200, -2, 12, no}}, []int{2, 3}},
		{"byte order mark and CRLF", "\ufeff" + strings.ReplaceAll(head+"100,1,2\n", "\n", "\r\n"), [][]float64{{100, 1, 2, no}}, []int{2}},
		{"CR alone", strings.ReplaceAll(head+"100,1,2\n200,1,2\n", "\n", "\r"), [][]float64{{100, 1, 2, no}, {200, 1, 2, no}}, []int{2, 3}},
		{"UTF-16 with tabs", utf16LE("frequency_hz\tlevel_db\tphase_deg\r\n100\t−1,5\t3°\r\n"), [][]float64{{100, -1.5, 3, no}}, []int{2}},
		{"Latin-1", semi + "100;\x961,5;3\xb0\n", [][]float64{{100, -1.5, 3, no}}, []int{2}},
		{"capitals and another order", "Phase_Deg;NUMBER;Level_dB;Frequency_Hz\n90;7;-1;100\n", [][]float64{{100, -1, 90, 7}}, []int{2}},
		{"empty columns and lines at the end", "frequency_hz;level_db;phase_deg;;\n100;1;2;;\n;;;;\n\n200;1;2\n;;\n", [][]float64{{100, 1, 2, no}, {200, 1, 2, no}}, []int{2, 5}},
		{"empty lines first", ";;\n\n# a remark; with commas, in it\n" + semi + "100;1;2\n", [][]float64{{100, 1, 2, no}}, []int{5}},
		{"remarks between", semi + "# 1;2\n100;1;2\n", [][]float64{{100, 1, 2, no}}, []int{3}},
		{"nothing", head, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			rows, lines, err := read(c.text)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(c.want, rows, cmpopts.EquateNaNs()); d != "" {
				t.Error(d)
			}
			if d := cmp.Diff(c.lines, lines); d != "" {
				t.Error(d)
			}
		})
	}
}

func TestFaults(t *testing.T) {
	const head = "frequency_hz,level_db,phase_deg\n"
	const semi = "frequency_hz;level_db;phase_deg\n"
	for _, c := range []struct {
		name, text, want string
		kind             error
	}{
		{"thousands or decimals", semi + "1,500;3;0\n", `t.csv:2: frequency_hz = "1,500": can be 1.5 or 1500; must be written without a thousands separator, or with other than three decimals`, design.ErrType},
		{"the same with points", semi + "100;0;0\n1.500;3;0\n", `t.csv:3: frequency_hz = "1.500": can be 1.5 or 1500; must be written without a thousands separator, or with other than three decimals`, design.ErrType},
		{"the same in quotes", head + "\"1,500\",3,0\n", `t.csv:2: frequency_hz = "1,500": can be 1.5 or 1500; must be written without a thousands separator, or with other than three decimals`, design.ErrType},
		{"points beside decimal commas", semi + "1.500;3,5;0\n", `t.csv:2: frequency_hz = "1.500": has a point where the decimal mark is the comma; must be written without a thousands separator`, design.ErrType},
		{"commas beside decimal points", head + "\"1,500\",3.5,0\n", `t.csv:2: frequency_hz = "1,500": has a comma where the decimal mark is the point; must be written without a thousands separator`, design.ErrType},
		{"both marks in a number", semi + "1.500,5;3;0\n", `t.csv:2: frequency_hz = "1.500,5": has a thousands separator; must be written without`, design.ErrType},
		{"spaces between thousands", semi + "1 500;3;0\n", `t.csv:2: frequency_hz = "1 500": has a thousands separator; must be written without, as 1500`, design.ErrType},
		{"apostrophes between thousands", semi + "1'500;3;0\n", `t.csv:2: frequency_hz = "1'500": has a thousands separator; must be written without, as 1500`, design.ErrType},
		{"both decimal marks", semi + "100;3,5;0\n200;4.5;0\n", `t.csv:3: level_db = "4.5": has a decimal point, line 2 a decimal comma; must be the same throughout`, design.ErrType},
		{"decimal commas between commas", head + "100,5,3,5,0\n", `t.csv:2: 5 values; must be 3: frequency_hz,level_db,phase_deg; where the comma is the decimal mark, separate values by semicolons, in the first line too`, design.ErrSyntax},
		{"semicolons below commas", head + "100;3;0\n", `t.csv:2: its values are separated by semicolons, those of the first line by commas; must be the same throughout`, design.ErrSyntax},
		{"commas below semicolons", semi + "100,3,0\n", `t.csv:2: its values are separated by commas, those of the first line by semicolons; must be the same throughout`, design.ErrSyntax},
		{"too few", semi + "100;3\n", `t.csv:2: 2 values; must be 3: frequency_hz;level_db;phase_deg`, design.ErrSyntax},
		{"a value missing in the midst", semi + "100;;3\n", `t.csv:2: level_db = "": must be a number from -500 to 500`, design.ErrType},
		{"a column missing", "frequency_hz;level_db\n100;3\n", `t.csv:1: must begin with the line frequency_hz;level_db;phase_deg`, design.ErrSyntax},
		{"a column too many", "frequency_hz;level_db;phase_deg;remark\n100;3;3;new\n", `t.csv:1: "remark" is no column of this table; must begin with the line frequency_hz;level_db;phase_deg`, design.ErrSyntax},
		{"a column twice", "frequency_hz;level_db;phase_deg;Level_dB\n100;3;3;3\n", `t.csv:1: level_db: stands twice in the first line; must stand there once`, design.ErrSyntax},
		{"a degree sign on a level", semi + "100;3°;0\n", `t.csv:2: level_db = "3°": must be a number from -500 to 500, without a degree sign`, design.ErrType},
		{"a dash for nothing", semi + "100;—;0\n", `t.csv:2: level_db = "—": must be a number from -500 to 500`, design.ErrType},
		{"out of range", semi + "100;500,5;0\n", `t.csv:2: level_db = "500,5": must be a number from -500 to 500`, design.ErrRange},
		{"a unit", semi + "100 Hz;3;0\n", `t.csv:2: frequency_hz = "100 Hz": must be a number from 1 to 100000`, design.ErrType},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, err := read(c.text)
			if !errors.Is(err, c.kind) || err.Error() != c.want {
				t.Errorf("\n got %v\nwant %s", err, c.want)
			}
			var e *design.Error
			if !errors.As(err, &e) {
				t.Errorf("%T", err)
			}
		})
	}
}

// What a caller's own error says is what comes back.
func TestStops(t *testing.T) {
	stop, calls := errors.New("stop"), 0
	err := table.Read([]byte("frequency_hz,level_db,phase_deg\n100,1,1\n200,1,1\n"), func(int, []float64) error { calls++; return stop })
	if !errors.Is(err, stop) || calls != 1 {
		t.Errorf("%v after %d calls", err, calls)
	}
}

// FuzzRead: any bytes give numbers in their ranges or an error that names the file.
func FuzzRead(f *testing.F) {
	drawn.Bytes(f, []string{"", "frequency_hz,level_db,phase_deg\n100,-1.5,90\n", "frequency_hz;level_db;phase_deg;number\n1,5;−2;3°;4\n;;;\n",
		"frequency_hz\tlevel_db\tphase_deg\n\"1,500\"\t1'000\t1.5e3\n", utf16LE("frequency_hz;\r\n"), "\xff\xfe\x00", "# \n\"", ";\n;", "frequency_hz;level_db;phase_deg\n1\n"}, func(t testing.TB, data []byte) {
		rows, lines, err := read(string(data))
		if err != nil && !strings.HasPrefix(err.Error(), "t.csv:") {
			t.Errorf("%v", err)
		}
		if len(rows) != len(lines) || !slices.IsSorted(lines) {
			t.Errorf("%d rows on lines %v", len(rows), lines)
		}
		for _, v := range rows {
			for i, c := range table.Columns {
				if !(v[i] >= c.Low && v[i] <= c.High) && !(c.Optional && math.IsNaN(v[i])) {
					t.Errorf("%s = %g", c.Name, v[i])
				}
			}
		}
	})
}
