package main

import (
	"os"
	"path/filepath"
	"testing"

	"pappus/timing/store"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	if filepath.Base(os.Args[0]) != "pappus" { // a command of a script has its own
		if err := os.Setenv(store.Variable, ""); err != nil { // nothing in the user's cache folder
			panic(err)
		}
	}
	testscript.Main(tests{m}, map[string]func(){"pappus": main})
}

// tests ends what all tests share after them.
type tests struct{ *testing.M }

func (t tests) Run() int {
	defer func() {
		if chrome.stop != nil {
			chrome.stop()
		}
	}()
	return t.M.Run()
}

func TestCommands(t *testing.T) {
	t.Parallel()
	testscript.Run(t, testscript.Params{
		Dir:             "testdata",
		ContinueOnError: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("NO_COLOR", "1")
			e.Setenv(store.Variable, "")
			return nil
		},
		UpdateScripts: os.Getenv("UPDATE") != "",
	})
}
