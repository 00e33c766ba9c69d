package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

// options are how tests are run.
type options struct {
	parallel         int
	run, skip, first string
}

// trying is the changes of a package's numbers, tried one at a time.
type trying struct {
	options
	source
	sites    []site
	folder   string
	switches []int         // sites that one build does for
	patience time.Duration // what never ends is noticed, too
	quick    string        // tests that take less than a second, which most changes are noticed by
}

// try changes each number up and down, prints which changes survive, and returns how many.
func try(o options, p source, sites []site) (alive int, err error) {
	folder, err := os.MkdirTemp("", "mutation")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(folder)
	t := &trying{options: o, source: p, sites: sites, folder: folder, patience: time.Hour}
	if err := t.build(); err != nil {
		return 0, err
	}
	began := time.Now()
	passed, said, err := t.command("", t.whole(), "-test.v", "-test.run="+o.run, "-test.skip="+o.skip, "-test.timeout=1h")
	if err != nil {
		return 0, err
	} else if !passed {
		return 0, fmt.Errorf("%s: its tests fail as it is:\n%s", p.path, said)
	}
	t.patience, t.quick = time.Minute+10*time.Since(began), quickOf(said)
	fmt.Fprintf(os.Stderr, "%s: one build for %d of %d numbers, tests take %.0f s\n", p.path, len(t.switches), len(sites), time.Since(began).Seconds())
	return t.all()
}

// all tries all changes.
func (t *trying) all() (alive int, err error) {
	var group sync.WaitGroup
	var lock sync.Mutex
	seats, done := make(chan struct{}, max(1, t.parallel)), 0
	for i, s := range t.sites {
		for k, to := range s.changed {
			seats <- struct{}{}
			group.Go(func() {
				defer func() { <-seats }()
				survives, wrong := t.survives(i, k)
				lock.Lock()
				defer lock.Unlock()
				if done++; done%20 == 0 {
					fmt.Fprintf(os.Stderr, "%d changes tried\n", done)
				}
				err = errors.Join(err, wrong)
				if survives {
					alive++
					fmt.Printf("%s survives as %s\n", s, to)
				}
			})
		}
	}
	group.Wait()
	return alive, err
}

// whole is the path of the tests that are built once.
func (t *trying) whole() string { return filepath.Join(t.folder, "whole.test") }

// build builds the tests with all numbers in it that can be switched.
func (t *trying) build() error {
	t.switches = t.switchable(t.sites)
	for {
		passed, said, err := t.compile("whole", t.switched(t.sites, t.switches))
		if err != nil || passed {
			return err
		}
		less := blamed(t.sites, t.switches, said)
		if len(less) == len(t.switches) {
			return fmt.Errorf("%s: its tests do not build:\n%s", t.path, said)
		}
		t.switches = less
	}
}

// compile builds the tests with files in place of others, or beside them.
func (t *trying) compile(name string, files map[string]string) (passed bool, said string, err error) {
	base, replace := filepath.Join(t.folder, name), map[string]string{}
	for path, text := range files {
		replace[path] = fmt.Sprintf("%s_%d.go", base, len(replace))
		if err := os.WriteFile(replace[path], []byte(text), 0o600); err != nil {
			return false, "", err
		}
	}
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return false, "", err
	}
	if err := os.WriteFile(base+".json", overlay, 0o600); err != nil {
		return false, "", err
	}
	return t.command("", "go", "test", "-c", "-vet=off", "-overlay="+base+".json", "-o", base+".test", t.path)
}

// survives tells whether the tests pass with a number changed to one of what it is changed to.
func (t *trying) survives(i, k int) (bool, error) {
	if slices.Contains(t.switches, i) {
		return t.test(t.whole(), fmt.Sprintf("MUTATED=%c%d", "+-"[k], i))
	}
	s, name := t.sites[i], fmt.Sprintf("%d_%d", i, k)
	text := t.text[s.file]
	// In brackets, since what stands beside it may bind it otherwise.
	changed := string(text[:s.from]) + "(" + s.changed[k] + ")" + string(text[s.to:])
	defer os.Remove(filepath.Join(t.folder, name+".test"))
	if passed, _, err := t.compile(name, map[string]string{s.file: changed}); err != nil || !passed {
		return false, err
	}
	return t.test(filepath.Join(t.folder, name+".test"), "")
}

// test runs tests until one fails, those that are to be first and the quick ones before all others,
// and tells whether all pass.
func (t *trying) test(binary, environment string) (passed bool, err error) {
	for _, tests := range [][2]string{{t.first, t.skip}, {t.quick, t.skip}, {t.run, t.skip}} {
		if tests[0] == "" && t.first+t.quick != "" && tests != [2]string{t.run, t.skip} {
			continue
		}
		passed, _, err = t.command(environment, binary, "-test.failfast", "-test.run="+tests[0], "-test.skip="+tests[1], "-test.timeout="+t.patience.String())
		if err != nil || !passed {
			break
		}
	}
	return passed, err
}

var took = regexp.MustCompile(`(?m)^--- PASS: (\S+) \((\d+\.\d+)s\)`)

// quickOf returns an expression for the tests that took less than a second, of what go test says with -v.
func quickOf(said string) string {
	var names []string
	for _, m := range took.FindAllStringSubmatch(said, -1) {
		if s, err := strconv.ParseFloat(m[2], 64); err == nil && s < 1 {
			names = append(names, m[1])
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "^(" + strings.Join(names, "|") + ")$"
}

// command runs a command in the package's folder, with a variable of the environment, and tells whether its exit
// code is 0.
func (t *trying) command(environment, name string, arguments ...string) (passed bool, said string, err error) {
	// The tests' own clock ends those that never end; this one, a build that hangs.
	ctx, cancel := context.WithTimeout(context.Background(), 2*t.patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, name, arguments...)
	cmd.Dir = t.dir
	if environment != "" {
		cmd.Env = append(os.Environ(), environment)
	}
	text, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return false, string(text), nil
	}
	return err == nil, string(text), err
}
