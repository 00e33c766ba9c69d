// Command collect writes the folder carried of package licences: which modules are linked, on
// whichever system, what of the page's packages is in its script, and all of their licences. Any
// that is not known is an error. It needs the modules that "go mod download" fetches, and is run by
// go generate ./render/licences.
package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"pappus/render/licences"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "collect:", err)
		os.Exit(1)
	}
}

// run works in render/licences, where go generate runs it.
func run() error {
	const root = "../.."
	files, err := collect(root)
	if err != nil {
		return err
	}
	folder := filepath.Join(root, "render", "licences", "carried")
	if err := errors.Join(os.RemoveAll(folder), os.MkdirAll(folder, 0o755)); err != nil {
		return err
	}
	for name, data := range files {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// part is one of the parts, with its texts.
type part struct {
	name, version, kind string
	texts               []string
}

// collect returns the files of the folder, by name.
func collect(root string) (map[string][]byte, error) {
	modules, err := modules(root)
	if err != nil {
		return nil, err
	}
	scripts, err := scripts(root)
	if err != nil {
		return nil, err
	}
	parts := slices.Concat(modules, scripts)
	slices.SortFunc(parts, func(a, b part) int { return strings.Compare(a.name+" "+a.kind, b.name+" "+b.kind) })
	out, rows := map[string][]byte{}, []licences.Part{}
	for _, p := range parts {
		row, err := p.row(out)
		if err != nil {
			return nil, err
		}
		rows = append(rows, row)
	}
	out["list.csv"], err = list(rows)
	return out, err
}

// row is a part's line in the list. Its texts go among the files, each once.
func (p part) row(files map[string][]byte) (licences.Part, error) {
	out := licences.Part{Name: p.name, Version: p.version, Kind: p.kind}
	var names []string
	for _, text := range p.texts {
		text = trimmed(text)
		found := licencesIn(p.name, text)
		if len(found) == 0 {
			return out, fmt.Errorf("%s %s: a licence that is not known, or not one that the program may carry: %.80q", p.name, p.version, text)
		}
		for _, name := range found {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
		out.Texts = append(out.Texts, keep(files, strings.Join(found, "-and-"), text))
	}
	if len(names) == 0 {
		return out, fmt.Errorf("%s %s: there is no licence", p.name, p.version)
	}
	out.Licence = strings.Join(names, " AND ")
	return out, nil
}

// keep puts a text among the files under a licence's name and a number, unless it is there.
func keep(files map[string][]byte, name, text string) string {
	for n := 1; ; n++ {
		as := fmt.Sprintf("%s-%02d", name, n)
		held, there := files[as+".txt"]
		if !there {
			files[as+".txt"] = []byte(text)
		}
		if !there || string(held) == text {
			return as
		}
	}
}

// trimmed is a text in UTF-8 (one that is none is in ISO 8859-1, whose bytes are the code points)
// with the ends of its lines as they are here, and none at its end.
func trimmed(text string) string {
	if !utf8.ValidString(text) {
		var b strings.Builder
		for _, c := range []byte(text) {
			b.WriteRune(rune(c))
		}
		text = b.String()
	}
	lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " \t\f")
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n") + "\n"
}

// list writes the list.
func list(rows []licences.Part) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.Write([]string{"name", "version", "kind", "licence", "texts"}) // a buffer takes all
	for _, r := range rows {
		_ = w.Write([]string{r.Name, r.Version, r.Kind, r.Licence, strings.Join(r.Texts, " ")})
	}
	w.Flush()
	return b.Bytes(), w.Error()
}
