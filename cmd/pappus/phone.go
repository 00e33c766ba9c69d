package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/netip"
	"os"
	"slices"
	"strconv"

	"pappus/layout/prose"
	"pappus/render/page"

	"golang.org/x/term"
)

// wayIn is what the flags say about a phone: whether it may come in, and to which address.
type wayIn struct {
	wanted bool
	at     string // empty: the one by which this machine reaches others
}

// open opens the way in for a phone on a port; nil where none is wanted.
func (w wayIn) open(p *page.Page, port int) (*phoneDoor, error) {
	if !w.wanted && w.at == "" {
		return nil, nil
	}
	at, others, err := w.address()
	if err != nil {
		return nil, err
	}
	l, err := net.Listen("tcp", net.JoinHostPort(at.String(), strconv.Itoa(port)))
	if err != nil {
		return nil, fmt.Errorf("--phone: %s: %w", at, prose.Reason(err))
	}
	phone, err := p.Phone(l.Addr().(*net.TCPAddr).AddrPort())
	if err != nil {
		return nil, errors.Join(err, l.Close())
	}
	return &phoneDoor{l, phone, others}, nil
}

// phoneDoor is the way in while it is open.
type phoneDoor struct {
	listener net.Listener
	phone    *page.Phone
	others   []netip.Addr // where it could be, too
}

// tell says how a phone comes in, and who else may.
func (d *phoneDoor) tell(out io.Writer) error {
	drawn := ""
	if f, ok := out.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		drawn = "\n" + d.phone.Drawn() + "\n"
	}
	more := ""
	if len(d.others) > 0 {
		more = "If the phone is in another network of this machine: --phone-at " + prose.Either(spelled(d.others)) + ".\n"
	}
	_, err := fmt.Fprintf(out, "On a phone in the same network the bench is at %s\n%s"+
		"Who has this address can see what is soldered, and tick. It goes over plain http: who else is\n"+
		"on the network can read it along the way, so open it only on one that you trust.\n%s", d.phone.Address(), drawn, more)
	return err
}

func (d *phoneDoor) close() error {
	if d == nil {
		return nil
	}
	return d.listener.Close()
}

// serveBoth answers on the page's listener, and on the phone's where there is one, until ctx
// ends or one of them fails.
func serveBoth(ctx context.Context, l net.Listener, p *page.Page, d *phoneDoor) error {
	if d == nil {
		return page.Serve(ctx, l, p)
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	ended := make(chan error, 1)
	go func() {
		defer stop()
		ended <- page.Serve(ctx, d.listener, d.phone)
	}()
	err := page.Serve(ctx, l, p)
	stop()
	return errors.Join(err, <-ended)
}

// address is where the phone comes to, and where else it could.
func (w wayIn) address() (at netip.Addr, others []netip.Addr, err error) {
	cards, err := cardsHere()
	if err != nil {
		return at, nil, fmt.Errorf("--phone: %w", prose.Reason(err))
	}
	all := local(cards, outgoing())
	if w.at != "" {
		at, err = netip.ParseAddr(w.at)
		switch {
		case err != nil || !at.IsPrivate() && !at.IsLoopback():
			return at, nil, fmt.Errorf("--phone-at %s: must be an address in a local network, such as 192.168.1.20", prose.Path(w.at))
		case !slices.ContainsFunc(cards, func(c card) bool { return slices.Contains(c.at, at) }):
			return at, nil, fmt.Errorf("--phone-at %s: must be an address of this machine%s", at, which(all))
		}
		return at, nil, nil
	}
	if len(all) == 0 {
		return at, nil, errors.New("--phone: this machine is in no local network that a phone could be in; join one, or leave --phone out")
	}
	return all[0], all[1:], nil
}

// which says which addresses there are.
func which(all []netip.Addr) string {
	if len(all) == 0 {
		return ", which has none in a local network"
	}
	return ", such as " + prose.Either(spelled(all))
}

func spelled(all []netip.Addr) []string {
	out := make([]string, len(all))
	for i, a := range all {
		out[i] = a.String()
	}
	return out
}

// card is one of the machine's ways to a network.
type card struct {
	flags net.Flags
	at    []netip.Addr
}

func cardsHere() ([]card, error) {
	all, err := net.Interfaces()
	if err != nil {
		return nil, err
	}
	var out []card
	for _, i := range all {
		found, err := i.Addrs()
		if err != nil {
			return nil, err
		}
		c := card{flags: i.Flags}
		for _, a := range found {
			if prefix, err := netip.ParsePrefix(a.String()); err == nil {
				c.at = append(c.at, prefix.Addr())
			}
		}
		out = append(out, c)
	}
	return out, nil
}

// local are the addresses at which a phone beside this machine may reach it, the likeliest
// first: private ones (RFC 1918, RFC 4193) of cards that are up, and of no tunnel; that by which
// this machine reaches others, then those of IPv4.
func local(cards []card, outgoing netip.Addr) (out []netip.Addr) {
	for _, c := range cards {
		if c.flags&net.FlagUp == 0 || c.flags&(net.FlagLoopback|net.FlagPointToPoint) != 0 {
			continue
		}
		for _, a := range c.at {
			if a.IsPrivate() {
				out = append(out, a)
			}
		}
	}
	last := func(a netip.Addr) int {
		switch {
		case a == outgoing:
			return 0
		case a.Is4():
			return 1
		}
		return 2
	}
	slices.SortStableFunc(out, func(a, b netip.Addr) int { return last(a) - last(b) })
	return out
}

// outgoing is the address by which this machine reaches others. Nothing is sent: a socket of UDP
// is only told where it would send to, which is an address that belongs to nobody (RFC 5737).
func outgoing() netip.Addr {
	conn, err := net.Dial("udp4", "192.0.2.1:9")
	if err != nil {
		return netip.Addr{}
	}
	defer conn.Close()
	at, _ := netip.AddrFromSlice(conn.LocalAddr().(*net.UDPAddr).IP.To4())
	return at
}
