package main

import (
	"fmt"
	"runtime"

	"pappus/render/document"

	"github.com/spf13/cobra"
)

// version is the program's, raised with each release.
const version = "0.1.0"

func newVersion(f *flags) *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the version",
		Args:  argsOf(0, 0, ""),
		RunE: func(c *cobra.Command, _ []string) error {
			if f.json {
				return document.Write(c.OutOrStdout(), map[string]string{"version": version, "go": runtime.Version(), "os": runtime.GOOS, "arch": runtime.GOARCH})
			}
			_, err := fmt.Fprintf(c.OutOrStdout(), "pappus %s (%s, %s/%s)\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		},
	}
}
