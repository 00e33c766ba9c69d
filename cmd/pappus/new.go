package main

import (
	"cmp"
	"fmt"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/outdir"

	"github.com/spf13/cobra"
)

func newNew(f *flags) *cobra.Command {
	seats := false
	c := &cobra.Command{
		Use:   "new [DESIGN.toml]",
		Short: "Write a starter design with remarks; it never replaces a file",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			path, text := cmp.Or(append(args, "design.toml")...), design.DefaultTOML()
			if seats {
				text = design.SeatsTOML()
			}
			if err := outdir.Create(path, text); err != nil {
				return err
			}
			if f.quiet {
				return nil
			}
			_, err := fmt.Fprintf(c.OutOrStdout(), "%s is ready to edit; then: pappus plan %s\n", path, prose.Path(path))
			return err
		},
	}
	c.Flags().BoolVar(&seats, "seats", false, "for five seats in place of one")
	return c
}
