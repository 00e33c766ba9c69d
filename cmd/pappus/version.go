package main

import (
	"fmt"
	"io"
	"runtime"

	"pappus/render/document"
	"pappus/render/licences"
	"pappus/render/table"

	"github.com/spf13/cobra"
)

// version is the program's, raised with each release.
const version = "0.1.0"

func newVersion(f *flags) *cobra.Command {
	var all bool
	c := &cobra.Command{
		Use:   "version",
		Short: "Print the version, or the licences of what the program carries",
		Args:  argsOf(0, 0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			if all {
				return writeLicences(c.OutOrStdout(), f)
			}
			if f.json {
				return document.Write(c.OutOrStdout(), map[string]string{"version": version, "go": runtime.Version(), "os": runtime.GOOS, "arch": runtime.GOARCH})
			}
			_, err := fmt.Fprintf(c.OutOrStdout(), "pappus %s (%s, %s/%s)\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		},
	}
	c.Flags().BoolVar(&all, "licences", false, "print what the program carries of others: libraries, fonts and scripts, with their licences")
	return c
}

// writeLicences writes what the program carries of others, as a table or as JSON.
func writeLicences(w io.Writer, f *flags) error {
	parts, texts, err := licences.Carried()
	if err != nil {
		return err
	}
	if f.json {
		return document.Write(w, struct {
			Parts []licences.Part `json:"parts"`
			Texts []licences.Text `json:"texts"`
		}{parts, texts})
	}
	return table.LicenceScreen(w, parts, texts, colour(w))
}
