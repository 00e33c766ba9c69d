package store_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"pappus/timing/store"
)

// writerFolder and writerNumber tell this test's program, run again, to be a writer.
const writerFolder, writerNumber = "PAPPUS_TEST_FOLDER", "PAPPUS_TEST_NUMBER"

// shared is the store that writers share. It holds two of the three keys.
func shared(folder string) store.Store {
	return store.Store{Folder: folder, Most: 2 * (overhead + shareSize)}
}

const shareSize = 1 << 16

// share puts and gets three keys in turn. What it reads must be of one writer, whole.
func share(t *testing.T, s store.Store, number byte) {
	for i := range 30 {
		k := key(strconv.Itoa(i % 3))
		if err := s.Put(k, bytes.Repeat([]byte{number}, shareSize)); err != nil {
			t.Error(err)
		}
		data, there := s.Get(k)
		if there && (len(data) != shareSize || bytes.Count(data, data[:1]) != shareSize) {
			t.Errorf("%d bytes, not of one writer", len(data))
		}
	}
}

// TestWriter is one of several processes of TestProcesses.
func TestWriter(t *testing.T) {
	folder := os.Getenv(writerFolder)
	if folder == "" {
		t.Skip("run by TestProcesses")
	}
	number, err := strconv.Atoi(os.Getenv(writerNumber))
	if err != nil {
		t.Fatal(err)
	}
	share(t, shared(folder), byte(number))
}

// TestProcesses: several processes that put and get the same keys at once read what is whole,
// leave nothing half written, and hold the bound in the end.
func TestProcesses(t *testing.T) {
	folder := t.TempDir()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	var group sync.WaitGroup
	for number := range 3 {
		group.Go(func() {
			c := exec.Command(program, "-test.run=^TestWriter$", "-test.count=1")
			c.Env = append(os.Environ(), writerFolder+"="+folder, writerNumber+"="+strconv.Itoa(number+1))
			if out, err := c.CombinedOutput(); err != nil {
				t.Errorf("writer %d: %v\n%s", number, err, out)
			}
		})
	}
	group.Wait()
	held(t, folder)
}

// TestGoroutines is the same within one process.
func TestGoroutines(t *testing.T) {
	folder := t.TempDir()
	var group sync.WaitGroup
	for number := range 3 {
		group.Go(func() { share(t, shared(folder), byte(number)) })
	}
	group.Wait()
	held(t, folder)
}

// held checks that a shared folder holds two entries and nothing else.
func held(t *testing.T, folder string) {
	t.Helper()
	all, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	entries, err := filepath.Glob(filepath.Join(folder, "*.entry"))
	if err != nil || len(all) != len(entries) || len(all) > 2 || len(all) == 0 {
		t.Errorf("left in the folder: %v, %v", all, err)
	}
}
