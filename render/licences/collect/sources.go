package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
)

// systems are those that the program is built for.
var systems = []string{"linux", "darwin", "windows"}

// linked is a package as go list tells of it.
type linked struct {
	Dir        string
	EmbedFiles []string
	Module     *struct {
		Path, Version, Dir string
		Main               bool
	}
}

// modules are the modules of which packages are linked on any of the systems, and Go's own library.
func modules(root string) ([]part, error) {
	all, folders := map[string]part{}, map[string][]string{}
	for _, system := range systems {
		packages, err := packagesOn(root, system)
		if err != nil {
			return nil, err
		}
		for _, p := range packages {
			if p.Module == nil || p.Module.Main {
				continue
			}
			m := all[p.Module.Path]
			m.name, m.version = p.Module.Path, p.Module.Version
			if m.kind == "" {
				m.kind = "library"
			}
			if slices.ContainsFunc(p.EmbedFiles, func(f string) bool { return filepath.Ext(f) == ".ttf" }) {
				m.kind = "fonts"
			}
			all[p.Module.Path] = m
			folders[m.name] = append(folders[m.name], upTo(p.Dir, p.Module.Dir)...)
		}
	}
	own, err := library(root)
	out := []part{own}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		m := all[name]
		texts, none := textsIn(folders[name])
		m.texts, err = texts, errors.Join(err, none)
		out = append(out, m)
	}
	return out, err
}

// packagesOn are the packages that are linked on a system.
func packagesOn(root, system string) (out []linked, err error) {
	list := exec.Command("go", "list", "-deps", "-json=Dir,EmbedFiles,Module", "./cmd/pappus")
	list.Dir, list.Env = root, append(os.Environ(), "GOOS="+system, "GOARCH="+runtime.GOARCH, "CGO_ENABLED=0")
	var said bytes.Buffer
	list.Stderr = &said
	data, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("go list for %s: %w: %s", system, err, said.Bytes())
	}
	for d := json.NewDecoder(bytes.NewReader(data)); ; {
		var p linked
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return out, nil
		} else if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
}

// upTo are a folder and those that it is in, up to a module's.
func upTo(folder, module string) (out []string) {
	for at := folder; ; at = filepath.Dir(at) {
		out = append(out, at)
		if at == module || !strings.HasPrefix(at, module) {
			return out
		}
	}
}

// licenceFile is how files with licences are called.
var licenceFile = regexp.MustCompile(`(?i)^(un)?(licen[cs]e|copying|notice)([-_.].*)?$`)

// textsIn are the licences in some folders; those of a folder licenses of which one may choose are
// not, but for that which is chosen.
func textsIn(folders []string) (out []string, err error) {
	slices.Sort(folders)
	for _, folder := range slices.Compact(folders) {
		entries, err := os.ReadDir(folder)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			path := filepath.Join(folder, e.Name())
			if e.IsDir() && e.Name() == "licenses" {
				path = filepath.Join(path, "ftl.txt")
			} else if e.IsDir() || !licenceFile.MatchString(e.Name()) {
				continue
			}
			text, err := os.ReadFile(path)
			if err != nil {
				return nil, err
			}
			out = append(out, string(text))
		}
	}
	return out, nil
}

// library is Go's own library, by the version that go.mod asks for.
func library(root string) (part, error) {
	get := func(args ...string) string {
		c := exec.Command("go", args...)
		c.Dir = root
		out, _ := c.Output() // what is missing is seen by its file
		return strings.TrimSpace(string(out))
	}
	text, err := os.ReadFile(filepath.Join(get("env", "GOROOT"), "LICENSE"))
	return part{"Go", get("list", "-m", "-f", "{{.GoVersion}}"), "library", []string{string(text)}}, err
}

// head is the line before each licence in the page's LICENCES.txt.
var head = regexp.MustCompile(`(?m)^== (\S+) ==$`)

// scripts are the packages of which something is in the page's script, as its bundle says, with the
// versions of its lock file.
func scripts(root string) (out []part, err error) {
	page := filepath.Join(root, "render", "page")
	texts, err := os.ReadFile(filepath.Join(page, "built", "LICENCES.txt"))
	if err != nil {
		return nil, err
	}
	data, err := os.ReadFile(filepath.Join(page, "web", "package-lock.json"))
	if err != nil {
		return nil, err
	}
	var lock struct {
		Packages map[string]struct{ Version string }
	}
	if err := json.Unmarshal(data, &lock); err != nil {
		return nil, err
	}
	all := string(texts)
	at := head.FindAllStringSubmatchIndex(all, -1)
	for i, h := range at {
		end := len(all)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		name := all[h[2]:h[3]]
		version := lock.Packages["node_modules/"+name].Version
		if version == "" {
			return nil, fmt.Errorf("%s is in the page's script and not in its lock file", name)
		}
		out = append(out, part{name, version, "script", []string{all[h[1]:end]}})
	}
	if len(out) == 0 {
		return nil, errors.New("the page's LICENCES.txt names nothing")
	}
	return out, nil
}
