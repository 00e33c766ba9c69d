// Command pappus plans loudspeakers that are balls or domes of many small
// drivers. README.md says how it is used; the work is done by the packages
// layout, timing, render and preview.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"syscall"
	"time"

	"pappus/layout/prose"
	"pappus/timing/radiate"
	"pappus/timing/store"

	"github.com/spf13/cobra"
)

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		limitMemory()
	}
	radiate.Kept = store.Default()
	os.Exit(run(os.Args[1:]))
}

// run does what the command line says and returns the exit code: 0, or 1 with one line on
// standard error, or 128 and the number of a signal that came before the command was done, with
// a line that says so.
func run(args []string) int {
	ctx, stop := untilSignal(context.Background())
	defer stop()
	root := newRoot()
	root.SetArgs(args)
	err := execute(ctx, root, args)
	by, signalled := context.Cause(ctx).(ended)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "pappus:", said(err))
	case signalled:
		fmt.Fprintln(os.Stderr, "pappus: stopped")
	}
	switch {
	case signalled:
		return by.code()
	case err != nil:
		return 1
	}
	return 0
}

// inOrder is how long a command may take to stop by itself once it is to: half of the second
// within which people take a program for one that answers (Miller 1968, Card et al. 1991).
const inOrder = 500 * time.Millisecond

// keepsFound marks a command that keeps what it has found when Ctrl-C ends it.
const keepsFound = "keeps found"

// execute runs a command until it is done or, once ctx has ended, for as long as it takes to
// stop in good order. What does not stop by then is left as it is and ends with the program:
// what it was writing is taken away by then (outdir.Write), or has never had its name
// (layout/wholefile). One that keeps what it has found has the time to.
func execute(ctx context.Context, root *cobra.Command, args []string) error {
	done := make(chan error, 1)
	go func() { done <- root.ExecuteContext(ctx) }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
	}
	select {
	case err := <-done:
		return err
	case <-time.After(inOrder):
	}
	c, _, _ := root.Find(args) // which it has found before
	_, keeps := c.Annotations[keepsFound]
	if by, _ := context.Cause(ctx).(ended); keeps && by.Signal == os.Interrupt {
		if terminal(os.Stderr) {
			fmt.Fprint(os.Stderr, "\nStopping when what was found is kept; Ctrl-C again stops at once.\n")
		}
		return <-done
	}
	if terminal(os.Stderr) {
		fmt.Fprintf(os.Stderr, "\r%60s\r", "") // what was being done
	}
	return ctx.Err()
}

// said is an error in plain words, on one line.
func said(err error) string {
	if errors.Is(err, context.Canceled) {
		return "stopped before it was done"
	}
	return prose.Error(err)
}

// ended is why a command is to stop.
type ended struct{ os.Signal }

func (e ended) Error() string { return "stopped: " + e.String() }

// code is the exit code of a program that a signal ended (common practice).
func (e ended) code() int {
	if number, ok := e.Signal.(syscall.Signal); ok {
		return 128 + int(number)
	}
	return 1
}

// untilSignal returns a context that Ctrl-C ends, and a signal to end the program or
// that the terminal is gone, so that what is under way stops in good order. A second
// one ends the program at once. Where nohup keeps it running without its terminal it
// goes on.
func untilSignal(ctx context.Context) (context.Context, func()) {
	ctx, cancel := context.WithCancelCause(ctx)
	got := make(chan os.Signal, 1)
	signal.Notify(got, os.Interrupt, syscall.SIGTERM)
	if !signal.Ignored(syscall.SIGHUP) {
		signal.Notify(got, syscall.SIGHUP)
	}
	go func() {
		select {
		case s := <-got:
			cancel(ended{s})
		case <-ctx.Done():
		}
		signal.Stop(got)
	}()
	return ctx, func() { cancel(nil) }
}
