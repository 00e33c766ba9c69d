package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"

	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/outdir"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"

	"github.com/spf13/cobra"
)

// job is one run of a command that reads designs and shows what comes of them.
type job struct {
	*flags
	*progress
	*cobra.Command
	args   []string
	folder string // empty: nothing is written
	heeded bool   // findings were shown
}

// outcome is what a job came to: files, JSON, and a screen for people.
type outcome struct {
	plan   *timing.Plan                         // whose findings the screen begins with; nil: none
	files  []outdir.File                        // nil: nothing is written
	then   func() error                         // done once they are written; nil: nothing
	json   func(document.Written) any           // what is written for other programs
	screen func(w io.Writer, colour bool) error // nil: nothing
	last   string                               // what to say of the folder; empty: nothing
}

// command completes a command: it takes a design, unless c says otherwise, and writes into
// a folder, whose usual name may be empty.
func (f *flags) command(c *cobra.Command, folder, holds string, do func(*job) (outcome, error)) *cobra.Command {
	if c.Args == nil {
		c.Args = oneDesign
	}
	into := c.Flags().StringP("output", "o", folder, holds)
	c.RunE = func(c *cobra.Command, args []string) error {
		if *into == "" && c.Flags().Changed("output") {
			return errors.New("--output: names no folder; name one, as in -o " + cmp.Or(folder, "out"))
		}
		j := &job{f, startProgress(c.ErrOrStderr(), f.quiet), c, args, *into, false}
		defer j.stop()
		o, err := do(j)
		if err != nil {
			return err
		}
		return j.show(o)
	}
	return c
}

// show writes what a job came to, and tells where it was to stop when that was done.
func (j *job) show(o outcome) error {
	err := j.give(o)
	if err == nil && j.folder != "" && o.files != nil && j.Context().Err() != nil {
		return fmt.Errorf("stopped when all was written; it is in %s", prose.Path(j.folder))
	}
	return err
}

// give writes what a job came to: all files or none, then JSON, or the findings and the
// screen, unless it is quiet.
func (j *job) give(o outcome) error {
	if j.folder != "" && o.files != nil {
		if err := outdir.Write(j.Context(), j.folder, o.files, func(name string) { j.say("writing " + name) }, j.waits(j.folder)); err != nil {
			return err
		}
	}
	if o.then != nil {
		if err := o.then(); err != nil {
			return err
		}
	}
	j.stop()
	w := j.OutOrStdout()
	switch {
	case j.json && o.json == nil:
		return nil
	case j.json:
		return document.Write(w, o.json(j.written(o)))
	case j.quiet:
		return nil
	}
	if err := j.heed(o.plan); err != nil {
		return err
	}
	if o.screen != nil {
		if err := o.screen(w, colour(w)); err != nil {
			return err
		}
	}
	if j.folder == "" {
		return nil
	}
	_, err := fmt.Fprint(w, o.last)
	return err
}

// waits says once that another run is at work on a file or folder, and this one waits.
func (j *job) waits(path string) func() {
	return func() {
		if !j.quiet {
			j.clear()
			fmt.Fprintln(j.ErrOrStderr(), words.Waiting(path))
		}
	}
}

// heed writes what to look out for in a plan, if there is one: every screen begins with it.
func (j *job) heed(p *timing.Plan) error {
	if j.quiet || j.json || j.heeded || p == nil {
		return nil
	}
	j.heeded = true
	return table.Advice(j.OutOrStdout(), p.Warnings, colour(j.OutOrStdout()))
}

// written names the files in the folder, and what to look out for in the plan.
func (j *job) written(o outcome) document.Written {
	out := document.Written{Folder: j.folder, Files: []string{}}
	if o.plan != nil {
		out.Findings = document.Findings(o.plan.Warnings)
	}
	for _, f := range o.files {
		out.Files = append(out.Files, f.Name)
	}
	return out
}

// design is the path that the job was given, empty where none was.
func (j *job) design() string { return cmp.Or(j.args...) }

// plan plans the design.
func (j *job) plan() (*timing.Plan, error) { return j.planOf(j.Context(), j.progress, j.design()) }
