package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"go/ast"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The house has one direction: cmd -> site -> engine -> engine/*. content and templates are data, read through their
// embed.go. These tests hold the walls; none of them can be skipped.

// arrows says which packages of this module a package may import, by the first folder of each; engine stands for the
// package itself and engine/ for those below it.
var arrows = map[string][]string{
	"cmd/":      {"site", previewRoom, sealRoom, "engine", "engine/", "content", "templates"},
	"site":      {"site/", "engine", "engine/", "content", "templates"},
	"site/":     {"site/", "engine", "engine/"},
	previewRoom: {"engine/", "templates"},
	sealRoom:    {"engine/"},
	"engine":    {"engine/"},
	"engine/":   {"engine/"},
	"content":   {},
	"templates": {},
}

// previewRoom shows pages to a browser on this machine. It alone below cmd knows the network, and the site does not know it.
const previewRoom = "site/preview"

// sealRoom makes and reads signatures by a library that is built on the network's package, though it never calls anybody.
// The site does not know it; what it may not do itself is held by TestSealRoomIsQuiet.
const sealRoom = "site/seal"

// floors says what the packages that everything stands on may import; the trades above them may import any of them.
var floors = map[string][]string{
	"engine/crew":         {},
	"engine/finding":      {},
	"engine/unit":         {},
	"engine/hydrostatics": {},
	"engine/endurance":    {},
	"engine/fleet":        {},
	"engine/fatigue":      {},
	"engine/section":      {"engine/finding", "engine/unit"},
	"engine/beam":         {"engine/section", "engine/unit"},
	"engine/record":       {"engine/crew", "engine/finding", "engine/unit"},
	"engine/method":       {"engine/crew", "engine/finding", "engine/unit"},
	"engine/lookup":       {"engine/finding", "engine/method", "engine/record"},
	"engine/material":     {"engine/finding", "engine/unit", "engine/method"},
	"site/mathml":         {"engine/method"},
}

// never lists, by room, what may not be imported there, directly or by way of anything else, and why.
var never = map[string]map[string]string{
	"engine": {
		"html/template":          "the engine knows no pages",
		"net/http":               "the engine knows no network",
		"net":                    "the engine knows no network",
		"os/exec":                "the engine starts nothing",
		"flag":                   "the engine knows no command line",
		"github.com/spf13/cobra": "the engine knows no command line",
	},
	"site": {
		"net/http":               "a page is written, not served",
		"net":                    "a page is written, not served",
		"os/exec":                "the site starts nothing",
		"github.com/spf13/cobra": "the site knows no command line",
	},
}

// restless lists what would make the same records give other bytes on another day or machine.
var restless = []string{
	"time.Now", "time.Since", "time.Local", "time.Tick", "os.Getenv", "os.LookupEnv", "os.Environ", "os.Hostname", "os.Getwd",
	"os.Args", "user.Current", "os.Exit", "os.Getpid",
}

func TestArrowsPointOneWay(t *testing.T) {
	onFloor := map[string]bool{}
	for _, f := range sources(t) {
		dir := filepath.ToSlash(filepath.Dir(f.path))
		allowed, known := arrows[roomOf(dir)]
		if !known {
			t.Errorf("%s lies in no room of the house", f.path)
			continue
		}
		floor, isFloor := floors[dir]
		onFloor[dir] = isFloor
		for _, imported := range f.imports() {
			below, own := strings.CutPrefix(imported, "hullfile/")
			if !own || f.isTest() {
				continue
			}
			if !slices.Contains(allowed, roomOf(below)) {
				t.Errorf("%s imports %s: %s may import only %v", f.path, imported, dir, allowed)
			}
			if isFloor && !slices.Contains(floor, below) {
				t.Errorf("%s imports %s: %s may import only %v", f.path, imported, dir, floor)
			}
		}
	}
	for dir := range floors {
		if !onFloor[dir] {
			t.Errorf("the floor %s is not there any more", dir)
		}
	}
}

// roomOf gives "engine" for the package itself and "engine/" for a package below it.
func roomOf(dir string) string {
	if room := filepath.ToSlash(dir); room == previewRoom || room == sealRoom {
		return room
	}
	first, rest, _ := strings.Cut(filepath.ToSlash(dir), "/")
	if rest != "" {
		return first + "/"
	}
	return first
}

func TestNothingForbiddenComesInByTheBackDoor(t *testing.T) {
	for room, forbidden := range never {
		for _, path := range dependencies(t, packagesOf(t, room)) {
			if why, bad := forbidden[path]; bad {
				t.Errorf("%s reaches %s: %s", room, path, why)
			}
		}
	}
}

// packagesOf lists the packages of a room, as go list takes them.
func packagesOf(t *testing.T, room string) []string {
	t.Helper()
	var all []string
	for _, f := range sources(t) {
		dir := filepath.ToSlash(filepath.Dir(f.path))
		if first, _, _ := strings.Cut(dir, "/"); first == room && dir != previewRoom && dir != sealRoom && !slices.Contains(all, "./"+dir) {
			all = append(all, "./"+dir)
		}
	}
	return all
}

// dependencies lists all packages that the given ones are built from, without those of their tests.
func dependencies(t *testing.T, packages []string) []string {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-deps", "-json=ImportPath"}, packages...)...)
	cmd.Dir = moduleRoot(t)
	cmd.Stderr = os.Stderr
	text, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %v: %v", packages, err)
	}
	var all []string
	for dec := json.NewDecoder(bytes.NewReader(text)); ; {
		var p struct{ ImportPath string }
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p.ImportPath)
	}
	if len(all) < 10 {
		t.Fatalf("go list %v names only %d packages", packages, len(all))
	}
	return all
}

// TestSealRoomIsQuiet holds the room of seals to what it is excepted for: the library of signatures, and nothing that
// reaches out, starts something or makes a page.
func TestSealRoomIsQuiet(t *testing.T) {
	seen := 0
	for _, f := range sources(t) {
		if filepath.ToSlash(filepath.Dir(f.path)) != sealRoom || f.isTest() {
			continue
		}
		seen++
		for _, imported := range f.imports() {
			if _, bad := never["site"][imported]; bad || imported == "html/template" {
				t.Errorf("%s imports %s", f.path, imported)
			}
		}
	}
	if seen < 5 {
		t.Errorf("%d files of %s seen", seen, sealRoom)
	}
}

func TestSameRecordsGiveTheSameBytes(t *testing.T) {
	for _, f := range sources(t) {
		if f.isTest() || strings.HasPrefix(f.path, "cmd/") {
			continue
		}
		ast.Inspect(f.file, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && slices.Contains(restless, x.Name+"."+s.Sel.Name) {
					t.Errorf("%s uses %s.%s", f.at(n), x.Name, s.Sel.Name)
				}
			}
			return true
		})
	}
}

func TestOnlyTheCommandPrintsAndStops(t *testing.T) {
	for _, f := range sources(t) {
		if f.isTest() || strings.HasPrefix(f.path, "cmd/") {
			continue
		}
		ast.Inspect(f.file, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			x, _ := s.X.(*ast.Ident)
			if x != nil && (x.Name == "os" && (s.Sel.Name == "Stdout" || s.Sel.Name == "Stderr") || x.Name == "fmt" && strings.HasPrefix(s.Sel.Name, "Print") || x.Name == "log" && slices.Contains(f.imports(), "log")) {
				t.Errorf("%s uses %s.%s; only the command prints", f.at(n), x.Name, s.Sel.Name)
			}
			return true
		})
	}
}

// trusted lists the files that may call a text safe for a page, and why it is.
var trusted = map[string]string{
	"site/cache.go":   "what a template made, and so escaped",
	"site/note.go":    "what goldmark made, with raw HTML off",
	"site/rows.go":    "rows that are escaped value by value",
	"site/picture.go": "our own drawings, which escape",
	"site/maths.go":   "our own formulas, which escape",
	"site/printed.go": "pages that our own templates made, joined",
}

func TestOnlyTrustedFilesCallATextSafe(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range sources(t) {
		if f.isTest() {
			continue
		}
		ast.Inspect(f.file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			s, ok := call.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := s.X.(*ast.Ident); ok && x.Name == "template" && slices.Contains([]string{"HTML", "HTMLAttr", "CSS", "JS", "JSStr", "URL", "Srcset"}, s.Sel.Name) {
				seen[f.path] = true
				if trusted[f.path] == "" || s.Sel.Name != "HTML" {
					t.Errorf("%s calls a text safe by template.%s", f.at(n), s.Sel.Name)
				}
			}
			return true
		})
	}
	for path := range trusted {
		if !seen[path] {
			t.Errorf("%s is trusted and does not need it", path)
		}
	}
}

// writers lists the files of the site that may change what is on the disk, and what they change.
var writers = map[string]string{
	"site/output.go":    "files of a book",
	"site/sub_linux.go": "the same, by the calls of the system alone",
	"site/stage.go":     "what is moved into place at the end",
	"site/settle.go":    "what an interrupted run left",
	"site/state.go":     "what the next run remembers of the output",
	"site/kept.go":      "what it remembers of single hulls",
	"site/lock.go":      "the lock of an output folder",
}

// changing are the calls by which a file or folder comes, changes or goes.
var changing = []string{"WriteFile", "Create", "CreateTemp", "OpenFile", "Mkdir", "MkdirAll", "MkdirTemp", "Rename", "Remove", "RemoveAll", "Link", "Symlink", "Truncate", "Chmod", "Chtimes", "Openat"}

func TestOnlyWritersTouchTheDisk(t *testing.T) {
	seen := map[string]bool{}
	for _, f := range sources(t) {
		first, _, _ := strings.Cut(f.path, "/")
		if f.isTest() || first == "cmd" {
			continue
		}
		ast.Inspect(f.file, func(n ast.Node) bool {
			s, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if x, ok := s.X.(*ast.Ident); ok && (x.Name == "os" || x.Name == "syscall") && slices.Contains(changing, s.Sel.Name) {
				seen[f.path] = true
				if writers[f.path] == "" {
					t.Errorf("%s calls %s.%s", f.at(n), x.Name, s.Sel.Name)
				}
			}
			return true
		})
	}
	for path := range writers {
		if !seen[path] {
			t.Errorf("%s is listed and writes nothing", path)
		}
	}
}

func TestFilesAreShortAndStartNothing(t *testing.T) {
	for _, f := range sources(t) {
		if lines := f.set.Position(f.file.FileEnd).Line; lines > 400 && !f.isTest() {
			t.Errorf("%s has %d lines; 400 are the most that can be held in the head", f.path, lines)
		}
		for _, d := range f.file.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == "init" {
				t.Errorf("%s has an init function", f.path)
			}
		}
		if slices.Contains([]string{"util", "utils", "common", "helper", "helpers", "manager", "misc"}, f.file.Name.Name) {
			t.Errorf("%s: package %s has a name that says nothing", f.path, f.file.Name.Name)
		}
	}
}

func TestVerbsAreShort(t *testing.T) {
	seen := 0
	for _, f := range sources(t) {
		verb := strings.TrimSuffix(filepath.Base(f.path), ".go")
		if filepath.Dir(f.path) != "cmd/hullfile" || !slices.Contains([]string{"demo", "start", "check", "render", "register", "preview", "proof", "schema", "seal", "verify", "compare", "handover", "keys"}, verb) {
			continue
		}
		seen++
		if lines := f.set.Position(f.file.FileEnd).Line; lines > 80 {
			t.Errorf("%s has %d lines; a verb is a short file", f.path, lines)
		}
	}
	if seen != 13 {
		t.Errorf("%d files of verbs seen, want 13", seen)
	}
}
