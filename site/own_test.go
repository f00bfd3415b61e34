package site

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/finding"
)

// written writes the yard over what was there and gives the hulls that were written; the others must keep their bytes and their
// times, and all must be as they come out in an empty folder.
func (e *editor) written() []string {
	e.t.Helper()
	before := timesOf(e.t, e.out)
	report, err := Render(context.Background(), e.job(e.out))
	if err != nil {
		e.t.Fatal(err)
	}
	var all []string
	for _, h := range report.Hulls {
		if !h.Kept {
			all = append(all, h.Number)
		}
	}
	for name, at := range timesOf(e.t, e.out) {
		hull, _, inside := strings.Cut(name, "/")
		if was, known := before[name]; known && inside && hull != "assets" && hull != registerDir && !slices.Contains(all, hull) && at != was {
			e.t.Errorf("%s was written again, and only %v was to be", name, all)
		}
	}
	fresh := filepath.Join(e.t.TempDir(), "fresh")
	if _, err := Render(context.Background(), jobIn(e.t, e.yard, fresh)); err != nil {
		e.t.Fatal(err)
	}
	same(e.t, "over what was there, and fresh", tree(e.t, fresh), tree(e.t, e.out))
	os.RemoveAll(fresh)
	return all
}

// expect runs after something was done and holds which hulls are written for it.
func (e *editor) expect(what string, want ...string) {
	e.t.Helper()
	if got := e.written(); !slices.Equal(got, want) {
		e.t.Errorf("%s: %v are written, want %v", what, got, want)
	}
}

// add puts text to the end of the record of a hull.
func (e *editor) add(hull, text string) {
	e.t.Helper()
	name := filepath.Join(e.yard, "hulls", hull, "hull.toml")
	was, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(name, append(was, text...))
}

// encloses reports whether the file of a hull encloses a record.
func (e *editor) encloses(hull, record string) bool {
	_, err := os.Stat(filepath.Join(e.out, hull, "records", filepath.FromSlash(record)))
	return err == nil
}

// rebuilds makes the file of a hull again from what is in it, and holds it against it.
func (e *editor) rebuilds(hull string) {
	e.t.Helper()
	dir := e.t.TempDir()
	defer os.RemoveAll(dir)
	file, yard := os.DirFS(filepath.Join(e.out, hull)), filepath.Join(dir, "yard")
	in, err := ReadEnclosed(file)
	if err = errors.Join(err, os.Mkdir(yard, 0o755)); err != nil {
		e.t.Fatal(err)
	}
	root := rootIn(e.t, yard)
	if err := in.Unpack(file, root); err != nil {
		e.t.Fatal(err)
	}
	job := jobIn(e.t, yard, filepath.Join(dir, "again"))
	job.Yard.Elsewhere = in.Plates
	joined, err := engine.Rejoin(job.Yard, in.Near)
	if err != nil {
		e.t.Fatal(err)
	}
	hulls := job.Hulls
	job = jobOf(e.t, job.Root, joined, job.Out)
	job.Hulls = hulls
	if _, err := Render(context.Background(), job); err != nil {
		e.t.Fatal(err)
	}
	same(e.t, hull+" made again from what is in it", tree(e.t, filepath.Join(e.out, hull)), tree(e.t, filepath.Join(job.Out, hull)))
}

