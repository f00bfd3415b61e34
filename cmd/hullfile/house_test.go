package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The house has one direction: cmd -> site -> engine -> engine/*. content and templates are data, read through their
// embed.go. These tests hold the walls; none of them can be skipped.

// arrows says which packages of this module a package may import, by the first folder of each; engine stands for the
// package itself and engine/ for those below it.
var arrows = map[string][]string{
	"cmd/":      {"site", "engine", "engine/", "content", "templates"},
	"site":      {"site/", "engine", "engine/", "content", "templates"},
	"site/":     {"site/", "engine/"},
	"engine":    {"engine/"},
	"engine/":   {"engine/"},
	"content":   {},
	"templates": {},
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
	for _, f := range sources(t) {
		room := roomOf(filepath.Dir(f.path))
		allowed, known := arrows[room]
		if !known {
			t.Errorf("%s lies in no room of the house", f.path)
			continue
		}
		for _, imported := range f.imports() {
			below, own := strings.CutPrefix(imported, "hullfile/")
			if !own || below == filepath.Dir(f.path) || f.isTest() {
				continue
			}
			if !slices.Contains(allowed, roomOf(below)) {
				t.Errorf("%s imports %s: %s may import only %v", f.path, imported, room, allowed)
			}
		}
	}
}

// roomOf gives "engine" for the package itself and "engine/" for a package below it.
func roomOf(dir string) string {
	first, rest, _ := strings.Cut(filepath.ToSlash(dir), "/")
	if rest != "" {
		return first + "/"
	}
	return first
}

func TestNothingForbiddenComesInByTheBackDoor(t *testing.T) {
	for room, forbidden := range never {
		for _, path := range dependencies(t, "./"+room+"/...") {
			if why, bad := forbidden[path]; bad {
				t.Errorf("%s reaches %s: %s", room, path, why)
			}
		}
	}
}

// dependencies lists all packages that the given ones are built from, without those of their tests.
func dependencies(t *testing.T, pattern string) []string {
	t.Helper()
	cmd := exec.Command("go", "list", "-deps", "-json=ImportPath", pattern)
	cmd.Dir = moduleRoot(t)
	cmd.Stderr = os.Stderr
	text, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %s: %v", pattern, err)
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
		t.Fatalf("go list %s names only %d packages", pattern, len(all))
	}
	return all
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
			if x != nil && (x.Name == "os" && (s.Sel.Name == "Stdout" || s.Sel.Name == "Stderr") || x.Name == "fmt" && strings.HasPrefix(s.Sel.Name, "Print") || x.Name == "log") {
				t.Errorf("%s uses %s.%s; only the command prints", f.at(n), x.Name, s.Sel.Name)
			}
			return true
		})
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
		if filepath.Dir(f.path) != "cmd/hullfile" || !slices.Contains([]string{"demo", "start", "check", "render", "proof", "schema"}, verb) {
			continue
		}
		seen++
		if lines := f.set.Position(f.file.FileEnd).Line; lines > 80 {
			t.Errorf("%s has %d lines; a verb is a short file", f.path, lines)
		}
	}
	if seen != 6 {
		t.Errorf("%d files of verbs seen, want 6", seen)
	}
}

// TestTopLevelIsTheHouse keeps the top level to what the design names. What .gitignore names is the reader's own.
func TestTopLevelIsTheHouse(t *testing.T) {
	root := moduleRoot(t)
	house := []string{".ci", ".git", ".gitignore", "DEVELOPERS.md", "README.md", "cmd", "content", "engine", "go.mod", "go.sum", "site", "templates", "testdata"}
	ignored, err := os.ReadFile(filepath.Join(root, ".gitignore"))
	if err != nil {
		t.Fatal(err)
	}
	patterns := strings.Fields(string(ignored))
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		own := slices.ContainsFunc(patterns, func(p string) bool {
			hit, err := filepath.Match(strings.Trim(p, "/"), e.Name())
			return err == nil && hit
		})
		if !own && !slices.Contains(house, e.Name()) {
			t.Errorf("%s does not belong at the top level", e.Name())
		}
	}
}

// TestNothingIsLeftLying looks in every text of the tree for marks of unfinished work and for paths of somebody's machine.
func TestNothingIsLeftLying(t *testing.T) {
	// Put together here, so that this file does not find itself.
	marks := []string{"TO" + "DO", "FIX" + "ME", "XX" + "X:", "/wo" + "rk/", "/ho" + "me/", "/ro" + "ot/", "/Us" + "ers/", "@user" + "s.noreply"}
	seen := 0
	eachFile(t, func(path string, text []byte) {
		if bytes.IndexByte(text, 0) >= 0 || strings.HasSuffix(path, ".sum") {
			return
		}
		seen++
		for _, m := range marks {
			if i := bytes.Index(text, []byte(m)); i >= 0 {
				t.Errorf("%s:%d holds %q", path, 1+bytes.Count(text[:i], []byte("\n")), m)
			}
		}
	})
	if seen < 50 {
		t.Fatalf("only %d text files seen; the walk is broken", seen)
	}
}

// source is one parsed Go file, its path relative to the module root.
type source struct {
	path string
	set  *token.FileSet
	file *ast.File
}

func (f source) isTest() bool         { return strings.HasSuffix(f.path, "_test.go") }
func (f source) at(n ast.Node) string { return f.set.Position(n.Pos()).String() }
func (f source) imports() (all []string) {
	for _, i := range f.file.Imports {
		path, err := strconv.Unquote(i.Path.Value)
		if err == nil {
			all = append(all, path)
		}
	}
	return all
}

// sources parses every Go file of the module.
func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	eachFile(t, func(path string, text []byte) {
		if !strings.HasSuffix(path, ".go") {
			return
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, text, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, source{path, set, file})
	})
	if len(all) < 40 {
		t.Fatalf("only %d Go files seen; the walk is broken", len(all))
	}
	return all
}

// eachFile hands over every file of the house, with its path relative to the module root.
func eachFile(t *testing.T, do func(path string, text []byte)) {
	t.Helper()
	root := os.DirFS(moduleRoot(t))
	err := fs.WalkDir(root, ".", func(path string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if e.IsDir() && (path == ".git" || path == "hullfile-demo") {
			return fs.SkipDir
		}
		if !e.Type().IsRegular() || path == "hullfile" {
			return nil
		}
		text, err := fs.ReadFile(root, path)
		if err == nil {
			do(path, text)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// moduleRoot is the folder of go.mod.
func moduleRoot(t testing.TB) string {
	t.Helper()
	dir, err := filepath.Abs(".")
	if err != nil {
		t.Fatal(err)
	}
	for ; ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if dir == filepath.Dir(dir) {
			t.Fatal("no go.mod above the test")
		}
	}
}
