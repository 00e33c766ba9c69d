package prose

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// mostNames is in how many files of a folder one with a name like the one asked for is
// looked for.
const mostNames = 10000

// instead says what there is in place of a file that is not: one with a name like it, or
// no folder either. It is empty for other errors.
func instead(err error) string {
	var p *fs.PathError
	if !errors.As(err, &p) || !errors.Is(err, fs.ErrNotExist) || p.Op != "open" && p.Op != "stat" && p.Op != "lstat" {
		return "" // a path within an opened folder says nothing by itself
	}
	folder, name := filepath.Split(p.Path)
	f, err := os.Open(cmp.Or(folder, "."))
	if errors.Is(err, fs.ErrNotExist) {
		return "; there is no folder " + filepath.Clean(folder) + " either"
	}
	if err != nil {
		return ""
	}
	defer f.Close()
	names, err := f.Readdirnames(mostNames)
	if err != nil {
		return ""
	}
	if near := nearName(name, names); near != "" {
		return "; did you mean " + Path(folder+near) + "?"
	}
	return ""
}

// nearName returns the file that was probably meant: one that only lacks its ending, else
// one with the same ending and a name like it.
func nearName(name string, names []string) string {
	end := filepath.Ext(name)
	var alike []string
	for _, n := range names {
		if strings.HasPrefix(n, ".") {
			continue
		}
		if other := filepath.Ext(n); end == "" && other == ".toml" && strings.EqualFold(n, name+other) {
			return n
		}
		if near := filepath.Ext(n); end == "" || distance(strings.ToLower(end), strings.ToLower(near)) < 2 {
			alike = append(alike, n)
		}
	}
	return Nearest(name, alike)
}
