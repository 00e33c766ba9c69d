package page

import (
	"errors"
	"fmt"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestTextsNameNoFilesElsewhere, whichever key names them and whoever asks.
func TestTextsNameNoFilesElsewhere(t *testing.T) {
	p, path := newPage(t, small)
	secret := filepath.Join(filepath.Dir(filepath.Dir(path)), "secret.csv")
	names := []string{secret, "../secret.csv", "tables/../../secret.csv", "/etc/hostname"}
	for key, with := range map[string]string{
		"driver.response":  "diameter_mm = 30\nresponse = %q",
		"driver.impedance": "diameter_mm = 30\nimpedance = %q",
		"mounts.list":      "diameter_mm = 30\n[mounts]\non = \"list\"\nlist = %q",
		"body.file":        "diameter_mm = 30\n[body]\nshape = \"file\"\nfile = %q",
	} {
		for _, name := range names {
			text := strings.Replace(small, "diameter_mm = 30", fmt.Sprintf(with, name), 1)
			if key == "mounts.list" {
				text = strings.Replace(text, "[mounts]\ncount = 6\n", "", 1)
			}
			if key == "body.file" {
				text = strings.Replace(text, "[body]\nshape = \"ball\"\nradius_mm = 100   # across is twice that\n", "", 1)
			}
			t.Run(key+" "+filepath.Base(name), func(t *testing.T) {
				request := httptest.NewRequest("POST", "/api/plan", nil)
				_, planned := p.plan(nil, request, planAsked{Text: text})
				_, edited := p.edit(nil, nil, edits{Text: text, Set: []change{{"body.wall_mm", 3}}})
				_, set := p.edit(nil, nil, edits{Text: small, Set: []change{{key, name}}})
				for who, err := range map[string]error{"plan": planned, "edit": edited, "set": set} {
					var f *faulty
					if !errors.As(err, &f) || f.Cure != nil {
						t.Fatalf("%s: %v", who, err)
					}
					if got := f.Faults[len(f.Faults)-1]; got.Key != key || !strings.Contains(got.Reason, "in the design's folder") {
						t.Errorf("%s: %+v", who, got)
					}
				}
			})
		}
	}
}

// TestOwnFileNamesFilesElsewhere: what the program was started for may.
func TestOwnFileNamesFilesElsewhere(t *testing.T) {
	text := strings.Replace(small, "diameter_mm = 30", "diameter_mm = 30\nresponse = \"../far.csv\"", 1)
	p, path := newPage(t, text)
	if err := os.WriteFile(filepath.Join(filepath.Dir(filepath.Dir(path)), "far.csv"), []byte("frequency_hz,level_db,phase_deg\n100,80,0\n1000,80,0\n10000,80,0\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	request := httptest.NewRequest("POST", "/api/plan", nil)
	if _, err := p.plan(nil, request, planAsked{Text: text}); err != nil {
		t.Errorf("its own: %v", err)
	}
	var faults *faulty
	if _, err := p.plan(nil, request, planAsked{Text: strings.Replace(text, "far.csv", "further.csv", 1)}); !errors.As(err, &faults) || !strings.Contains(fmt.Sprint(faults.Faults), "folder") {
		t.Errorf("another: %v", err)
	}
}
