package wholefolder

import (
	"errors"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
)

// ErrName tells of a file name that is not plain, or is given twice.
var ErrName = errors.New("file name not allowed")

// longestName keeps the hidden names, which are longer, within what the
// usual file systems allow (255 bytes, common practice).
const longestName = 120

// CheckName gives ErrName for a name that is not plain: letters, digits,
// point, hyphen and underscore of ASCII, no point at the start or end, and no
// name that Windows keeps for a device. Plain names mean the same file on every
// system and cannot leave the folder.
func CheckName(name string) error {
	plain := name != "" && len(name) <= longestName &&
		strings.Trim(name, ".") == name &&
		strings.IndexFunc(name, notPlain) < 0 &&
		!isDevice(name) && filepath.IsLocal(name)
	if !plain || strings.EqualFold(name, Manifest) {
		return fmt.Errorf("%w: %q", ErrName, name)
	}
	return nil
}

func notPlain(r rune) bool {
	letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	digit := r >= '0' && r <= '9'
	return !letter && !digit && !strings.ContainsRune(".-_", r)
}

// isDevice reports whether Windows takes a name for a device, whatever follows
// its first point (Microsoft, "Naming Files, Paths, and Namespaces").
func isDevice(name string) bool {
	stem, _, _ := strings.Cut(strings.ToUpper(name), ".")
	switch stem {
	case "CON", "PRN", "AUX", "NUL":
		return true
	}
	numbered := len(stem) == 4 && stem[3] >= '0' && stem[3] <= '9'
	return numbered && (stem[:3] == "COM" || stem[:3] == "LPT")
}

// The hidden names that stand in a folder while it is held, and after a kill.
const (
	lockName    = ".pappus-lock"
	journalName = ".pappus-journal"
)

// hidden is the hidden name of a file in a run, which has a tag; kind tells apart new ones, old
// ones that are kept until all is done, and what else a change needs.
func hidden(kind, tag, name string) string { return fmt.Sprintf(".pappus-%s-%s-%s", kind, tag, name) }

// litter are the hidden names, journal and lock apart, with the tag of their run.
var litter = regexp.MustCompile(`^\.pappus-(?:new|old|list|ahead|back)-([A-Z2-7]{12})-`)

// of tells whether a name is a hidden one of the run with that tag.
func of(name, tag string) bool {
	found := litter.FindStringSubmatch(name)
	return found != nil && found[1] == tag
}
