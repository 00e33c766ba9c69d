// Command thresholds shows where a constant stands between what is missed and what is a false alarm: it
// tries the trial of timing/verdict with it at a half to twice what it is.
//
//	go run ./testdata/thresholds [-cases 100] [-by 0.5,0.7,0.85,1,1.2,1.4,2] PACKAGE NAME...
//
// PACKAGE is timing/verdict or timing/recording, and NAME one of its constants. A line has what
// it is multiplied by, of how many faults how many were missed and named otherwise, of how many
// loudspeakers without any how many were called faulty, all words that were said of what has no fault,
// and the share of 95 percent intervals that held the truth of levels, times and thirds of octaves.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"pappus/timing/trial"
)

func main() {
	cases := flag.Int("cases", 100, "how many made-up cases")
	by := flag.String("by", "0.5,0.7,0.85,1,1.2,1.4,2", "what the constant is multiplied by")
	flag.Parse()
	if err := run(*cases, *by, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(cases int, by string, args []string) error {
	if len(args) < 2 {
		return fmt.Errorf("which package, and which constants?")
	}
	for _, name := range args[1:] {
		c, err := find(args[0], name)
		if err != nil {
			return err
		}
		fmt.Printf("%s %s = %s\n", args[0], name, c.value)
		for _, text := range strings.Split(by, ",") {
			factor, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return err
			}
			table, err := c.try(factor, cases)
			if err != nil {
				return fmt.Errorf("%s times %g: %w", name, factor, err)
			}
			fmt.Printf("%5g  %s\n", factor, line(table))
		}
	}
	return nil
}

// try runs the trial with a constant multiplied by something.
func (c constant) try(factor float64, cases int) (trial.Table, error) {
	folder, err := os.MkdirTemp("", "threshold")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	changed, list := filepath.Join(folder, "changed.go"), filepath.Join(folder, "overlay.json")
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {c.file: changed}})
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(changed, []byte(c.times(factor)), 0o600); err != nil {
		return nil, err
	}
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		return nil, err
	}
	out, err := exec.Command("go", "test", "-v", "-overlay", list, "-count=1", "-timeout=60m", "-run", "^TestTrial$", "./timing/verdict",
		"-cases", strconv.Itoa(cases), "-figures").CombinedOutput()
	text := string(out)
	from := strings.Index(text, strings.Join(trial.Columns, ","))
	if from < 0 { // a trial that does not hold has a table, too
		return nil, fmt.Errorf("no table: %v\n%s", err, text)
	}
	lines, _, _ := strings.Cut(text[from:], "\n\n")
	return trial.Read(lines)
}

// line sums a table up.
func line(t trial.Table) string {
	count := func(what string, of func(string) bool) (c trial.Count) {
		for _, r := range t {
			if r.What == what && of(r.Of) {
				c.Cases, c.Times = c.Cases+r.Cases, c.Times+r.Times
			}
		}
		return c
	}
	all, none := func(string) bool { return true }, func(of string) bool { return of == "none" }
	missed, otherwise := count(trial.Missed, all), count("named otherwise", all)
	wrong, words := count(trial.FalseAlarm, none), count(trial.FalseAlarm, func(of string) bool { return of != "none" })
	text := fmt.Sprintf("missed %d and named otherwise %d of %d, called faulty %d of %d, words %d, covered", missed.Times, otherwise.Times, missed.Cases, wrong.Times, wrong.Cases, words.Times)
	for _, of := range []string{"level of a channel", "time of a channel", "third of an octave"} {
		text += fmt.Sprintf(" %.1f", 100*t.Of(of, trial.Covered).Share())
	}
	return text + " percent"
}
