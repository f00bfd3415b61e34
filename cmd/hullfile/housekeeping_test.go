package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestDevelopersFileNamesEverything keeps DEVELOPERS.md true: each package and each module that is asked for directly.
func TestDevelopersFileNamesEverything(t *testing.T) {
	root := moduleRoot(t)
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, f := range sources(t) {
		dir := filepath.ToSlash(filepath.Dir(f.path))
		if named[dir] {
			continue
		}
		named[dir] = true
		if !bytes.Contains(text, []byte(dir)) && !bytes.Contains(text, []byte("`"+path.Base(dir)+"`")) {
			t.Errorf("DEVELOPERS.md does not name %s", dir)
		}
	}
	first := regexp.MustCompile("((?:cmd|engine|content|templates|site)[a-z/]*)(?:: | \\| )`([a-z_.]+)`").FindAllStringSubmatch(string(text), -1)
	if len(first) < 15 {
		t.Errorf("only %d files to open first are named", len(first))
	}
	for _, f := range first {
		if _, err := os.Stat(filepath.Join(root, filepath.FromSlash(f[1]), f[2])); err != nil {
			t.Errorf("DEVELOPERS.md sends the reader to a file that is not there: %v", err)
		}
	}
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	modules := 0
	for line := range strings.Lines(string(mod)) {
		fields := strings.Fields(line)
		if len(fields) != 2 || !strings.HasPrefix(fields[1], "v") {
			continue // a heading, or an indirect requirement, which has a comment behind it
		}
		modules++
		_, name, _ := strings.Cut(fields[0], "/") // without the host
		if !bytes.Contains(text, []byte(name)) {
			t.Errorf("DEVELOPERS.md does not say why there is %s", fields[0])
		}
	}
	if modules < 5 {
		t.Fatalf("only %d modules seen in go.mod", modules)
	}
}

// TestTradesSayWhatTheyAnswer: who opens the documentation of a trade reads its question, what goes in, what comes out and
// on which works it rests, before any name of the program.
func TestTradesSayWhatTheyAnswer(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(moduleRoot(t), "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	docs := map[string]string{}
	eachFile(t, func(name string, text []byte) {
		if path.Ext(name) != ".go" || strings.HasSuffix(name, "_test.go") {
			return
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, text, parser.PackageClauseOnly|parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		docs[path.Dir(filepath.ToSlash(name))] += file.Doc.Text()
	})
	trades := regexp.MustCompile(`(?m)^\| (engine/[a-z]+) \|`).FindAllStringSubmatch(string(text), -1)
	if len(trades) < 30 {
		t.Errorf("only %d trades are listed", len(trades))
	}
	for _, trade := range trades {
		for _, part := range []string{"Question: ", "In: ", "Out: ", "Source: "} {
			if !strings.Contains(docs[trade[1]], part) {
				t.Errorf("the documentation of %s has no %q", trade[1], strings.TrimSpace(part))
			}
		}
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
		if e.IsDir() && (path == ".git" || path == "hullfile-demo" || path == "skerry" || path == "files") {
			return fs.SkipDir
		}
		if !e.Type().IsRegular() || path == "hullfile" || path == "hullfile.exe" {
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
