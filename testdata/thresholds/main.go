// Command thresholds shows where constants stand between what is missed and what is a false alarm: it
// judges the cases of a trial, which are made once, with each at a half to twice what it is.
//
//	go run ./testdata/thresholds [-in timing/verdict] [-cases 100] [-first 0] [-by 0.7,1,1.4] PACKAGE NAME,NAME... [PACKAGE NAME,...]
//
// The trial is that of timing/verdict, of loudspeakers, or of timing/recording, of single recordings. PACKAGE is one of
// the two, and NAME one of its constants. Loudspeakers' recordings are analysed once where
// none is of the latter, and those that cannot be used are left out then. It prints CSV: what
// a constant is multiplied by and what it is then, of how many faults how many were missed and named otherwise, of how many
// cases without any how many were called faulty, all words that were said of what has no fault,
// and the percentage of 95 percent intervals that held the truth: of levels, times and thirds of octaves of
// loudspeakers; of levels within the gate and of all that is heard of recordings, and of how many levels that
// are told and within 0.3 dB of the truth.
package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"pappus/timing/trial"
)

func main() {
	cases := flag.Int("cases", 100, "how many made-up cases")
	first := flag.Int("first", 0, "the first of them")
	by := flag.String("by", "0.5,0.7,1,1.4,2", "what each constant is multiplied by")
	in := flag.String("in", "timing/verdict", "whose trial")
	flag.Parse()
	if err := run(*in, *first, *cases, *by, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(in string, first, cases int, by string, args []string) error {
	if len(args) < 2 || len(args)%2 != 0 {
		return fmt.Errorf("which package, and which constants?")
	}
	files, names, kept := map[string][]constant{}, "", true
	for i := 0; i < len(args); i += 2 {
		for _, name := range strings.Split(args[i+1], ",") {
			c, err := find(args[i], name)
			if err != nil {
				return err
			}
			files[c.file] = append(files[c.file], c)
		}
		names += "," + args[i+1]
		kept = kept && strings.TrimSuffix(filepath.ToSlash(filepath.Clean(args[i])), "/") == "timing/verdict"
	}
	folder, err := os.MkdirTemp("", "threshold")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	list, err := overlay(folder, files)
	if err != nil {
		return err
	}
	test := exec.Command("go", "test", "-vet=off", "-overlay", list, "-count=1", "-timeout=9h", "-run", "^TestTried$", "-v", "./"+in,
		"-first", strconv.Itoa(first), "-cases", strconv.Itoa(cases), "-try", names[1:], "-by", by)
	if kept {
		test.Args = append(test.Args, "-kept")
	}
	test.Stderr = os.Stderr
	out, err := test.StdoutPipe()
	if err != nil {
		return err
	}
	if err := test.Start(); err != nil {
		return err
	}
	return errors.Join(tell(out), test.Wait())
}

// overlay writes files with their constants loosened, and the list of them that go reads.
func overlay(folder string, files map[string][]constant) (list string, err error) {
	replace := map[string]string{}
	for file, some := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return "", err
		}
		changed := filepath.Join(folder, strconv.Itoa(len(replace))+".go")
		if err := os.WriteFile(changed, []byte(loosen(string(text), some)), 0o600); err != nil {
			return "", err
		}
		replace[file] = changed
	}
	text, err := json.Marshal(map[string]map[string]string{"Replace": replace})
	if err != nil {
		return "", err
	}
	list = filepath.Join(folder, "overlay.json")
	return list, os.WriteFile(list, text, 0o600)
}

// tell prints a line for each table of a trial, as it comes, and what else the test says beside that.
func tell(out io.Reader) error {
	head, text, named := "", "", false
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		said := lines.Text()
		if name, begins := strings.CutPrefix(said, "tried "); begins {
			head, text = strings.ReplaceAll(name, " ", ","), ""
			continue
		}
		switch {
		case head == "":
			fmt.Fprintln(os.Stderr, said)
		case said != "":
			text += said + "\n"
		default:
			table, err := trial.Read(text)
			if err != nil {
				return err
			}
			columns, counts := line(table)
			if !named {
				fmt.Println("constant,times,value," + columns)
			}
			named = true
			fmt.Println(head + "," + counts)
			head = ""
		}
	}
	return lines.Err()
}

// shares are what a trial tells shares of, where its table has them.
var shares = []struct{ of, what, column string }{
	{"level of a channel", trial.Covered, "levels_percent"}, {"time of a channel", trial.Covered, "times_percent"},
	{"third of an octave", trial.Covered, "thirds_percent"},
	{"gated level", trial.Covered, "gated_percent"}, {"whole level", trial.Covered, "whole_percent"},
	{"gated level", trial.Useful, "gated_useful_percent"}, {"whole level", trial.Useful, "whole_useful_percent"},
}

// line sums a table up, and names the columns.
func line(t trial.Table) (columns, counts string) {
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
	columns = "faults,missed,named_otherwise,sound,called_faulty,false_words"
	counts = fmt.Sprintf("%d,%d,%d,%d,%d,%d", missed.Cases, missed.Times, otherwise.Times, wrong.Cases, wrong.Times, words.Times)
	for _, s := range shares {
		if c := t.Of(s.of, s.what); c.Cases > 0 {
			columns, counts = columns+","+s.column, counts+fmt.Sprintf(",%.1f", 100*c.Share())
		}
	}
	return columns, counts
}
