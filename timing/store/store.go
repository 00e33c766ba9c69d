package store

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"pappus/layout/prose"
	"pappus/layout/wholefile"
)

// Variable is the environment variable that names another folder for [Default]; set to nothing,
// it has nothing kept.
const Variable = "PAPPUS_CACHE"

// most is the bound of a store that names none, in bytes: some sixty bodies of 40 drivers at 40
// frequencies with 676 coefficients (8.7 MB each), more than anybody tries in a season.
const most = 512e6

// form begins each entry. Its number goes up where entries are written in another way.
const form = "pappus store 1\n"

// Store is a folder of entries. The zero Store keeps nothing. It may be copied, and used by
// several goroutines and processes at once.
type Store struct {
	Folder string // made when it is needed; empty: nothing is kept
	Most   int64  // bytes that all entries may take together; 0 stands for 512 MB
}

// Default is the store in the user's cache folder (pappus/computed in os.UserCacheDir), or where
// Variable says. Where the system knows no such folder it keeps nothing.
func Default() Store {
	folder, given := os.LookupEnv(Variable)
	if given {
		return Store{Folder: folder}
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		return Store{}
	}
	return Store{Folder: filepath.Join(cache, "pappus", "computed")}
}

// Key is the hash of what an entry was computed from.
type Key [sha256.Size]byte

// KeyOf is the key of a result: of its kind, of the version of that kind, and of the input as
// bytes that are the same for the same input and for no other. The version goes up where the
// same input would give another result, or the result is written in another way.
func KeyOf(kind string, version int, input []byte) Key {
	hash := sha256.New()
	fmt.Fprintf(hash, "%q %d\n", kind, version)
	hash.Write(input)
	return Key(hash.Sum(nil))
}

// Get is the content of an entry, and whether there is one. It counts as a use of it.
func (s Store) Get(key Key) ([]byte, bool) {
	if s.Folder == "" {
		return nil, false
	}
	path := s.path(key)
	info, err := os.Lstat(path)
	if err != nil {
		return nil, false
	}
	var file []byte
	if info.Mode().IsRegular() {
		if file, err = os.ReadFile(path); err != nil {
			return nil, false
		}
	}
	data, whole := unseal(key, file)
	if !whole {
		_ = os.Remove(path) // where that cannot be, it is passed over again next time
		return nil, false
	}
	now := time.Now()
	_ = os.Chtimes(path, now, now) // a folder that can only be read serves as well
	return data, true
}

// Put keeps an entry, in place of one of the same key, and removes those used longest ago until
// all are within the bound. An error says why it is not kept, or the bound not held; whoever
// computed the entry may tell of it, and goes on without.
func (s Store) Put(key Key, data []byte) error {
	if s.Folder == "" {
		return nil
	}
	file := seal(key, data)
	if int64(len(file)) > s.most() {
		return prose.Errorf("%s: one result of %g MB is more than all may take together, %g MB",
			s.Folder, float64(len(file))/1e6, float64(s.most())/1e6)
	}
	err := os.MkdirAll(s.Folder, 0o700) // as the XDG base directory specification has it
	if err == nil {
		err = wholefile.Write(s.path(key), file, 0o600)
	}
	if err == nil {
		err = s.trim(key)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", s.Folder, prose.Reason(err))
	}
	return nil
}

func (s Store) most() int64 {
	if s.Most > 0 {
		return s.Most
	}
	return most
}

// seal makes an entry's file of its content.
func seal(key Key, data []byte) []byte {
	sum := checksum(key, data)
	return bytes.Join([][]byte{[]byte(form), sum[:], data}, nil)
}

// unseal is the content of an entry's file, and whether it is whole.
func unseal(key Key, file []byte) ([]byte, bool) {
	rest, ours := bytes.CutPrefix(file, []byte(form))
	if !ours || len(rest) < sha256.Size {
		return nil, false
	}
	sum, data := [sha256.Size]byte(rest), rest[sha256.Size:]
	return data, sum == checksum(key, data)
}

// checksum is over all that an entry must be right in.
func checksum(key Key, data []byte) (sum [sha256.Size]byte) {
	hash := sha256.New()
	hash.Write([]byte(form))
	hash.Write(key[:])
	hash.Write(data)
	return [sha256.Size]byte(hash.Sum(nil))
}
