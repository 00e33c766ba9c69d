package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/document"
	"pappus/render/folder"
	"pappus/render/table"
	"pappus/render/words"
	"pappus/timing/search"

	"github.com/spf13/cobra"
)

// asked is what the flags of a search ask.
type asked struct {
	stock, channels, seed int
	share                 string
	join                  bool
}

func newSearch(f *flags) *cobra.Command {
	var ask asked
	c := f.command(&cobra.Command{
		Use:         "search [DESIGN.toml]",
		Short:       "Find what to build from a stock of drivers: a few designs that no other beats",
		Long:        searchLong,
		Annotations: map[string]string{keepsFound: ""},
	}, "search", "folder for the designs, pictures and tables", func(j *job) (outcome, error) { return searched(j, ask) })
	c.Flags().IntVar(&ask.stock, "stock", 0, "drivers in stock; those under [search], or 120, if not given")
	c.Flags().IntVar(&ask.channels, "channels", 0, "channels that there are; those under [search] or [wiring] if not given")
	c.Flags().IntVar(&ask.seed, "seed", 1, "a number: what is tried at random hangs on it")
	c.Flags().StringVar(&ask.share, "share", "", "look at one part of the designs only, as 3/16, for --join")
	c.Flags().BoolVar(&ask.join, "join", false, "go on from all shares in the folder")
	return c
}

const searchLong = `Tries thousands of bodies with the driver of a design, and offers at most ten of them
that no other beats in all that matters, each as a ready design file. The design may have
a [driver] alone. What may change, what must be kept and what matters stands under
[search] in the design; "pappus new" writes a starter with remarks.

Ctrl-C keeps what was found; the same command goes on from there. A long search may be
shared among machines that see one folder, or by make:

    SHARES = $(foreach n,1 2 3 4,search/screened_$(n)_of_4.csv)
    search/search.json: $(SHARES)
    	pappus search mine.toml --join
    search/screened_%_of_4.csv: mine.toml
    	pappus search mine.toml --share $*/4

with make -j 4. The answer is the same to the bit, however it was shared.`

// searched searches, and shows what was found.
func searched(j *job, ask asked) (outcome, error) {
	share, shares, err := ask.shared(j)
	if err != nil {
		return outcome{}, err
	}
	work, err := ask.job(j)
	if err != nil {
		return outcome{}, err
	}
	work.Share, work.Shares = share, shares
	note, err := openNotes(j.Context(), j.folder, share, shares, j.waits)
	if err != nil {
		return outcome{}, err
	}
	defer note.close()
	r, err := ask.run(j, work, note)
	if err != nil {
		return outcome{}, note.explained(err)
	}
	if r.Stopped && (r.Shared || len(r.Found) == 0) {
		return outcome{}, fmt.Errorf("%s: %w", note.path, context.Canceled)
	}
	j.SetContext(context.WithoutCancel(j.Context())) // what was found is kept
	switch {
	case r.Stopped:
	case !r.Shared && len(r.Found) == 0:
		note.drop()
	default:
		if err := note.done(); err != nil {
			return outcome{}, err
		}
	}
	if r.Shared {
		return sharedOutcome(r, note), nil
	}
	return ask.found(j, r)
}

// run searches, or goes on from shares.
func (ask asked) run(j *job, work search.Job, note *notes) (*search.Result, error) {
	tell := func(p search.Progress) { j.say(words.SearchProgress(p)) }
	if !ask.join {
		r, err := search.Run(j.Context(), work, note.journal(), tell)
		if errors.Is(err, search.ErrJournal) && note.afresh() {
			return search.Run(j.Context(), work, note.journal(), tell)
		}
		return r, err
	}
	parts, err := note.shares()
	if err != nil {
		return nil, err
	}
	return search.Join(j.Context(), work, parts, note.journal(), tell)
}

// found shows what was found; it is an error where nothing was.
func (ask asked) found(j *job, r *search.Result) (outcome, error) {
	if len(r.Found) == 0 {
		return outcome{}, errors.New(words.NothingFound(r))
	}
	if err := settled(j.folder, r); err != nil {
		return outcome{}, err
	}
	for _, f := range r.Found {
		j.flags.found = append(j.flags.found, f.Plan.Warnings...)
	}
	first := prose.Path(filepath.Join(j.folder, words.FileOf(r.Found[0])))
	return outcome{
		files:  folder.Search(r),
		json:   func(w document.Written) any { return document.OfSearched(w, r) },
		screen: func(w io.Writer, colour bool) error { return table.SearchScreen(w, r, colour) },
		last:   fmt.Sprintf("\nDesign files, pictures and tables are in %s; begin with front.png, then for one\nof them: pappus plan %s\n", j.folder, first),
	}, nil
}

