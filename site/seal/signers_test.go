package seal

import (
	"strings"
	"testing"

	"golang.org/x/crypto/ssh"

	"hullfile/engine/finding"
)

// Options as in the manual of ssh-keygen, section on allowed signers (recalled).
func TestListOfSigners(t *testing.T) {
	key := newKey(t)
	line := strings.TrimSpace(string(ssh.MarshalAuthorizedKey(key.PublicKey())))
	rows := []struct {
		where, text, day string
		who, why         string
	}{
		{"plain", "maren " + line, "2026-04-20", "maren", ""},
		{"tab and comment", "# list\n\nmaren\t" + line + " comment of hers", "2026-04-20", "maren", ""},
		{"several principals in quotes", `"maren@yard,maren" ` + line, "2026-04-20", "maren@yard,maren", ""},
		{"namespace", `maren namespaces="git,hullfile" ` + line, "2026-04-20", "maren", ""},
		{"pattern", `maren namespaces="hull*" ` + line, "2026-04-20", "maren", ""},
		{"other namespace", `maren namespaces="git" ` + line, "2026-04-20", "", "may sign other things"},
		{"refused namespace", `maren namespaces="*,!hullfile" ` + line, "2026-04-20", "", "may sign other things"},
		{"from that day", `maren valid-after="20260420" ` + line, "2026-04-20", "maren", ""},
		{"not yet", `maren valid-after="20260421Z" ` + line, "2026-04-20", "", "may sign from 20260421"},
		{"not any more", `maren valid-before="202604190000" ` + line, "2026-04-20", "", "may sign until 20260419"},
		{"a second line allows it", "old valid-before=\"20260101\" " + line + "\nnew valid-after=\"20260101\" " + line, "2026-04-20", "new", ""},
		{"somebody else", "ivo " + strings.TrimSpace(string(ssh.MarshalAuthorizedKey(newKey(t).PublicKey()))), "2026-04-20", "", "not in signers"},
	}
	for _, row := range rows {
		list, err := ReadSigners("signers", []byte(row.text))
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		who, why := list.find(key.PublicKey(), row.day)
		if who != row.who || row.why == "" && why != "" || !strings.Contains(why, row.why) {
			t.Errorf("%s: %q, %q; want %q, %q", row.where, who, why, row.who, row.why)
		}
	}
}

func TestFaultsOfAListOfSignersAreToldAtOnce(t *testing.T) {
	line := strings.TrimSpace(string(ssh.MarshalAuthorizedKey(newKey(t).PublicKey())))
	text := "maren\nivo ssh-ed25519 AAAA\nca cert-authority " + line + "\nodd no-such-option " + line + "\nday valid-after=\"soon\" " + line + "\ngood " + line
	_, err := ReadSigners("signers", []byte(text))
	faults, ok := err.(finding.Faults)
	if !ok || len(faults) != 5 {
		t.Fatalf("%v, want five faults", err)
	}
	for i, f := range faults {
		if f.Place.Line != i+1 || f.Place.File != "signers" || f.Hint == "" {
			t.Errorf("fault %d stands at %v with hint %q", i, f.Place, f.Hint)
		}
	}
	for _, empty := range []string{"", "# nobody\n"} {
		if _, err := ReadSigners("signers", []byte(empty)); err == nil {
			t.Errorf("%q is taken for a list", empty)
		}
	}
}

func TestListsOfHashes(t *testing.T) {
	h := digest("x")
	rows := []struct {
		where, text string
		lines       int
		wrong       bool
	}{
		{"good", h + "  a\n" + h + "  b/c\n", 2, false},
		{"out of order", h + "  b\n" + h + "  a\n", 1, true},
		{"twice", h + "  a\n" + h + "  a\n", 1, true},
		{"upwards", h + "  ../a\n", 0, true},
		{"from the root of the disk", h + "  /etc/passwd\n", 0, true},
		{"another way of writing it", h + "  a/./b\n", 0, true},
		{"a backslash", h + "  a\\b\n", 0, true},
		{"one blank", h + " a\n", 0, true},
		{"short hash", h[1:] + "  a\n", 0, true},
		{"capitals", strings.ToUpper(h) + "  a\n", 0, true},
		{"broken off", h + "  a", 1, true},
		{"empty", "", 0, true},
	}
	for _, row := range rows {
		list, wrong := ReadSums([]byte(row.text))
		if len(list) != row.lines || (len(wrong) > 0) != row.wrong {
			t.Errorf("%s: %d lines, %v", row.where, len(list), wrong)
		}
	}
}
