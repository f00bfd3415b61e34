package site

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// value changes one digit of a record.
func (e *editor) value() string {
	name := e.pick(e.records(".toml", ".csv"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	var digits []int
	for i, c := range text {
		if c >= '1' && c <= '8' {
			digits = append(digits, i)
		}
	}
	if len(digits) == 0 {
		return "nothing"
	}
	text[digits[e.rand.IntN(len(digits))]]++
	return e.change(name, text)
}

// line takes one line away.
func (e *editor) line() string {
	name := e.pick(e.records(".toml", ".csv"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	lines := strings.SplitAfter(string(text), "\n")
	i := e.rand.IntN(len(lines))
	return e.change(name, []byte(strings.Join(slices.Delete(lines, i, i+1), "")))
}

// comment moves every line of a record down by one.
func (e *editor) comment() string {
	name := e.pick(e.records(".toml"))
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	return e.change(name, append([]byte("# moved\n"), text...))
}

// paper changes, adds or removes a document, sometimes without a change of its size.
func (e *editor) paper() string {
	papers := e.records(".txt", ".csv", ".pdf", ".jpg")
	papers = slices.DeleteFunc(papers, func(p string) bool {
		return !slices.Contains(paperFolders, filepath.Base(filepath.Dir(p))) // documents.csv is a record
	})
	switch n := e.rand.IntN(4); {
	case n == 0:
		name := filepath.Join(filepath.Dir(e.pick(e.records(".toml"))), "documents", "stray.txt")
		e.put(name, []byte("stray"))
		if !readable(e.t, e.yard) {
			os.Remove(name)
			os.Remove(filepath.Dir(name)) // stays where something else is in it
		}
		return "a stray " + name
	case len(papers) == 0:
		return "nothing"
	case n == 1:
		name := e.pick(papers)
		os.Remove(name)
		return "removal of " + name
	default:
		name := e.pick(papers)
		text, err := os.ReadFile(name)
		if err != nil || len(text) == 0 {
			return "nothing"
		}
		text[e.rand.IntN(len(text))] ^= 1
		e.put(name, text)
		return "a bit of " + name
	}
}

// copyHull builds another hull of the same records.
func (e *editor) copyHull() string {
	hulls, err := os.ReadDir(filepath.Join(e.yard, "hulls"))
	if err != nil || len(hulls) > 5 {
		return "nothing"
	}
	from := hulls[e.rand.IntN(len(hulls))].Name()
	number := fmt.Sprintf("HL74-%03d", 100+e.rand.IntN(3))
	to := filepath.Join(e.yard, "hulls", number)
	if _, err := os.Stat(to); err == nil {
		return "nothing"
	}
	if err := os.CopyFS(to, os.DirFS(filepath.Join(e.yard, "hulls", from))); err != nil {
		e.t.Fatal(err)
	}
	for _, name := range e.records(".toml") {
		if strings.HasPrefix(name, to) {
			text, _ := os.ReadFile(name)
			e.put(name, []byte(strings.ReplaceAll(string(text), from, number)))
		}
	}
	if !readable(e.t, e.yard) {
		os.RemoveAll(to)
		return "a copy that was taken back"
	}
	return "a copy of " + from + " as " + number
}

func (e *editor) removeHull() string {
	hulls, err := os.ReadDir(filepath.Join(e.yard, "hulls"))
	if err != nil || len(hulls) < 3 {
		return "nothing"
	}
	name := hulls[e.rand.IntN(len(hulls))].Name()
	os.RemoveAll(filepath.Join(e.yard, "hulls", name))
	return "removal of " + name
}

// metal brings in, changes or takes away a lot in a file of its own, sometimes of an unlikely thickness, and sometimes of a cast
// that a hull draws on already.
func (e *editor) metal() string {
	name := filepath.Join(e.yard, "stock", fmt.Sprintf("later-%d.toml", e.rand.IntN(3)))
	if _, err := os.Stat(name); err == nil && e.rand.IntN(3) == 0 {
		os.Remove(name)
		return "removal of " + name
	}
	text := fmt.Sprintf("[lot.Z%s]\nkind = \"plate\"\nalloy = \"5083-H116\"\nthickness_mm = %s\n", filepath.Base(name)[6:7], e.pick([]string{"5.0", "6.0", "40"}))
	if e.rand.IntN(2) == 0 {
		text += fmt.Sprintf("cast = %q\n", castOf(e.t, e.yard))
	}
	e.put(name, []byte(text))
	if !readable(e.t, e.yard) {
		os.Remove(name)
		return "metal that was taken back"
	}
	return "metal in " + name
}
