package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"
	"time"
)

// options are how tests are run.
type options struct {
	parallel         int
	run, skip, first string
}

// try changes each number up and down, prints which changes survive, and returns how many.
func try(o options, p source, sites []site) (alive int, err error) {
	folder, err := os.MkdirTemp("", "mutation")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(folder)
	began := time.Now()
	if passed, said, err := o.test(p, filepath.Join(folder, "whole"), time.Hour); err != nil {
		return 0, err
	} else if !passed {
		return 0, fmt.Errorf("%s: its tests fail as it is:\n%s", p.path, said)
	}
	// What never ends is noticed, too.
	patience := time.Minute + 10*time.Since(began)
	var group sync.WaitGroup
	var lock sync.Mutex
	seats := make(chan struct{}, max(1, o.parallel))
	for i, s := range sites {
		for k, to := range s.changed {
			seats <- struct{}{}
			group.Go(func() {
				defer func() { <-seats }()
				survives, wrong := o.survives(p, s, to, filepath.Join(folder, strconv.Itoa(2*i+k)), patience)
				lock.Lock()
				defer lock.Unlock()
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

// survives tells whether the tests pass with a number changed; base is the path of files to
// write for it.
func (o options) survives(p source, s site, to, base string, patience time.Duration) (bool, error) {
	text := p.text[s.file]
	// In brackets, since what stands beside it may bind it otherwise.
	changed := bytes.Join([][]byte{text[:s.from], []byte("(" + to + ")"), text[s.to:]}, nil)
	overlay, err := json.Marshal(map[string]any{"Replace": map[string]string{s.file: base + ".go"}})
	if err != nil {
		return false, err
	}
	if err := os.WriteFile(base+".go", changed, 0o600); err != nil {
		return false, err
	}
	if err := os.WriteFile(base+".json", overlay, 0o600); err != nil {
		return false, err
	}
	passed, _, err := o.test(p, base, patience)
	return passed, err
}

// test builds the tests of a package into a file of a base path, with the overlay beside it where
// there is one, runs them, and tells whether they pass: those that are to be first, then all.
func (o options) test(p source, base string, patience time.Duration) (passed bool, said string, err error) {
	build := []string{"test", "-c", "-vet=off", "-o", base + ".test"}
	if _, err := os.Stat(base + ".json"); err == nil {
		build = append(build, "-overlay="+base+".json")
	}
	defer os.Remove(base + ".test")
	if passed, said, err := o.command(p, patience, "go", append(build, p.path)...); err != nil || !passed {
		return passed, said, err
	}
	runs := []string{o.run}
	if o.first != "" {
		runs = []string{o.first, o.run}
	}
	for _, run := range runs {
		passed, said, err = o.command(p, patience, base+".test", "-test.failfast", "-test.run="+run, "-test.skip="+o.skip, "-test.timeout="+patience.String())
		if err != nil || !passed {
			break
		}
	}
	return passed, said, err
}

// command runs a command in the package's folder, and tells whether its exit code is 0.
func (o options) command(p source, patience time.Duration, name string, arguments ...string) (passed bool, said string, err error) {
	// The tests' own clock ends those that never end; this one, a build that hangs.
	ctx, cancel := context.WithTimeout(context.Background(), 2*patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, name, arguments...)
	cmd.Dir = p.dir
	text, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return false, string(text), nil
	}
	return err == nil, string(text), err
}
