package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"

	"pappus/layout/design"
	sound "pappus/preview/sweep"
	"pappus/render/page"

	"github.com/spf13/cobra"
)

func newServe(f *flags) *cobra.Command {
	var port int
	var open bool
	var phone wayIn
	c := &cobra.Command{
		Use:   "serve [DESIGN.toml or FOLDER]",
		Short: "Show a design on a page in the browser, to change it and to hear it",
		Long: "Show a design on a page in the browser, to change it and to hear it.\n\n" +
			"The page is for this machine alone: nothing else on the network can reach it. A secret in the\n" +
			"address that it says keeps other accounts of this machine out; it is another at each start.\n" +
			"With --phone a phone in the same network can open the bench and the wiring book, and tick\n" +
			"what is soldered, if it has the address that is shown at the start; it can reach nothing else.\n" +
			"That goes over plain http: who is on the network can see what is sent.\n\n" +
			"It writes no file but DESIGN.toml, and that only when it is told to save, and\n" +
			"DESIGN.bench.toml beside it, where somebody ticks at the bench.\n\n" +
			"Of a FOLDER that \"pappus search\" wrote it shows all that was found, to choose from; of a\n" +
			"design with a [search] too, where the folder \"search\" beside it is one.",
		Args: oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			return servePage(c, f, cmp.Or(args...), port, open, phone)
		},
	}
	c.Flags().IntVar(&port, "port", 0, "port to answer on, 0 to 65535; 0: any that is free")
	c.Flags().BoolVar(&open, "open", false, "open the page in the browser")
	c.Flags().BoolVar(&phone.wanted, "phone", false, "let a phone in the same network open the bench, on the same port if one is given")
	c.Flags().StringVar(&phone.at, "phone-at", "", "address of this machine at which the phone comes in (default: found)")
	return c
}

func servePage(c *cobra.Command, f *flags, path string, port int, open bool, phone wayIn) error {
	if port < 0 || port > 65535 {
		return fmt.Errorf("--port %d: must be from 0 to 65535", port)
	}
	found, err := foundBeside(path)
	if err != nil {
		return err
	}
	if found != nil && found.Path == path {
		path = found.First()
	}
	options := page.Options{Path: path, Found: found, Version: version, Files: offered(), Write: download, Measure: sound.Judge}
	hear(&options)
	p, err := page.New(options)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
	if err != nil {
		return fmt.Errorf("--port %d: %w", port, err)
	}
	door, err := phone.open(p, port)
	if err != nil {
		return errors.Join(err, l.Close())
	}
	at := l.Addr().(*net.TCPAddr).AddrPort()
	address := p.Address(at)
	if !f.quiet {
		if err := tell(c.OutOrStdout(), address, door); err != nil {
			return errors.Join(err, l.Close(), door.close())
		}
	}
	if open {
		if err := browse(p.AddressOnce(at)); err != nil {
			fmt.Fprintf(c.ErrOrStderr(), "The browser did not open (%v); open %s yourself.\n", err, address)
		}
	}
	return serveBoth(c.Context(), l, p, door)
}

// tell says where the page is, and how a phone comes to the bench.
func tell(out io.Writer, address string, door *phoneDoor) error {
	if _, err := fmt.Fprintf(out, "The page is at %s\n"+
		"Only who has this address can open it, and no other account of this machine. Ctrl-C stops.\n", address); err != nil || door == nil {
		return err
	}
	return door.tell(out)
}

// foundBeside returns what a search found in a folder; of a design that has a [search], in the
// folder "search" beside it, if it is one.
func foundBeside(path string) (*page.Found, error) {
	if path == "" {
		return nil, nil
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return page.ReadFound(path)
	}
	d, err := design.Read(path)
	if err != nil || !d.Search.Present {
		return nil, nil // what is wrong with it is for the page to say
	}
	found, err := page.ReadFound(filepath.Join(filepath.Dir(path), "search"))
	if errors.Is(err, page.ErrNoSearch) {
		return nil, nil
	}
	return found, err
}

// browse opens an address with what the system has for it. The browser outlives
// the program.
func browse(address string) error {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	}
	opener := exec.Command(name, args...)
	if err := opener.Start(); err != nil {
		return err
	}
	go func() { _ = opener.Wait() }() // what became of it the person sees
	return nil
}
