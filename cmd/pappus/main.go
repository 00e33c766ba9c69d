// Command pappus plans loudspeakers that are balls or domes of many small
// drivers. README.md says how it is used; the work is done by the packages
// layout, timing, render and preview.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
)

// memory is where the garbage collector begins to work harder, in bytes: a plan
// should run beside other programs on a small machine.
const memory = 180 << 20

func main() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memory)
	}
	os.Exit(run(os.Args[1:]))
}

// run does what the command line says and returns the exit code: 0, or 1 with
// one line on standard error.
func run(args []string) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	root := newRoot()
	root.SetArgs(args)
	if err := root.ExecuteContext(ctx); err != nil {
		fmt.Fprintln(os.Stderr, "pappus:", err)
		return 1
	}
	return 0
}
