// Command bundle makes the browser's side of the page: it writes the types of what the
// server sends, web/src/document.ts, and bundles render/page/web into render/page/built,
// where it is embedded. It needs the packages that "npm ci" puts into render/page/web, and
// is run by go generate ./render/page.
// What it writes does not hang on the machine or the time.
package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"pappus/layout/wholefile"

	"github.com/evanw/esbuild/pkg/api"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "bundle:", err)
		os.Exit(1)
	}
}

// run works in render/page, where go generate runs it.
func run() error {
	const page = "."
	web, built := filepath.Join(page, "web"), filepath.Join(page, "built")
	if _, err := os.Stat(filepath.Join(web, "node_modules")); err != nil {
		return errors.New("run npm ci in render/page/web first, and this by go generate ./render/page")
	}
	shapes, err := types(page)
	if err != nil {
		return err
	}
	if err := write(filepath.Join(web, "src"), map[string][]byte{"document.ts": shapes}); err != nil {
		return err
	}
	files, packages, err := bundled(web)
	if err != nil {
		return err
	}
	for _, name := range []string{"index.html", "bench.html", "book.html"} {
		if files[name], err = os.ReadFile(filepath.Join(web, name)); err != nil {
			return err
		}
	}
	if files["LICENCES.txt"], err = licences(web, packages); err != nil {
		return err
	}
	return write(built, files)
}

// bundled returns the scripts and the style sheets, by name, and of which packages they have parts.
func bundled(web string) (files map[string][]byte, packages []string, err error) {
	if web, err = filepath.Abs(web); err != nil {
		return nil, nil, err
	}
	result := api.Build(api.BuildOptions{
		AbsWorkingDir: web,
		EntryPointsAdvanced: []api.EntryPoint{
			{InputPath: "src/main.ts", OutputPath: "page"},
			{InputPath: "src/limiter.ts", OutputPath: "limiter"}, // runs beside the page, in the sound's own thread
			{InputPath: "src/page.css", OutputPath: "page"},
			{InputPath: "src/bench.ts", OutputPath: "bench"},
			{InputPath: "src/bench.css", OutputPath: "bench"},
			{InputPath: "src/book.ts", OutputPath: "book"},
			{InputPath: "src/book.css", OutputPath: "book"},
		},
		Outdir:            "built",
		Bundle:            true,
		Format:            api.FormatESModule,
		Target:            api.ES2022,
		Charset:           api.CharsetUTF8,
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		LegalComments:     api.LegalCommentsNone, // they are in LICENCES.txt
		LogLevel:          api.LogLevelWarning,
		Metafile:          true,
	})
	if len(result.Errors) > 0 {
		return nil, nil, fmt.Errorf("%d errors in render/page/web", len(result.Errors))
	}
	files = map[string][]byte{}
	for _, f := range result.OutputFiles {
		files[filepath.Base(f.Path)] = f.Contents
	}
	packages, err = packagesIn(result.Metafile)
	return files, packages, err
}

// packagesIn are the packages of which files were read for a bundle, by its account.
func packagesIn(account string) ([]string, error) {
	var read struct{ Inputs map[string]struct{} }
	if err := json.Unmarshal([]byte(account), &read); err != nil {
		return nil, err
	}
	var out []string
	for path := range read.Inputs {
		_, rest, is := strings.Cut(path, "node_modules/")
		parts := strings.Split(rest, "/")
		if !is {
			continue
		}
		name := parts[0]
		if strings.HasPrefix(name, "@") {
			name += "/" + parts[1]
		}
		out = append(out, name)
	}
	slices.Sort(out)
	return slices.Compact(out), nil
}

// licences collects those of what the bundle holds.
func licences(web string, packages []string) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString("page.js and page.css hold parts of the following libraries.\n")
	for _, name := range packages {
		text, err := os.ReadFile(filepath.Join(web, "node_modules", name, "LICENSE"))
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "\n== %s ==\n\n%s\n", name, bytes.TrimSpace(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))))
	}
	return b.Bytes(), nil
}

// write writes the files, each whole or not at all.
func write(folder string, files map[string][]byte) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for name, data := range files {
		if err := wholefile.Write(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}