// job is what is asked of the search, of the design that the command was given.
func (ask asked) job(j *job) (search.Job, error) {
	name, text, alone, err := design.Begin(j.design())
	if err != nil {
		return search.Job{}, err
	}
	for _, k := range ask.keys() {
		if !j.Flags().Changed(k.flag) {
			continue
		}
		if k.value < 1 || k.value > design.MaxDrivers {
			return search.Job{}, fmt.Errorf("--%s %d: must be from 1 to %d", k.flag, k.value, design.MaxDrivers)
		}
		if text, err = design.Set(text, k.key, k.value); err != nil {
			return search.Job{}, err
		}
	}
	d, err := design.Parse(name, text)
	return search.Job{Design: d, Text: text, Seed: uint64(ask.seed), NoStart: alone}, ask.byFlag(j, err)
}

// flagKey is a flag that stands over a key of the design.
type flagKey struct {
	flag, key string
	value     int
}

func (ask asked) keys() []flagKey {
	return []flagKey{{"stock", "search.drivers", ask.stock}, {"channels", "search.channels", ask.channels}}
}

// byFlag names the flag in an error that its value makes.
func (ask asked) byFlag(j *job, err error) error {
	var e *design.Error
	for _, k := range ask.keys() {
		if j.Flags().Changed(k.flag) && errors.As(err, &e) && e.Key == k.key {
			return fmt.Errorf("--%s %d: %s", k.flag, k.value, e.Reason)
		}
	}
	return err
}

// shared returns which share of how many is asked for; 0, 0 for all.
func (ask asked) shared(j *job) (share, shares int, err error) {
	if err := exclusive(j.Command, "share", "join"); err != nil {
		return 0, 0, err
	}
	if ask.seed < 0 {
		return 0, 0, fmt.Errorf("--seed %d: must be 0 or more", ask.seed)
	}
	if ask.share == "" && !j.Flags().Changed("share") {
		return 0, 0, nil
	}
	one, of, _ := strings.Cut(ask.share, "/")
	share, no := strconv.Atoi(one)
	shares, nor := strconv.Atoi(of)
	if no != nil || nor != nil || shares < 1 || shares > mostShares || share < 1 || share > shares {
		return 0, 0, fmt.Errorf("--share %s: must be as 3/16, the third of 16, at most of %d", prose.Path(ask.share), mostShares)
	}
	return share, shares, nil
}

// mostShares is how many shares a search may have: as many as files in a folder that can still
// be looked through.
const mostShares = 10000

// sharedOutcome says what a share came to.
func sharedOutcome(r *search.Result, note *notes) outcome {
	return outcome{
		json: func(document.Written) any { return document.OfShare(note.path, r) },
		last: fmt.Sprintf("Share %d of %d is in %s: %s looked at, %d can be built and keep all limits.\nWith all of them there: the same command with --join in place of --share\n",
			r.Job.Share, r.Job.Shares, note.path, prose.Count(r.Screened, "design", "designs"), r.Fit),
	}
}

// settled lets the designs that a search found name their files from a folder.
func settled(folder string, r *search.Result) error {
	beside := filepath.Dir(r.Job.Design.Path)
	for i := range r.Found {
		var err error
		r.Found[i].Text, err = design.Moved(r.Found[i].Text, func(path string) string { return fromFolder(folder, beside, path) })
		if err != nil {
			return err
		}
	}
	return nil
}

// fromFolder is the path of a file beside a design, as a design in a folder names it.
func fromFolder(folder, beside, path string) string {
	if filepath.IsAbs(path) {
		return path
	}
	whole := filepath.Join(beside, path)
	relative, err := filepath.Rel(folder, whole)
	if err != nil { // one of them is absolute, the other not
		if relative, err = filepath.Abs(whole); err != nil {
			return path
		}
	}
	return filepath.ToSlash(relative)
}