func shippedText(t *testing.T, name string) string {
	t.Helper()
	text, err := fs.ReadFile(content.Files, name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// threeBoats is a yard of three boats of which little is on record: H1 a title, H2 open sides, H3 a panel.
func threeBoats(t *testing.T) *editor {
	dir := t.TempDir()
	e := &editor{t: t, yard: filepath.Join(dir, "yard"), out: filepath.Join(dir, "out")}
	e.put(filepath.Join(e.yard, "yard.toml"), []byte("name = \"Three boats\"\n"))
	for hull, text := range map[string]string{"H1": "", "H2": "\n[lines]\ndecked = \"open\"\n", "H3": "\n[panel.B1]\nzone = \"bottom\"\nthickness_mm = 6\nalloy = \"5083-H116\"\nedges = \"welded\"\nlong_side_mm = 900\nshort_side_mm = 300\n"} {
		e.put(filepath.Join(e.yard, "hulls", hull, "hull.toml"), []byte("title = \"boat\"\n"+text))
	}
	return e
}

// A method sheet of the yard's own is a matter of the hulls that ask for it: by their record, whether it is there yet or not, or
// because a trade asks for the shipped one in whose place it stands.
func TestAChangedSheetWritesWhatUsedIt(t *testing.T) {
	e := threeBoats(t)
	const own, open, worn = "methods/own-practice.toml", "methods/fr-order-1987-227.toml", "methods/renewal.toml"
	text := shippedText(t, "methods/open-literature-planing.toml")
	put := func(name, text string) { e.put(filepath.Join(e.yard, filepath.FromSlash(name)), []byte(text)) }
	remove := func(name string) { os.Remove(filepath.Join(e.yard, filepath.FromSlash(name))) }
	e.expect("at first", "H1", "H2", "H3")
	put(own, text)
	e.expect("a sheet for which nobody asks")
	e.add("H1", "\n[rules]\nalso = [\"own-practice\"]\n")
	e.expect("a hull that asks for it", "H1")
	put(own, text+"\n# another remark\n")
	e.expect("a change of it", "H1")
	if !e.encloses("H1", own) || e.encloses("H3", own) || e.encloses("H2", own) {
		t.Error("the sheet is enclosed where it is not asked for, or not where it is")
	}
	e.rebuilds("H1")
	remove(own)
	e.expect("its removal", "H1")
	put(own, text)
	e.expect("its return", "H1")
	e.expect("nothing")
	put(open, shippedText(t, open))
	e.expect("a sheet in the place of that for open boats", "H2")
	put(worn, shippedText(t, worn)+"\n# own\n")
	e.expect("one in the place of that for worn plates", "H3")
	e.rebuilds("H2")
	remove(open)
	e.expect("the shipped one again", "H2")
	if !e.encloses("H3", worn) || e.encloses("H1", worn) || e.encloses("H2", open) {
		t.Error("a sheet in the place of a shipped one is enclosed where it was not used, or not where it was")
	}
	put(own, text+"\nbroken")
	_, err := Render(context.Background(), e.job(e.out))
	var faults finding.Faults
	if !errors.As(err, &faults) {
		t.Errorf("a sheet with faults gives %v", err)
	}
}

// A paper in the yard's own folder of documents, such as the scan of a certificate that yard.toml names by number, is in no file.
func TestAPaperOfTheYardWritesNothing(t *testing.T) {
	e := threeBoats(t)
	e.expect("at first", "H1", "H2", "H3")
	e.put(filepath.Join(e.yard, "documents", "calibration.pdf"), []byte("%PDF-"))
	e.expect("a paper of the yard")
	e.put(filepath.Join(e.yard, "hulls", "H2", "documents", "calibration.pdf"), []byte("%PDF-"))
	e.expect("a paper of a hull", "H2")
}

// A list of requirements of the yard's own is a matter of the hulls that must answer it, and of those that need a word of it.
func TestAChangedListWritesWhatMustAnswerIt(t *testing.T) {
	e := threeBoats(t)
	const plan, words = "requirements/own-plan.toml", "requirements/own-words.toml"
	put := func(name, text string) { e.put(filepath.Join(e.yard, filepath.FromSlash(name)), []byte(text)) }
	list := func(title string) string {
		return "title = \"" + title + "\"\nwork = \"own\"\nkind = \"yard\"\nbasis = \"yard\"\n[item.\"1\"]\nheading = \"Launched\"\nasks = \"It floats.\"\nneeded = [\"launched\"]\nblocks = \"plate\"\n"
	}
	word := "[evidence.launched]\nsays = \"launched\"\nhow = \"test\"\nkeys = [\"boat.length_hull_m\"]\n"
	e.expect("at first", "H1", "H2", "H3")
	put(words, list("Words")+word)
	put(plan, list("Plan"))
	e.expect("lists that nobody must answer")
	e.add("H1", "\n[conformity]\nrequirements = [\"own-plan\"]\n")
	e.expect("a hull that must answer one", "H1")
	put(plan, list("Another plan"))
	e.expect("a change of it", "H1")
	put(words, list("Words")+strings.Replace(word, "length_hull_m", "beam_hull_m", 1))
	e.expect("a change of a word that it uses", "H1")
	e.rebuilds("H1")
	if !e.encloses("H1", plan) || !e.encloses("H1", words) || e.encloses("H2", plan) || e.encloses("H2", words) {
		t.Error("a list is enclosed where it is not to be answered, or not where it is")
	}
	put("requirements/eu-manual.toml", shippedText(t, "requirements/eu-manual.toml")+"\n# own\n")
	e.expect("a list in the place of one that is shipped, and nobody must answer")
	e.put(filepath.Join(e.yard, "yard.toml"), []byte("name = \"Three boats\"\nrequirements = [\"eu-manual\"]\n"))
	e.expect("the yard names it for all boats", "H1", "H2", "H3")
	put("requirements/eu-manual.toml", shippedText(t, "requirements/eu-manual.toml"))
	e.expect("a change of it", "H1", "H2", "H3")
}
