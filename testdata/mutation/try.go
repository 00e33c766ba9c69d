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
	parallel  int
	run, skip string
}

// try changes each number up and down, prints which changes survive, and returns how many.
func try(o options, p source, sites []site) (alive int, err error) {
	folder, err := os.MkdirTemp("", "mutation")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(folder)
	began := time.Now()
	if passed, said, err := o.test(p, "", time.Hour); err != nil {
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
	passed, _, err := o.test(p, base+".json", patience)
	return passed, err
}

// test runs the tests of a package, with an overlay where there is one, and tells whether they pass.
func (o options) test(p source, overlay string, patience time.Duration) (passed bool, said string, err error) {
	arguments := []string{"test", "-count=1", "-failfast", "-vet=off", "-timeout", patience.String()}
	for name, value := range map[string]string{"overlay": overlay, "run": o.run, "skip": o.skip} {
		if value != "" {
			arguments = append(arguments, "-"+name+"="+value)
		}
	}
	// The tests' own clock ends those that never end; this one, a build that hangs.
	ctx, cancel := context.WithTimeout(context.Background(), 2*patience)
	defer cancel()
	cmd := exec.CommandContext(ctx, "go", append(arguments, p.path)...)
	cmd.Dir = p.dir
	text, err := cmd.CombinedOutput()
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return false, string(text), nil
	}
	return err == nil, string(text), err
}
