package main

import (
	"crypto/sha256"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"pappus/layout/design"
	"pappus/layout/wholefolder"
	"pappus/testdata/kill"
	"pappus/timing/store"

	"github.com/google/go-cmp/cmp"
)

var (
	kills  = flag.Int("kills", 0, "how often each command is killed at random; 0: not at all, and at few of its system calls")
	killed = flag.String("killed", "", "commands to kill, as a regular expression; empty: all")
	stride = flag.Int("stride", 1, "kill at each so many system calls")
)

// victims are the commands that write, with what is run next.
var victims = []struct {
	name       string
	args, next string
	quick      bool // tried every day
}{
	{"wiring", "wiring four.toml -o out", "wiring four.toml -o out", true},
	{"new", "new fresh.toml", "new fresh.toml", true},
	{"add", "tune add four.toml --impedance bare.csv", "tune add four.toml --impedance bare.csv", true},
	{"limits", "limits four.toml -o out", "wiring four.toml -o out", false},
	{"tolerance", "tolerance four.toml --runs 60 -o out", "wiring four.toml -o out", false},
	{"drivers", "drivers lot -o out", "wiring four.toml -o out", false},
	{"kit", "kit piece.toml -o out", "wiring four.toml -o out", false},
	{"channels", "channels four.toml -o out", "wiring four.toml -o out", false},
	{"level", "level four.toml -o out", "wiring four.toml -o out", false},
	{"sheets", "sheets four.toml -o out", "wiring four.toml -o out", false},
	{"sweep", "sweep four.toml -o out", "wiring four.toml -o out", false},
	{"rehearse", "sweep four.toml --rehearse -o out", "wiring four.toml -o out", false},
	{"measure", "measure four.toml -i recorded -o out", "wiring four.toml -o out", false},
	{"compare", "compare four.toml other.toml -o out", "wiring four.toml -o out", false},
	{"impedance", "impedance bare.csv four.toml --channel 1 -o out", "wiring four.toml -o out", false},
	{"fit", "impedance driver.csv four.toml --write --anyway -o out", "wiring four.toml -o out", false}, // which takes the draft of the design away
	{"tune", "tune four.toml -o out", "wiring four.toml -o out", false},
	{"listen", "listen four.toml --programme clicks -o out", "wiring four.toml -o out", false},
	{"search", "search small.toml -o out", "wiring four.toml -o out", false},
	{"plan", "plan four.toml -o out", "wiring four.toml -o out", false},
}

// TestKills: a command that is killed at any of its system calls that change files, or at random,
// leaves all as before or all as after, once somebody looks, and the next run leaves nothing of it
// behind. Where the disk is full or may only be read, all is as before, and that is said.
func TestKills(t *testing.T) {
	if !kill.Can {
		t.Skip("not on this system")
	}
	begin := killGround(t)
	for _, v := range victims {
		if *kills == 0 && !v.quick || !regexp.MustCompile(*killed).MatchString(v.name) {
			continue
		}
		t.Run(v.name, func(t *testing.T) { newChamber(t, begin, v.args, v.next).all(t) })
	}
}

// killGround makes what commands are killed over: a folder that has been written to, by another
// design, with a file of somebody else's in it.
func killGround(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	bare, err := os.ReadFile("testdata/tune.txtar")
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(bare), "-- bare.csv --\n")
	table, _, _ = strings.Cut(table, "-- ")
	put := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	put("bare.csv", table)
	put("driver.csv", ofOneDriver(table))
	if err := os.Mkdir(filepath.Join(folder, "lot"), 0o777); err != nil {
		t.Fatal(err)
	}
	put("lot/1.csv", ofOneDriver(table))
	put("lot/2.csv", ofOneDriver(table))
	put("four.toml", fourDrivers(t, 150))
	put("other.toml", fourDrivers(t, 140))
	put("piece.toml", fourDrivers(t, 120)) // printed in one piece, so that a kit takes half a second
	put("small.toml", fourDrivers(t, 150)+"\n[search]\ndrivers = 40\nchannels = 2\nleast_drivers = 4\n[search.body]\nshape = [\"cube\", \"octahedron\"]\n")
	for _, args := range []string{"sweep four.toml --rehearse -o recorded", "tune add four.toml --impedance bare.csv", "wiring other.toml -o out"} {
		undisturbed(t, folder, args)
	}
	put("out/notes.txt", "the builder's own")
	return folder
}

