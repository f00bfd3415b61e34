package site

import (
	"os"
	"path/filepath"
	"slices"
	"time"
)

// clear takes away the files of hulls that the yard no longer has, where they are not as they were written or the state
// does not know them: they would stay, and be told, and here only hide the comparison.
func (e *editor) clear() {
	known := readState(e.out).books
	made, err := filepath.Glob(filepath.Join(e.out, "*", sumsName))
	if err != nil {
		e.t.Fatal(err)
	}
	for _, list := range made {
		dir := filepath.Dir(list)
		name := filepath.Base(dir)
		if _, err := os.Stat(filepath.Join(e.yard, "hulls", name)); err == nil {
			continue
		}
		if now, _, err := footprint(dir); err != nil || now != known[name].Tree {
			os.RemoveAll(dir)
		}
	}
}

// pages lists the files of the output.
func (e *editor) pages() []string {
	var out []string
	for name := range tree(e.t, e.out) {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// damage changes one file of the output as somebody with an editor would.
func (e *editor) damage() string {
	all := e.pages()
	if len(all) == 0 {
		return "nothing"
	}
	name := e.pick(all)
	if base := filepath.Base(name); base == sumsName || base == contentsName {
		return "nothing" // without its lists a folder is not ours, and is refused
	}
	full := filepath.Join(e.out, filepath.FromSlash(name))
	if e.rand.IntN(2) == 0 {
		os.Remove(full)
		return "removal of page " + name
	}
	text, err := os.ReadFile(full)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(full, append(text, 'x'))
	return "damage to page " + name
}

func (e *editor) addFile() string {
	dirs, err := filepath.Glob(filepath.Join(e.out, "*", contentsName))
	if err != nil || len(dirs) == 0 {
		return "nothing"
	}
	name := filepath.Join(filepath.Dir(e.pick(dirs)), "note.txt")
	e.put(name, []byte("note"))
	return "an added " + name
}

func (e *editor) dropState() string {
	name := filepath.Join(e.out, stateName)
	e.dropStrangers()
	if e.rand.IntN(2) == 0 {
		os.Remove(name)
		return "removal of the state"
	}
	if text, err := os.ReadFile(name); err == nil {
		e.put(name, text[:e.rand.IntN(len(text))])
	}
	return "half a state"
}

// garble changes a byte of what the output remembers, or takes a file of it away.
func (e *editor) garble() string {
	all, err := filepath.Glob(filepath.Join(e.out, keptName, "*"))
	if err != nil {
		e.t.Fatal(err)
	}
	if len(all) == 0 {
		return "nothing"
	}
	name := e.pick(append(all, filepath.Join(e.out, stateName)))
	text, err := os.ReadFile(name)
	if err != nil || len(text) == 0 {
		return "nothing"
	}
	e.dropStrangers()
	if e.rand.IntN(3) == 0 {
		os.Remove(name)
		return "removal of " + name
	}
	text[e.rand.IntN(len(text))] ^= 1 << e.rand.IntN(8)
	e.put(name, text)
	return "a bit of " + name
}

// dropStrangers takes away the books of hulls that have gone. Without its state a run cannot know that they are its own, and
// leaves them; here they would only hide the comparison.
func (e *editor) dropStrangers() {
	lists, err := filepath.Glob(filepath.Join(e.out, "*", contentsName))
	if err != nil {
		e.t.Fatal(err)
	}
	for _, list := range lists {
		book := filepath.Dir(list)
		if _, err := os.Stat(filepath.Join(e.yard, "hulls", filepath.Base(book))); err != nil {
			os.RemoveAll(book)
		}
	}
}

// touch changes times without changing contents.
func (e *editor) touch() string {
	for _, name := range e.records(".toml", ".csv", ".txt", ".pdf") {
		os.Chtimes(name, time.Time{}, time.Unix(int64(e.rand.IntN(1e9)), 0))
	}
	if all := e.pages(); len(all) > 0 {
		os.Chtimes(filepath.Join(e.out, filepath.FromSlash(e.pick(all))), time.Time{}, time.Unix(int64(e.rand.IntN(1e9)), 0))
	}
	return "new times"
}

func (e *editor) nothing() string { return "nothing" }
