package main

import (
	"fmt"
	"io"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// withPhone runs the command on a design's file with a way in for a phone until the test ends,
// and returns the addresses of both.
func withPhone(t testing.TB, design string) (page, phone string) {
	t.Helper()
	said, stop := saying(t, design, "--phone-at", "127.0.0.1")
	t.Cleanup(stop)
	page = addressIn(t, said)
	line, err := said.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(line, "On a phone in the same network the bench is at %s", &phone); err != nil {
		t.Fatalf("%q: %v", line, err)
	}
	warned := ""
	for range 2 {
		line, err := said.ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		warned += line
	}
	if !strings.Contains(warned, "plain http") {
		t.Errorf("it does not warn: %q", warned)
	}
	go func() { _, _ = io.Copy(io.Discard, said) }()
	return page, phone
}

// TestServeToAPhone: two listeners, each with its own; both end with the command.
func TestServeToAPhone(t *testing.T) {
	design := filepath.Join(t.TempDir(), "little.toml")
	if err := os.WriteFile(design, []byte(little), 0o600); err != nil {
		t.Fatal(err)
	}
	page, phone := withPhone(t, design)
	if !regexp.MustCompile(`^http://127\.0\.0\.1:[0-9]+/[A-Z2-7]{26}$`).MatchString(phone) {
		t.Errorf("the phone's address is %s", phone)
	}
	client, base := letIn(t, page)
	at := phone[:strings.LastIndex(phone, "/")]
	for _, c := range []struct {
		name, address string
		want          int
	}{
		{"page", base + "/", 200},
		{"page's bench", base + "/bench", 200},
		{"page's way in", base + "/api/phone", 200},
		{"secret at the page", base + strings.TrimPrefix(phone, at), 404},
		{"phone", phone, 200},
		{"phone without the secret", at + "/", 403},
		{"phone's bench without the secret", at + "/bench", 403},
		{"the page through the phone", at + "/api/start", 403},
	} {
		who := client
		if strings.HasPrefix(c.address, at) {
			who = stranger(t)
		}
		r, err := who.Get(c.address)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode != c.want {
			t.Errorf("%s: %s, want %d", c.name, r.Status, c.want)
		}
	}
}

// TestLocal are the addresses that a phone could reach.
func TestLocal(t *testing.T) {
	const up, tunnel = net.FlagUp | net.FlagBroadcast, net.FlagUp | net.FlagPointToPoint
	of := func(flags net.Flags, at ...string) card {
		c := card{flags: flags}
		for _, a := range at {
			c.at = append(c.at, netip.MustParseAddr(a))
		}
		return c
	}
	self := of(net.FlagUp|net.FlagLoopback, "127.0.0.1", "::1", "10.255.0.1")
	for _, c := range []struct {
		name     string
		cards    []card
		outgoing string
		want     []string
	}{
		{"none", []card{self}, "127.0.0.1", nil},
		{"one", []card{self, of(up, "192.168.1.20", "fe80::1")}, "192.168.1.20", []string{"192.168.1.20"}},
		{"the outgoing one first", []card{self, of(up, "172.17.0.1"), of(up, "192.168.1.20")}, "192.168.1.20", []string{"192.168.1.20", "172.17.0.1"}},
		{"a tunnel goes out", []card{self, of(tunnel, "10.8.0.2"), of(up, "192.168.1.20")}, "10.8.0.2", []string{"192.168.1.20"}},
		{"no way out", []card{self, of(up, "10.0.0.4")}, "", []string{"10.0.0.4"}},
		{"IPv4 before IPv6", []card{self, of(up, "fd00::2", "10.0.0.4")}, "", []string{"10.0.0.4", "fd00::2"}},
		{"that card is down", []card{self, of(net.FlagBroadcast, "192.168.1.20")}, "", nil},
		{"all the world's", []card{self, of(up, "8.8.8.8", "2600::1", "100.64.0.1", "169.254.1.1")}, "8.8.8.8", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out netip.Addr
			if c.outgoing != "" {
				out = netip.MustParseAddr(c.outgoing)
			}
			if diff := cmp.Diff(c.want, spelled(local(c.cards, out)), cmp.Transformer("none", func(s []string) []string { return append([]string{}, s...) })); diff != "" {
				t.Error(diff)
			}
		})
	}
}
