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
	"runtime/debug"
	"syscall"
	"time"

	"pappus/layout/prose"
	"pappus/timing/radiate"
	"pappus/timing/store"
)

// memory is where the garbage collector begins to work harder, in bytes: a plan
// should run beside other programs on a small machine.
const memory = 180 << 20

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memory)
	}
	radiate.Kept = store.Default()
	os.Exit(run(os.Args[1:]))
}

// run does what the command line says and returns the exit code: 0, or 1 with
// one line on standard error, or 128 and the signal's number for one that ends a
// program, and for Ctrl-C where something was not done for it.
func run(args []string) int {
	ctx, stop := untilSignal(context.Background())
	defer stop()
	defer context.AfterFunc(ctx, func() { time.AfterFunc(patience, stillStopping) })()
	root := newRoot()
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err != nil {
		fmt.Fprintln(os.Stderr, "pappus:", said(err))
	}
	by, ok := context.Cause(ctx).(ended)
	switch {
	case ok && (by.Signal != os.Interrupt || errors.Is(err, context.Canceled)):
		return by.code()
	case err != nil:
		return 1
	}
	return 0
}

// stillStopping says on a terminal that a step which cannot be broken off goes on.
func stillStopping() {
	if terminal(os.Stderr) {
		fmt.Fprint(os.Stderr, "\nStopping when this step is done; Ctrl-C again stops at once.\n")
	}
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
