package design_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/testdata/drawn"
)

func asTOML(v float64) string { return strconv.FormatFloat(v, 'e', -1, 64) }

func FuzzParse(f *testing.F) {
	drawn.Bytes(f, []string{
		least,
		string(design.DefaultTOML()),
		least + "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 1, 1]\nabsorption = [0, 1, 0.1, 0.2, 0.3, 0.4, 0.5]\nfloor_absorption = 1\norder = 2\n",
		least + woofer("x_m = -1", "crossover_hz = 300", "order = 2", "sensitivity_db = 88", "invert = true"),
		spotless + "[seats]\naim = \"round\"\nloud = 1\n[[seat]]\nx_m = 2\ny_m = 1\nz_m = 0\nweight = 2\n[[area]]\nshape = \"rectangle\"\ncount = 7\nfrom_m = [1, -1, 1]\nto_m = [2, 1, 1]\n",
		spotless + "[[area]]\nshape = \"arc\"\ncount = 5\nname = \"row\"\nweight = 1\nradius_m = 2\nz_m = 1\nfrom_deg = -60\nto_deg = 60\n",
		"[[channel]]\ndrivers = [1]\n[channel.x]\ny = 1\n[[channel.z]]\n[a.b]\nc.d = {e = [1, {f = 2}]}",
		"\"\\u0000\" = '''\n'''\nair = [[[{}]]]\n'a.b' = 1979-05-27T07:32:00Z",
		"skip = [\n 1, # one\n]\r\nx = nan\ny = -inf\nz = 0x_",
	}, func(t testing.TB, data []byte) {
		text := string(data)
		d, err := design.Parse("fuzz.toml", data)
		if (d == nil) == (err == nil) {
			t.Fatalf("design %v and error %v", d, err)
		}
		if err == nil {
			return
		}
		var e *design.Error
		if !errors.As(err, &e) {
			t.Fatalf("%T", err)
		}
		if e.Line < 0 || e.Line > 1+strings.Count(text, "\n") {
			t.Fatalf("line %d", e.Line)
		}
		if e.Err == nil || e.Reason == "" || strings.ContainsAny(err.Error(), "\n\r\x1b") {
			t.Fatalf("%q", err)
		}
	})
}
