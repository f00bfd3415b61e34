package main

import (
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A long register is searched from a folder, without a network, and what is found leads to the hull.
func TestLongRegisterIsSearched(t *testing.T) {
	t.Parallel()
	r := openBrowser(t)
	out := filepath.Join(t.TempDir(), "files")
	if text, err := exec.Command("hullfile", "render", tinyYard(t, 301), "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	r.open(filepath.Join(out, "index.html"))
	found := ask[string](r, `new Promise(done => {
		const input = document.querySelector("#hulls input");
		input.value = "f299 boat";
		input.dispatchEvent(new Event("input"));
		const look = () => {
			const way = document.querySelector("#hulls li a");
			way ? done(way.getAttribute("href") + " " + document.querySelector("#hulls [role=status]").textContent) : setTimeout(look, 20);
		};
		look();
	})`)
	if found != "F299/index.html 1 found" && found != "F299/index.html 1 found; still reading" {
		t.Errorf("found %q", found)
	}
	requests, told := r.heard()
	if len(told) > 0 {
		t.Errorf("the browser says %v", told)
	}
	for _, to := range requests {
		if !strings.HasPrefix(to, "file://") && !strings.HasPrefix(to, "data:") {
			t.Errorf("asks for %s", to)
		}
	}
	r.open(filepath.Join(out, "register", "0002.html"))
	if way := ask[string](r, `document.querySelector("th a").getAttribute("href")`); way != "../F301/index.html" {
		t.Errorf("the second page leads to %s", way)
	}
}
