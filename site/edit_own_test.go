package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"hullfile/content"
)

// sheet adds, changes or takes away a method sheet of the yard's own: in the place of a shipped one, or another second opinion.
func (e *editor) sheet() string {
	from := e.pick([]string{"open-literature-planing", "light-craft-class-2011", "renewal", "weld-metal", "fr-order-1987-227", "builders-plate", "brackets"})
	to := from
	if e.rand.IntN(3) == 0 {
		to = "own-practice"
	}
	return e.own("methods/"+from+".toml", "methods/"+to+".toml")
}

// list does the same with a list of requirements. One of them brings words for evidence, and another uses them.
func (e *editor) list() string {
	if e.rand.IntN(2) == 0 {
		return e.own("requirements/eu-manual.toml", "requirements/"+e.pick([]string{"eu-manual", "own-manual"})+".toml")
	}
	name, text := "own-plan", "[evidence.launched]\nsays = \"launched\"\nhow = \"record\"\nkeys = [\"boat.length_hull_m\"]\n"
	if e.rand.IntN(2) == 0 {
		name, text = "own-words", ""
	}
	text = "title = \"A plan\"\nwork = \"own\"\nkind = \"yard\"\nbasis = \"yard\"\n[item.\"1\"]\nheading = \"Launched\"\nasks = \"It floats.\"\nneeded = [\"launched\"]\nblocks = \"plate\"\n" + text
	return e.swap(filepath.Join(e.yard, "requirements", name+".toml"), []byte(text))
}

// own copies a sheet or list that is shipped to the yard, and changes it a little or not.
func (e *editor) own(from, to string) string {
	text, err := fs.ReadFile(content.Files, from)
	if err != nil {
		e.t.Fatal(err)
	}
	if e.rand.IntN(2) == 0 {
		text = []byte(strings.Replace(string(text), `name = "`, `name = "own `, 1+e.rand.IntN(3)))
	}
	return e.swap(filepath.Join(e.yard, filepath.FromSlash(to)), text)
}

// swap writes a file, or takes it away where it is there, unless the yard could then no longer be read.
func (e *editor) swap(name string, text []byte) string {
	was, err := os.ReadFile(name)
	there := err == nil
	if there && e.rand.IntN(2) == 0 {
		os.Remove(name)
		if !readable(e.t, e.yard) {
			e.put(name, was)
			return "a removal that was taken back of " + name
		}
		return "removal of " + name
	}
	e.put(name, text)
	switch {
	case readable(e.t, e.yard):
		return "a text of " + name
	case there:
		e.put(name, was)
	default:
		os.Remove(name)
	}
	return "a text that was taken back of " + name
}

// asks has a hull name one of those sheets and lists, or no longer.
func (e *editor) asks() string {
	hulls, err := filepath.Glob(filepath.Join(e.yard, "hulls", "*", "hull.toml"))
	if err != nil || len(hulls) == 0 {
		return "nothing"
	}
	name := e.pick(hulls)
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	asked := e.pick([]string{"\n[rules]\nalso = [\"own-practice\", \"renewal\"]\n", "\n[conformity]\nrequirements = [\"own-words\", \"eu-manual\"]\n", "\n[conformity]\nrequirements = [\"own-plan\"]\n", "\n[conformity]\nrequirements = [\"own-manual\"]\n"})
	if without, had := strings.CutSuffix(string(text), asked); had {
		return e.change(name, []byte(without))
	}
	return e.change(name, append(text, asked...))
}
