package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pappus": main})
}

func TestCommands(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:             "testdata",
		ContinueOnError: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("NO_COLOR", "1")
			return nil
		},
		UpdateScripts: os.Getenv("UPDATE") != "",
	})
}
