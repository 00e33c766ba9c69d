package main

import (
	"bufio"
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"pappus/layout/lock"
	"pappus/layout/wholefolder"

	"github.com/google/go-cmp/cmp"
	"github.com/spf13/cobra"
)

// TestStops: a command that does not look at its context is left as it is; one that keeps what
// it found has the time to after Ctrl-C, and not after another signal.
func TestStops(t *testing.T) {
	for _, c := range []struct {
		name   string
		by     os.Signal
		keeps  bool
		stops  bool // by itself
		abides bool // its own error is returned
	}{
		{"stops", os.Interrupt, false, true, true},
		{"runs on", os.Interrupt, false, false, false},
		{"runs on, to be ended", syscall.SIGTERM, false, false, false},
		{"keeps what it found", os.Interrupt, true, false, true},
		{"keeps what it found, to be ended", syscall.SIGTERM, true, false, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			own := errors.New("its own")
			ctx, end := context.WithCancelCause(t.Context())
			one := &cobra.Command{Use: "one", RunE: func(one *cobra.Command, _ []string) error {
				end(ended{c.by})
				if !c.stops {
					time.Sleep(2 * inOrder)
				}
				return own
			}}
			if c.keeps {
				one.Annotations = map[string]string{keepsFound: ""}
			}
			root := &cobra.Command{SilenceErrors: true, SilenceUsage: true}
			root.AddCommand(one)
			root.SetArgs([]string{"one"})
			if err := execute(ctx, root, []string{"one"}); errors.Is(err, own) != c.abides || errors.Is(err, context.Canceled) == c.abides {
				t.Errorf("%v", err)
			}
		})
	}
}

// TestSecondRun: while another run has the folder, each command waits and says so, stops by a
// signal with its exit code and nothing new, and goes on when the other is done.
func TestSecondRun(t *testing.T) {
	folder := killGround(t)
	out := filepath.Join(folder, "out")
	before := treeOf(t, folder)
	signals := []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP}
	codes := []int{130, 143, 129}
	for i, v := range victims {
		if !strings.HasSuffix(v.args, "-o out") || !v.quick && i%3 > 0 {
			continue
		}
		t.Run(v.name, func(t *testing.T) {
			var held interface{ Close() error }
			var err error
			if v.name == "search" {
				held, err = lock.Try(filepath.Join(out, "screened.csv.part"))
			} else {
				held, err = lock.Try(filepath.Join(out, ".pappus-lock"))
			}
			if err != nil {
				t.Fatal(err)
			}
			c, lines := waiting(t, folder, v.args)
			if err := c.Process.Signal(signals[i%3]); err != nil {
				t.Fatal(err)
			}
			if !lines.Scan() || lines.Text() != "pappus: stopped before it was done" {
				t.Errorf("said %q", lines.Text())
			}
			_ = c.Wait() // its exit code is looked at
			if code := c.ProcessState.ExitCode(); code != codes[i%3] {
				t.Errorf("exit code %d", code)
			}
			if diff := cmp.Diff(before, treeOf(t, folder)); diff != "" {
				t.Error(diff)
			}
			if err := held.Close(); err != nil {
				t.Error(err)
			}
			_ = os.Remove(filepath.Join(out, "screened.csv.part"))
		})
	}
	first, err := wholefolder.Hold(t.Context(), out, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := waiting(t, folder, "wiring four.toml -o out")
	first.Release()
	if err := c.Wait(); err != nil {
		t.Error(err)
	}
	if cmp.Equal(before, treeOf(t, folder)) {
		t.Error("the second run wrote nothing")
	}
}

// waiting starts a command that waits for another run, and reads what it says.
func waiting(t *testing.T, folder, args string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	c := exec.Command("pappus", strings.Fields(args)...)
	c.Dir, c.Env = folder, killEnv()
	said, err := c.StderrPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(said)
	if !lines.Scan() || !strings.HasPrefix(lines.Text(), "Another run is at work on out") {
		t.Fatalf("%s: said %q", args, lines.Text())
	}
	return c, lines
}
