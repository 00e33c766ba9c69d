package main

import (
	"errors"
	"io"
	"os"
	"strings"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/spf13/cobra"
)

// flags are those that every command knows.
type flags struct {
	quiet bool
	json  bool
}

func newRoot() *cobra.Command {
	f := new(flags)
	root := &cobra.Command{
		Use:   "pappus",
		Short: "Plan a loudspeaker that is a ball or a dome of many small drivers",
		Long: "Pappus plans a loudspeaker that is a ball or a dome of many small drivers:\n" +
			"where each driver sits, when it is heard at the listening spot, which delay\n" +
			"brings it into step, and what that sounds like there and in the rest of the room.",
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.PersistentFlags().BoolVarP(&f.quiet, "quiet", "q", false, "say nothing but errors")
	root.PersistentFlags().BoolVar(&f.json, "json", false, "print the result as JSON")
	root.AddCommand(newPlan(f), newChannels(f), newWiring(f), newSheets(f), newLevel(f), newCompare(f), newListen(f), newServe(f), newSweep(f), newMeasure(f), newImpedance(f), newTune(f), newNew(f), newVersion(f))
	return root
}

// load reads and lays out the design at a path, the built-in demo where there
// is none.
func load(path string) (*layout.Array, error) {
	if path == "" {
		return layout.Build(design.Default())
	}
	d, err := design.Read(path)
	if err != nil {
		return nil, err
	}
	return layout.Build(d)
}

// first returns the first of the arguments, or nothing.
func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}

// colour tells whether what is written may be coloured: on a terminal, and with
// NO_COLOR not set (no-color.org).
func colour(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && terminal(f)
}

// oneLine keeps an error to one line.
func oneLine(err error) error {
	if err == nil || !strings.ContainsAny(err.Error(), "\r\n") {
		return err
	}
	return errors.New(strings.Join(strings.Fields(err.Error()), " "))
}
