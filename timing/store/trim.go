package store

import (
	"cmp"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"pappus/layout/wholefile"
)

// ending ends the names of entries.
const ending = ".entry"

// name is that of an entry's file.
func name(key Key) string { return hex.EncodeToString(key[:]) + ending }

// path is where an entry stands.
func (s Store) path(key Key) string { return filepath.Join(s.Folder, name(key)) }

// entryNames are the names of entries, begunNames those of entries that are being written, as
// wholefile calls their drafts and, with a number, once did.
var (
	entryNames = regexp.MustCompile(`^[0-9a-f]{64}\.entry$`)
	begunNames = regexp.MustCompile(`^\.[0-9a-f]{64}\.entry\.(pappus-new|[0-9]+)$`)
)

// trim removes what was used longest ago, and never the entry of key, until the rest is within
// the bound.
func (s Store) trim(key Key) error {
	files, err := s.files()
	if err != nil {
		return err
	}
	var total int64
	for _, f := range files {
		total += f.Size()
	}
	var failed error
	for i := 0; i < len(files) && total > s.most(); i++ {
		if files[i].Name() == name(key) {
			continue
		}
		err := os.Remove(filepath.Join(s.Folder, files[i].Name()))
		if err == nil || errors.Is(err, fs.ErrNotExist) { // another process removed it
			total -= files[i].Size()
		} else {
			failed = err
		}
	}
	if total <= s.most() {
		return nil
	}
	return failed
}

// files are those of all entries, that used longest ago first. What a program that was killed left
// half written is removed.
func (s Store) files() ([]fs.FileInfo, error) {
	all, err := os.ReadDir(s.Folder)
	if err != nil {
		return nil, err
	}
	var out []fs.FileInfo
	for _, f := range all {
		if begunNames.MatchString(f.Name()) {
			wholefile.Sweep(filepath.Join(s.Folder, f.Name()))
		}
		if !entryNames.MatchString(f.Name()) {
			continue
		}
		info, err := f.Info()
		switch {
		case errors.Is(err, fs.ErrNotExist): // another process removed it
		case err != nil:
			return nil, err
		default:
			out = append(out, info)
		}
	}
	slices.SortFunc(out, func(a, b fs.FileInfo) int {
		return cmp.Or(a.ModTime().Compare(b.ModTime()), strings.Compare(a.Name(), b.Name()))
	})
	return out, nil
}
