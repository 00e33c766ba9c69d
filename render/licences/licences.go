// Package licences has the licences of all that the program carries: Go's own library, modules,
// their fonts, and what of others is in the page's script. Its folder carried is made by collect,
// which go generate runs.
package licences

import (
	"embed"
	"encoding/csv"
	"io/fs"
	"path"
	"strings"
)

//go:generate go run ./collect

//go:embed carried
var carried embed.FS

// Part is something by others that the program carries.
type Part struct {
	Name    string   `json:"name"`
	Version string   `json:"version"`
	Kind    string   `json:"kind"`    // library, fonts or script
	Licence string   `json:"licence"` // by its name in the SPDX list; of several, with AND
	Texts   []string `json:"texts"`   // names of its texts
}

// Text is one text of a licence, once for all that have the same.
type Text struct {
	Name string `json:"name"`
	Text string `json:"text"`
}

// Carried returns what is carried, and the texts of its licences.
func Carried() ([]Part, []Text, error) { return Read(carried) }

// Read reads a folder that collect wrote, in a file system that has it as carried.
func Read(from fs.FS) (parts []Part, texts []Text, err error) {
	list, err := fs.ReadFile(from, "carried/list.csv")
	if err != nil {
		return nil, nil, err
	}
	rows, err := csv.NewReader(strings.NewReader(string(list))).ReadAll()
	if err != nil {
		return nil, nil, err
	}
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		p := Part{row[0], row[1], row[2], row[3], strings.Fields(row[4])}
		parts = append(parts, p)
		for _, name := range p.Texts {
			if seen[name] {
				continue
			}
			seen[name] = true
			text, err := fs.ReadFile(from, path.Join("carried", name+".txt"))
			if err != nil {
				return nil, nil, err
			}
			texts = append(texts, Text{name, string(text)})
		}
	}
	return parts, texts, nil
}
