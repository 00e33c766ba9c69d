package main

import (
	"io"

	"pappus/render/document"
	"pappus/render/outdir"
	"pappus/timing"
)

// file is one file: its name and how it is written.
type file struct {
	name  string
	write func(io.Writer) error
}

// written names what a command left in a folder, and what to look out for in its plan.
func written(folder string, files []file, p *timing.Plan) document.Written {
	out := document.Written{Folder: folder, Files: []string{}, Findings: document.Findings(p.Warnings)}
	for _, f := range files {
		out.Files = append(out.Files, f.name)
	}
	return out
}

// addAll writes files into a folder, all or none.
func addAll(folder string, files []file) error {
	dir, err := outdir.Open(folder)
	if err != nil {
		return err
	}
	defer dir.Abort()
	for _, f := range files {
		if err := dir.Add(f.name, f.write); err != nil {
			return err
		}
	}
	return dir.Commit()
}
