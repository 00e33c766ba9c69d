package main

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"
	"time"

	"pappus/preview"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing"

	"github.com/spf13/cobra"
)

// view makes a command that plans a design and shows a part of it. last says of its folder,
// which it names, where to begin, where the outcome says nothing of it.
func (f *flags) view(name, short, folder, holds, last string, of func(*progress, *timing.Plan) (outcome, error)) *cobra.Command {
	return f.command(&cobra.Command{Use: name + " [DESIGN.toml]", Short: short}, folder, holds, func(j *job) (outcome, error) {
		p, err := j.plan()
		if err != nil {
			return outcome{}, err
		}
		o, err := of(j.progress, p)
		o.plan, o.last = p, fmt.Sprintf(cmp.Or(o.last, last), j.folder)
		return o, err
	})
}

func newPlan(f *flags) *cobra.Command {
	return f.view("plan", "Plan a design (the built-in demo if none is named) into a folder", "plan", "folder for tables, pictures and sounds", "", planned)
}

// planned shows all of a plan. The sounds are made with the first of them, which takes
// longest: it comes first, and the others when they are made.
func planned(said *progress, p *timing.Plan) (outcome, error) {
	said.say("surveying the room")
	survey, err := timing.Look(p)
	if err != nil {
		return outcome{}, err
	}
	files, err := folder.Plan(p, survey)
	heard := sounds(p)
	first := "coverage_above_1k.png"
	if s := p.Seating; s != nil {
		if first = "seats.png"; s.Round != nil {
			first = "round.png"
		}
	}
	return outcome{
		last:   "\nTables, pictures and sounds are in %s; begin with " + first + ".\n",
		files:  append(append(heard[:1:1], files...), heard[1:]...),
		json:   func(document.Written) any { return document.OfPlan(p, survey) },
		screen: func(w io.Writer, colour bool) error { return table.Screen(w, p, survey, colour) },
	}, err
}

func newChannels(f *flags) *cobra.Command {
	return f.view("channels", "Show what each channel is to be set to, and what more channels would bring", "", "folder to write it into, too",
		"\nIt is in %s, too; begin with processor.csv.\n", func(_ *progress, p *timing.Plan) (outcome, error) {
			rows, err := timing.Processor(p, nil)
			if err != nil {
				return outcome{}, err
			}
			channels, err := document.OfChannels(p, rows)
			return outcome{
				files:  folder.Channels(p, rows),
				json:   func(document.Written) any { return channels },
				screen: func(w io.Writer, colour bool) error { return table.ChannelScreen(w, p, rows, colour) },
			}, err
		})
}

func newWiring(f *flags) *cobra.Command {
	return f.view("wiring", "Show how drivers are strung, the load on the amplifier, and what a dead driver does", "", "folder to write it into, too",
		"\nIt is in %s, too; begin with strings.csv.\n", func(_ *progress, p *timing.Plan) (outcome, error) {
			deaths, err := timing.Dead(p)
			return outcome{
				files: folder.Wiring(p),
				json:  func(document.Written) any { return document.OfWiring(p, deaths) },
				screen: func(w io.Writer, colour bool) error {
					if err := table.WiringScreen(w, p, deaths, colour); err != nil {
						return err
					}
					fmt.Fprintln(w)
					return table.ArrangementScreen(w, p, timing.Stringings(p), colour)
				},
			}, err
		})
}

func newLevel(f *flags) *cobra.Command {
	return f.view("level", "Make the spot's level even: sections for the processor, or FIR filters", "level", "folder for the sections, filters and picture",
		"\nSections, filters and a picture are in %s; begin with level.png.\n", levelled)
}

// levelled shows what makes the spot's level even.
func levelled(_ *progress, p *timing.Plan) (outcome, error) {
	l, err := timing.Level(&p.Spot)
	if err != nil {
		return outcome{}, err
	}
	c, err := l.Correction(p.Array.Processor.Rate)
	if err != nil {
		return outcome{}, err
	}
	f, err := timing.FilterSeats(context.Background(), p)
	if err != nil {
		return outcome{}, err
	}
	files, err := folder.Level(p, l, c)
	return outcome{
		files:  append(files, ofSounds(preview.Filters(c, f))...),
		json:   func(document.Written) any { return document.OfLevel(p, l, c, f) },
		screen: func(w io.Writer, colour bool) error { return table.LevelScreen(w, p, l, c, f, colour) },
	}, err
}

func newSheets(f *flags) *cobra.Command {
	return f.view("sheets", "Write what the workshop needs: drilling templates, net, map, parts, shell", "sheets", "folder for the sheets",
		"The sheets are in %s; print sheets.pdf at 100 percent and check the bar with a ruler.\n", workshop)
}

func newKit(f *flags) *cobra.Command {
	return f.view("kit", "Make the printed parts that go together: segments, floor, vents, jigs, on plates (ten seconds or more)", "kit", "folder for the parts",
		"\nThe plates are in %s: kit-plate-1.3mf and so on; assembly.svg shows what goes where, kit.pdf and wiring.pdf in which order.\n", func(said *progress, p *timing.Plan) (outcome, error) {
			said.say("making the parts")
			began := time.Now()
			k, err := folder.NewKit(context.Background(), p, func(n, of int) {
				said.say(words.Making(n, of, time.Since(began).Seconds()*float64(of-n)/float64(n)))
			})
			return outcome{
				files:  k.Files,
				json:   func(w document.Written) any { return k.Document(w) },
				screen: func(w io.Writer, _ bool) error { return k.Screen(w) },
			}, err
		})
}

// workshop shows what the workshop needs.
func workshop(_ *progress, p *timing.Plan) (outcome, error) {
	s, err := folder.NewSheets(p)
	return outcome{
		files:  s.Files,
		json:   func(w document.Written) any { return s.Document(w) },
		screen: func(w io.Writer, _ bool) error { return s.Screen(w) },
	}, err
}

func newCompare(f *flags) *cobra.Command {
	return f.command(&cobra.Command{
		Use:   "compare A.toml B.toml ...",
		Short: "Put designs side by side: a table and a picture of their responses",
		Args:  argsOf(1, -1, "the design to compare"),
	}, "comparison", "folder for the picture", func(j *job) (outcome, error) {
		var designs []timing.Candidate
		var plans []*timing.Plan
		for _, path := range j.args {
			j.say("planning " + path)
			p, err := j.planOf(j.Context(), j.progress, path)
			if err != nil {
				return outcome{}, err
			}
			d, err := timing.NewCandidate(p)
			if err != nil {
				return outcome{}, err
			}
			designs, plans = append(designs, d), append(plans, p)
		}
		words.NameApart(plans, j.args)
		if err := timing.Seat(designs); err != nil {
			return outcome{}, err
		}
		return outcome{
			files: folder.Comparison(designs),
			json:  func(document.Written) any { return document.OfComparison(designs) },
			screen: func(w io.Writer, colour bool) error {
				if err := table.AdviceOfEach(w, designs, colour); err != nil {
					return err
				}
				return table.Compare(w, designs, colour)
			},
			last: fmt.Sprintf("\nThe picture is %s/comparison.png%s.\n", j.folder, andSeats(designs)),
		}, nil
	})
}

// andSeats names the picture of designs at seats, where there is one.
func andSeats(designs []timing.Candidate) string {
	if slices.ContainsFunc(designs, func(d timing.Candidate) bool { return d.Plan.Seating != nil }) {
		return ", that of the seats seats.png beside it"
	}
	return ""
}