// ofOneDriver is a channel's impedance with a fifth of the ohms: about that of one driver.
func ofOneDriver(table string) string {
	lines := strings.Split(table, "\n")
	for i, line := range lines {
		var hz, ohm, degrees float64
		if n, _ := fmt.Sscanf(line, "%g,%g,%g", &hz, &ohm, &degrees); n == 3 {
			lines[i] = fmt.Sprintf("%g,%g,%g", hz, ohm/5, degrees)
		}
	}
	return strings.Join(lines, "\n")
}

// fourDrivers is a design that takes no time.
func fourDrivers(t *testing.T, radius int) string {
	t.Helper()
	text := string(design.DefaultTOML())
	for _, change := range [][2]string{{`(?m)^shape = .*`, `shape = "tetrahedron"`}, {`(?m)^(base|subdivision|cut_height_mm|skip) = `, "# $1 = "},
		{`(?m)^radius_mm = \d+`, fmt.Sprint("radius_mm = ", radius)}} {
		text = regexp.MustCompile(change[0]).ReplaceAllString(text, change[1])
	}
	return text
}

// killEnv keeps nothing in the user's cache.
func killEnv() []string { return append(os.Environ(), store.Variable+"=") }

func undisturbed(t *testing.T, folder, args string) {
	t.Helper()
	c := exec.Command("pappus", strings.Fields(args)...)
	c.Dir, c.Env = folder, killEnv()
	if out, err := c.CombinedOutput(); err != nil && !strings.Contains(string(out), "is there already") {
		t.Fatalf("%s: %v\n%s", args, err, out)
	}
}

// chamber is where one command is killed.
type chamber struct {
	begin, args, next           string
	ground, before, after       tree // without a kill
	nextOnBefore, nextOnAfter   tree
	calls, kept, changed, ended int
	took                        time.Duration
}

func newChamber(t *testing.T, begin, args, next string) *chamber {
	c := &chamber{begin: begin, args: args, next: next, ground: treeOf(t, begin)}
	at := c.again(t)
	c.before = treeOf(t, at)
	since := time.Now()
	undisturbed(t, at, args)
	c.took = time.Since(since)
	c.after = treeOf(t, at)
	undisturbed(t, at, next)
	c.nextOnAfter = treeOf(t, at)
	at = c.again(t)
	undisturbed(t, at, next)
	c.nextOnBefore = treeOf(t, at)
	if cmp.Equal(c.before, c.after) {
		t.Fatal("the command changes nothing")
	}
	return c
}

// again is a copy of the ground, without recordings, which are large, where none are asked for. Files
// are linked: none of them may be written to in its place.
func (c *chamber) again(t *testing.T) string {
	t.Helper()
	to, err := os.MkdirTemp(filepath.Dir(c.begin), "killed")
	if err != nil {
		t.Fatal(err)
	}
	err = filepath.WalkDir(c.begin, func(path string, d fs.DirEntry, err error) error {
		name, _ := filepath.Rel(c.begin, path)
		switch {
		case err != nil || name == ".":
			return err
		case name == "recorded" && !strings.Contains(c.args, name):
			return fs.SkipDir
		case d.IsDir():
			return os.Mkdir(filepath.Join(to, name), 0o777)
		}
		return os.Link(path, filepath.Join(to, name))
	})
	if err != nil {
		t.Fatal(err)
	}
	return to
}

// all kills the command in all ways.
func (c *chamber) all(t *testing.T) {
	c.calls = c.run(t, kill.Fate{}).Calls
	step := *stride
	if *kills == 0 {
		step = max(1, c.calls/4)
	}
	for n := 1; n <= c.calls; n += step {
		c.run(t, kill.Fate{At: n})
		c.run(t, kill.Fate{At: n, Errno: syscall.ENOSPC})
	}
	c.run(t, kill.Fate{At: 1, Errno: syscall.EROFS, All: true})
	for tries := 0; tries-c.ended < *kills && tries < 4**kills; tries++ {
		c.random(t)
	}
	if now := treeOf(t, c.begin); !cmp.Equal(now, c.ground) {
		t.Errorf("a file was written to in its place: %s", cmp.Diff(c.ground, now))
	}
	t.Logf("%d system calls, every %d.; %d random kills; afterwards all as before %d times, all as after %d times; %d times it was done before the kill",
		c.calls, step, *kills, c.kept, c.changed, c.ended)
}

