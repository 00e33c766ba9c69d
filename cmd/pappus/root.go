package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing"

	"github.com/spf13/cobra"
)

// flags are those that every command knows.
type flags struct {
	quiet  bool
	json   bool
	strict bool
	found  []timing.Finding // of all designs that were planned
}

func init() { cobra.EnableCommandSorting = false } // help lists them in the order of the work

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
		Args: func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return noCommand(c, args[0])
			}
			return nil
		},
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetFlagErrorFunc(faultyFlag)
	root.PersistentFlags().BoolVarP(&f.quiet, "quiet", "q", false, "say nothing but errors")
	root.PersistentFlags().BoolVar(&f.json, "json", false, "print the result as JSON")
	root.PersistentFlags().BoolVar(&f.strict, "strict", false, "fail, when all is written, where a design cannot be built or wired as it is")
	root.PersistentPreRunE = func(c *cobra.Command, _ []string) error { return finite(c) }
	root.PersistentPostRunE = func(*cobra.Command, []string) error { return f.judge() }
	group(root, "plan", "Plan it:", newNew(f), newPlan(f), newSearch(f), newServe(f), newCompare(f), newTolerance(f))
	group(root, "hear", "Hear it:", newListen(f))
	group(root, "build", "Build it:", newSheets(f), newKit(f), newWiring(f), newChannels(f), newLevel(f), newLimits(f))
	group(root, "measure", "Measure what was built:", newSweep(f), newMeasure(f), newImpedance(f), newDrivers(f), newTune(f))
	group(root, "more", "More:", newVersion(f))
	root.SetHelpCommand(newHelp(root))
	root.SetCompletionCommandGroupID("more")
	return root
}

// group adds commands that help lists together, in the order in which they are used.
func group(root *cobra.Command, id, title string, commands ...*cobra.Command) {
	root.AddGroup(&cobra.Group{ID: id, Title: title})
	for _, c := range commands {
		c.GroupID = id
		root.AddCommand(c)
	}
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

// planOf plans the design at a path, the built-in demo where there is none.
func (f *flags) planOf(ctx context.Context, said *progress, path string) (*timing.Plan, error) {
	a, err := load(path)
	if err != nil {
		return nil, err
	}
	return f.make(ctx, said, a)
}

// make plans an array, the field of its body solved for first where its model asks for that, and
// remembers what was found wrong with it.
func (f *flags) make(ctx context.Context, said *progress, a *layout.Array) (*timing.Plan, error) {
	if err := solve(ctx, said, a); err != nil {
		return nil, err
	}
	p, err := timing.Make(ctx, a)
	if err == nil {
		f.found = append(f.found, p.Warnings...)
	}
	return p, err
}

// judge fails where --strict was asked for and something cannot be built or wired as
// designed. All has been written and shown by then.
func (f *flags) judge() error {
	stopping := advice.Stopping(words.Findings(f.found))
	if !f.strict || len(stopping) == 0 {
		return nil
	}
	more := ""
	if n := len(stopping) - 1; n > 0 {
		more = fmt.Sprintf("; and %d more", n)
	}
	return errors.New("--strict: " + stopping[0].What + more)
}

// colour tells whether what is written may be coloured: on a terminal, and with
// NO_COLOR not set (no-color.org).
func colour(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb" && terminal(f)
}
