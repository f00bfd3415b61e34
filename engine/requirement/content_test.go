package requirement

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/record"
)

// load reads a content folder and lays lists of a yard's own over it.
func load(content fs.FS, own []record.List) (*Catalog, error) {
	s, err := Read(content)
	if err != nil {
		return nil, err
	}
	return s.With(own)
}

func shipped(t testing.TB) *Catalog {
	t.Helper()
	c, err := load(os.DirFS("../../content"), nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestListsOfContent holds that every list of the content is there and says what a reader must know.
func TestListsOfContent(t *testing.T) {
	c := shipped(t)
	want := map[string]int{ // items, counted in law.md's rows and in the lists that were read; own arithmetic
		"eu-2013-53": 30, "eu-technical-file": 10, "eu-declaration": 9, "eu-plate-and-number": 8, "eu-manual": 6,
		"uk-2017-737": 6, "us-33-cfr": 14, "au-builders-plate": 9, "weld-data-book": 18,
	}
	for name, items := range want {
		l, ok := c.Find(name)
		if !ok || len(l.Items) != items {
			t.Errorf("%s: found %v with %d items, expected %d", name, ok, len(l.Items), items)
			continue
		}
		if l.About.V == "" || l.Path != "requirements/"+name+".toml" {
			t.Errorf("%s says nothing of itself, or lies at %s", name, l.Path)
		}
	}
	got := c.Names()
	for _, name := range got {
		if _, named := want[name]; !named {
			t.Errorf("content/requirements/%s.toml is not named here: count its items", name)
		}
	}
	if len(got) != len(want) || !slices.IsSorted(got) {
		t.Errorf("lists %v", got)
	}
}

// notRules are words of the engine that look like rules and are none.
var notRules = []string{"iso-12217", "tp-14619", "iso-8859-1", "us-ascii", "windows-1252", "days-in-order", "as-welded", "date-local"}

// TestEveryRuleAnswersOrIsSaidNotTo: every rule of a check or finding of the engine stands behind a word for evidence, or in
// the list of those that answer no requirement. A new trade adds its rules to content/evidence; no code changes.
func TestEveryRuleAnswersOrIsSaidNotTo(t *testing.T) {
	c := shipped(t)
	sheets, err := filepath.Glob("../../content/methods/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	rules := rulesOfTheEngine(t)
	if len(rules) < 150 {
		t.Fatalf("only %d rules were found", len(rules))
	}
	limits, err := filepath.Glob("../../content/limits/*.toml") // whose keys are words of the trades too
	if err != nil || len(limits) == 0 {
		t.Fatalf("limits: %v", err)
	}
	var keys string
	for _, name := range limits {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		keys += string(text)
	}
	for rule, at := range rules {
		if strings.Contains(keys, rule) {
			continue
		}
		if slices.Contains(notRules, rule) || slices.Contains(sheets, "../../content/methods/"+rule+".toml") {
			continue
		}
		if !c.Answers(rule) {
			t.Errorf("%s: the rule %s stands behind no word of content/evidence, nor among those that answer nothing", at, rule)
		}
	}
	if c.Answers("no-such-rule") {
		t.Error("a rule that nobody named answers")
	}
}

var ruleForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)+$`)

// rulesOfTheEngine gathers every text that has the form of a rule, with its file, from the packages that an assessment of
// a hull calls, however far down. A trade that nothing calls yet answers nothing.
func rulesOfTheEngine(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	seen := map[string]bool{"method": true, "record": true, "unit": true, "material": true, "proof": true}
	var walk func(dir string)
	walk = func(dir string) {
		names, err := filepath.Glob(filepath.Join("..", dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(file, func(n ast.Node) bool { return gather(n, name, out) })
			for _, imported := range file.Imports {
				if below, ours := strings.CutPrefix(strings.Trim(imported.Path.Value, `"`), "hullfile/engine/"); ours && !seen[below] {
					seen[below] = true
					walk(below)
				}
			}
		}
	}
	walk(".")
	return out
}

func gather(n ast.Node, name string, out map[string]string) bool {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.Field:
		return false
	case *ast.BasicLit:
		if text := strings.Trim(n.Value, "`\""); n.Kind == token.STRING && ruleForm.MatchString(text) {
			out[text] = name
		}
	}
	return true
}

// TestBlocksAreThoseOfTheRecord holds the order of what items block to the words that a record may use.
func TestBlocksAreThoseOfTheRecord(t *testing.T) {
	for _, d := range record.Reference() {
		for _, f := range d.Fields {
			if f.Key == "blocks" && !slices.Equal(f.Words, blocks) {
				t.Errorf("blocks are %v, the record allows %v", blocks, f.Words)
			}
		}
	}
	for _, b := range blocks {
		if Blocks(b) == "" || gravity(b) < 0 {
			t.Errorf("%s has no words", b)
		}
	}
}
