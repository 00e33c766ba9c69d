// Command mutation tells which of a package's numbers no test notices: it changes each by a fifth,
// up and down, one at a time, and runs the package's tests.
//
//	go run ./testdata/mutation [-p 2] [-only NAME] [-run TESTS] [-skip TESTS] [-first TESTS] [-list] PACKAGE...
//
// Numbers are those of constants (but of lists that iota counts), of variables of a package, and
// literals in functions: all with a fraction, whole ones from 3 on, and from 2 on where they are
// compared with something. Whole ones change by 1 at least. What is an index, a length of an array,
// a shift or a mode of a file is no number in this sense.
//
// A number that decides nothing (how close a search closes in, the size of a buffer, a seed, a factor
// of units) is marked on its line, or on a line of its own before it, with the reason:
//
//	const rounds = 40 // free: it is still after ten
//
// It is listed then, and left as it is. The exit code is 1 where a change survives.
package main

import (
	"flag"
	"fmt"
	"os"
	"regexp"
)

func main() {
	var o options
	flag.IntVar(&o.parallel, "p", 2, "changes tried at once")
	flag.StringVar(&o.run, "run", "", "tests to run, as go test has it")
	flag.StringVar(&o.skip, "skip", "", "tests to leave out, as go test has it")
	flag.StringVar(&o.first, "first", "", "tests to run first: the quick ones, most of which notice")
	only := flag.String("only", "", "a regular expression for file:line name")
	list := flag.Bool("list", false, "list the numbers, and run nothing")
	flag.Parse()
	alive, err := run(o, *only, *list, flag.Args())
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	if alive > 0 {
		os.Exit(1)
	}
}

// run goes over packages, and returns how many changes survive.
func run(o options, only string, list bool, patterns []string) (alive int, err error) {
	wanted, err := regexp.Compile(only)
	if err != nil {
		return 0, err
	}
	packages, err := load(patterns)
	if err != nil {
		return 0, err
	}
	for _, p := range packages {
		var sites []site
		free := 0
		for _, s := range p.sites() {
			if !wanted.MatchString(s.String()) {
				continue
			}
			if s.free != "" {
				free++
				fmt.Printf("%s is free: %s\n", s, s.free)
				continue
			}
			sites = append(sites, s)
		}
		if list {
			for _, s := range sites {
				fmt.Println(s)
			}
			continue
		}
		left, err := try(o, p, sites)
		if err != nil {
			return alive, err
		}
		alive += left
		fmt.Printf("%s: %d numbers tried, %d free, %d changes survive\n", p.path, len(sites), free, left)
	}
	return alive, nil
}
