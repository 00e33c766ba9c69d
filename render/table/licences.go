package table

import (
	"fmt"
	"io"
	"strings"

	"pappus/render/licences"
)

// LicenceScreen writes what the program carries of others, and then the texts of its licences.
func LicenceScreen(w io.Writer, parts []licences.Part, texts []licences.Text, colour bool) error {
	s := &screen{style: style(colour)}
	s.say("Pappus carries the libraries, fonts and scripts below, on one system or another. With each is its licence by its name " +
		"in the SPDX list, and which of the texts after the table it is.")
	fmt.Fprintln(s)
	row := s.list("                                          version       licence", "%-41s %-13s %s")
	for _, p := range parts {
		name := p.Name
		if p.Kind != "library" {
			name += " (" + p.Kind + ")"
		}
		row(name, plainly(p.Version), p.Licence)
	}
	for _, t := range texts {
		s.section(t.Name + ", of " + strings.Join(of(parts, t.Name), ", "))
		fmt.Fprint(s, "\n", t.Text)
	}
	return s.to(w)
}

// plainly is a version as people tell it: of one without a number, its commit.
func plainly(version string) string {
	if commit := version[strings.LastIndex(version, "-")+1:]; strings.Count(version, "-") == 2 {
		return commit
	}
	return version
}

// of are the names of parts that a text is of.
func of(parts []licences.Part, text string) (names []string) {
	for _, p := range parts {
		for _, t := range p.Texts {
			if t == text {
				names = append(names, p.Name)
			}
		}
	}
	return names
}
