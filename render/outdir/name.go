package outdir

import (
	"fmt"
	"path/filepath"
	"strings"
)

// longestName keeps the temporary names, which are longer, within what the
// usual file systems allow (255 bytes, common practice).
const longestName = 120

// checkName gives errName for a name that is not plain: letters, digits,
// point, hyphen and underscore of ASCII, no point at the start or end, and no
// name that Windows keeps for a device. Plain names mean the same file on every
// system and cannot leave the folder.
func checkName(name string) error {
	plain := name != "" && len(name) <= longestName &&
		strings.Trim(name, ".") == name &&
		strings.IndexFunc(name, notPlain) < 0 &&
		!isDevice(name) && filepath.IsLocal(name)
	if !plain || strings.EqualFold(name, Manifest) {
		return fmt.Errorf("%w: %q", errName, name)
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
