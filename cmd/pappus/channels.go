package main

import (
	"fmt"
	"io"

	"pappus/render/document"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newChannels(f *flags) *cobra.Command {
	return part(f, &cobra.Command{
		Use:   "channels [DESIGN.toml]",
		Short: "Show what each channel is to be set to, and what more channels would bring",
	}, "processor.csv", func(p *timing.Plan) (shown, error) {
		rows, err := timing.Processor(p, nil)
		return shown{
			files:  append(append([]file{loadTable(p)}, channelTables(p, rows)...), channelPictures(p)...),
			json:   func(w io.Writer) error { return writeChannels(w, p, rows) },
			screen: func(w io.Writer) error { return table.ChannelScreen(w, p, rows, colour(w)) },
		}, err
	})
}

func newWiring(f *flags) *cobra.Command {
	return part(f, &cobra.Command{
		Use:   "wiring [DESIGN.toml]",
		Short: "Show how drivers are strung, the load on the amplifier, and what a dead driver does",
	}, "strings.csv", func(p *timing.Plan) (shown, error) {
		deaths, err := timing.Dead(p)
		return shown{
			files: append([]file{loadTable(p)}, stringTables(p)...),
			json:  func(w io.Writer) error { return document.Write(w, document.OfWiring(p, deaths)) },
			screen: func(w io.Writer) error {
				if err := table.WiringScreen(w, p, deaths, colour(w)); err != nil {
					return err
				}
				fmt.Fprintln(w)
				return table.ArrangementScreen(w, p, timing.Stringings(p), colour(w))
			},
		}, err
	})
}

// writeChannels writes what each channel is to be set to, as JSON.
func writeChannels(w io.Writer, p *timing.Plan, rows []timing.ProcessorRow) error {
	channels, err := document.OfChannels(p, rows)
	if err != nil {
		return err
	}
	return document.Write(w, channels)
}

// loadTable is the table of channels with their loads.
func loadTable(p *timing.Plan) file {
	return file{"channels.csv", func(w io.Writer) error { return table.Channels(w, p) }}
}

// channelTables lists the tables that say what to set each channel to.
func channelTables(p *timing.Plan, rows []timing.ProcessorRow) []file {
	return append([]file{
		{"counts.csv", func(w io.Writer) error { return table.Counts(w, p) }},
		{"front.csv", func(w io.Writer) error { return table.Front(w, p) }},
		{"highest.csv", func(w io.Writer) error { return table.Highest(w, p) }},
	}, processorTables(p, rows)...)
}

// processorTables lists the tables to set the processor by.
func processorTables(p *timing.Plan, rows []timing.ProcessorRow) []file {
	return []file{
		{"processor.csv", func(w io.Writer) error { return table.Processor(w, rows, p.Array.Processor.Rate) }},
		{"processor.json", func(w io.Writer) error { return writeChannels(w, p, rows) }},
		{"rounding.csv", func(w io.Writer) error { return table.Rounding(w, p.Rounding) }},
	}
}

// stringTables lists the tables to string drivers by.
func stringTables(p *timing.Plan) []file {
	return []file{
		{"strings.csv", func(w io.Writer) error { return table.Strings(w, p) }},
		{"deaths.csv", func(w io.Writer) error {
			deaths, err := timing.EveryDeath(p)
			if err != nil {
				return err
			}
			return table.Deaths(w, p, deaths)
		}},
		{"arrangements.csv", func(w io.Writer) error { return table.Arrangements(w, timing.Stringings(p)) }},
	}
}

// shown is a part of a plan: as files, as JSON and for people.
type shown struct {
	files        []file
	json, screen func(io.Writer) error
}

// part completes a command that shows a part of a plan and what to look out for, and
// writes it into a folder, the file begin among it, where one is named.
func part(f *flags, c *cobra.Command, begin string, of func(*timing.Plan) (shown, error)) *cobra.Command {
	var folder string
	c.Args = oneDesign
	c.RunE = func(c *cobra.Command, args []string) error {
		return showPart(c, f, first(args), folder, begin, of)
	}
	c.Flags().StringVarP(&folder, "output", "o", "", "folder to write it into, too")
	return c
}

func showPart(c *cobra.Command, f *flags, design, folder, begin string, of func(*timing.Plan) (shown, error)) error {
	p, err := f.planned(design)
	if err != nil {
		return err
	}
	s, err := of(p)
	if err != nil {
		return err
	}
	if folder != "" {
		if err := addAll(folder, s.files); err != nil {
			return err
		}
	}
	w := c.OutOrStdout()
	switch {
	case f.json:
		return s.json(w)
	case f.quiet:
		return nil
	}
	if err := f.heed(w, p); err != nil {
		return err
	}
	if err := s.screen(w); err != nil || folder == "" {
		return err
	}
	_, err = fmt.Fprintf(w, "\nIt is in %s, too; begin with %s.\n", folder, begin)
	return err
}
