package main

import (
	"fmt"
	"io"

	"pappus/render/planjson"
	"pappus/render/table"
	"pappus/timing"

	"github.com/spf13/cobra"
)

func newChannels(f *flags) *cobra.Command {
	return &cobra.Command{
		Use:   "channels [DESIGN.toml]",
		Short: "Show what each channel is to be set to, and what more channels would bring",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			return oneLine(show(c, f, first(args), func(w io.Writer, p *timing.Plan) error {
				rows, err := timing.Processor(p, nil)
				switch {
				case err != nil:
					return err
				case f.json:
					return planjson.WriteChannels(w, p, rows)
				}
				if err := table.ChannelScreen(w, p, rows, colour(w)); err != nil {
					return err
				}
				return table.Warnings(w, p, colour(w))
			}))
		},
	}
}

func newWiring(f *flags) *cobra.Command {
	return &cobra.Command{
		Use:   "wiring [DESIGN.toml]",
		Short: "Show how drivers are strung, the load on the amplifier, and what a dead driver does",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			return oneLine(show(c, f, first(args), func(w io.Writer, p *timing.Plan) error {
				deaths, err := timing.Dead(p)
				switch {
				case err != nil:
					return err
				case f.json:
					return planjson.WriteWiring(w, p, deaths)
				}
				if err := table.WiringScreen(w, p, deaths, colour(w)); err != nil {
					return err
				}
				fmt.Fprintln(w)
				if err := table.ArrangementScreen(w, p, timing.Stringings(p), colour(w)); err != nil {
					return err
				}
				return table.Warnings(w, p, colour(w))
			}))
		},
	}
}

// show plans a design and prints a part of it.
func show(c *cobra.Command, f *flags, design string, print func(io.Writer, *timing.Plan) error) error {
	p, err := planned(design)
	if err != nil {
		return err
	}
	if f.quiet && !f.json {
		return nil
	}
	return print(c.OutOrStdout(), p)
}