// run runs the command to its fate.
func (c *chamber) run(t *testing.T, f kill.Fate) kill.End {
	t.Helper()
	program, err := exec.LookPath("pappus")
	if err != nil {
		t.Fatal(err)
	}
	at := c.again(t)
	f.Folder = at
	end, err := kill.Run(program, strings.Fields(c.args), at, killEnv(), f)
	if err != nil {
		t.Fatal(err)
	}
	c.judge(t, at, fmt.Sprintf("%s, %+v, %+v", c.args, f, end), f.Errno != 0 && end.Code != 0)
	if f.Errno != 0 && end.Code != 0 && end.Code != 1 {
		t.Errorf("%s, %+v: exit code %d", c.args, f, end.Code)
	}
	return end
}

// random kills the command by the clock.
func (c *chamber) random(t *testing.T) {
	t.Helper()
	at := c.again(t)
	p := exec.Command("pappus", strings.Fields(c.args)...)
	p.Dir, p.Env = at, killEnv()
	if err := p.Start(); err != nil {
		t.Fatal(err)
	}
	after := time.Duration(rand.Float64() * float64(c.took))
	since := time.Now()
	timer := time.AfterFunc(after, func() { _ = p.Process.Kill() })
	_ = p.Wait()
	if timer.Stop() { // it takes less than was thought
		c.ended++
		c.took = min(c.took, time.Since(since))
	}
	c.judge(t, at, fmt.Sprintf("%s, killed after %v", c.args, after), false)
}

// judge looks at what is left, runs what is run next, and looks again. What was refused must
// have changed nothing, and left nothing behind.
func (c *chamber) judge(t *testing.T, at, what string, refused bool) {
	t.Helper()
	defer os.RemoveAll(at)
	if litter := hiddenIn(t, at); refused && len(litter) > 0 {
		t.Errorf("%s: left behind: %v", what, litter)
	}
	if err := wholefolder.Settle(filepath.Join(at, "out")); err != nil {
		t.Errorf("%s: %v", what, err)
	}
	now := treeOf(t, at)
	next := c.nextOnBefore
	switch {
	case cmp.Equal(now, c.before):
		c.kept++
	case cmp.Equal(now, c.after) && !refused:
		c.changed++
		next = c.nextOnAfter
	case c.fitted(now): // the design is written once the folder is, each whole
	default:
		t.Errorf("%s: neither as before nor as after: %s", what, cmp.Diff(c.before, now))
		return
	}
	undisturbed(t, at, c.next)
	if diff := cmp.Diff(next, treeOf(t, at)); diff != "" {
		t.Errorf("%s: after the next run: %s", what, diff)
	}
	if litter := hiddenIn(t, at); len(litter) > 0 {
		t.Errorf("%s: left behind by the next run: %v", what, litter)
	}
}

// fitted tells whether all is as after but the design, which is written once the folder is.
func (c *chamber) fitted(now tree) bool {
	almost := maps.Clone(c.after)
	almost["four.toml"] = c.before["four.toml"]
	return strings.Contains(c.args, "--write") && cmp.Equal(now, almost)
}

// tree has the hash of each file below a folder that people see.
type tree map[string]string

func treeOf(t *testing.T, folder string) tree {
	t.Helper()
	out := tree{}
	each(t, folder, func(name string) {
		if strings.HasPrefix(filepath.Base(name), ".") || strings.HasPrefix(filepath.Base(name), "screened") {
			return
		}
		text, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		out[name] = fmt.Sprintf("%x", sha256.Sum256(text))[:12]
	})
	return out
}

// hiddenIn are the program's hidden files below a folder.
func hiddenIn(t *testing.T, folder string) (out []string) {
	t.Helper()
	each(t, folder, func(name string) {
		if strings.Contains(filepath.Base(name), ".pappus-") {
			out = append(out, name)
		}
	})
	return out
}

// each calls do with the name of each file below a folder.
func each(t *testing.T, folder string, do func(name string)) {
	t.Helper()
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(folder, path)
		do(name)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
