// Command thresholds shows where constants stand between what is missed and what is a false alarm: it
// judges the cases of the trial of timing/verdict, which are recorded once, with each at a half to twice what it is.
//
//	go run ./testdata/thresholds [-cases 100] [-first 0] [-by 0.7,1,1.4] PACKAGE NAME,NAME... [PACKAGE NAME,...]
//
// PACKAGE is timing/verdict or timing/recording, and NAME one of its constants. Recordings are analysed once where
// none is of the latter, and those that cannot be used are left out then. It prints CSV: what
// a constant is multiplied by and what it is then, of how many faults how many were missed and named otherwise, of how many
// loudspeakers without any how many were called faulty, all words that were said of what has no fault,
// and the percentage of 95 percent intervals that held the truth of levels, times and thirds of octaves.
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
	flag.Parse()
	if err := run(*first, *cases, *by, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(first, cases int, by string, args []string) error {
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
	test := exec.Command("go", "test", "-vet=off", "-overlay", list, "-count=1", "-timeout=9h", "-run", "^TestTried$", "-v", "./timing/verdict",
		"-first", strconv.Itoa(first), "-cases", strconv.Itoa(cases), "-try", names[1:], "-by", by, "-kept="+strconv.FormatBool(kept))
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
	fmt.Println("constant,times,value,faults,missed,named_otherwise,sound,called_faulty,false_words,levels_percent,times_percent,thirds_percent")
	head, text := "", ""
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
			fmt.Println(head + "," + line(table))
			head = ""
		}
	}
	return lines.Err()
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
	text := fmt.Sprintf("%d,%d,%d,%d,%d,%d", missed.Cases, missed.Times, otherwise.Times, wrong.Cases, wrong.Times, words.Times)
	for _, of := range []string{"level of a channel", "time of a channel", "third of an octave"} {
		text += fmt.Sprintf(",%.1f", 100*t.Of(of, trial.Covered).Share())
	}
	return text
}
