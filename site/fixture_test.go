package site

import (
	"context"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"sync"
	"testing"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// demoJob lays out the demo yard in a folder of the test and gives the job that writes all of its hulls.
func demoJob(t testing.TB) Job {
	t.Helper()
	demo, err := fs.Sub(content.Files, "demo")
	if err != nil {
		t.Fatal(err)
	}
	return yardJob(t, demo)
}

// yardJob does the same with any yard.
func yardJob(t testing.TB, files fs.FS) Job {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, files); err != nil {
		t.Fatal(err)
	}
	return jobIn(t, dir, filepath.Join(t.TempDir(), "out"))
}

// jobIn reads the yard that lies in a folder and gives the job that writes all of its hulls.
func jobIn(t testing.TB, dir, out string) Job {
	t.Helper()
	root := rootIn(t, dir)
	shipped, err := reference()
	if err != nil {
		t.Fatal(err)
	}
	yard, err := record.Read(root, record.Known{Alloys: shipped.Alloys.Names()})
	if err != nil {
		t.Fatal(err)
	}
	return jobOf(t, root, yard, out)
}

// jobOf gives the job that writes all hulls of a yard in memory.
func jobOf(t testing.TB, root *os.Root, yard *record.Yard, out string) Job {
	t.Helper()
	ref, err := referenceOf(yard)
	if err != nil {
		t.Fatal(err)
	}
	neighbours := engine.NewNeighbours(yard)
	return Job{
		Yard: yard, Hulls: yard.Hulls, Root: root, Out: out, Version: "test", Handbook: ref.Handbook, Words: ref.Words, Neighbours: neighbours.Digest, Near: neighbours.Near,
		Assess: func(h *record.Hull) *engine.Dossier { return engine.Assess(yard, h, ref, root) },
	}
}

func rootIn(t testing.TB, dir string) *os.Root {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

// referenceOf is what the hulls of a yard are reckoned by.
func referenceOf(yard *record.Yard) (*engine.Reference, error) {
	ref, err := reference()
	if len(yard.Sheets) > 0 {
		var own []method.Source
		for _, s := range yard.Sheets {
			own = append(own, method.Source{Name: s.Name, Path: s.Path, Text: s.Text})
		}
		ref, err = shipped().Reference(own)
	}
	if err != nil {
		return nil, err
	}
	if ref, err = ref.With(yard.Lists); err != nil {
		return nil, err
	}
	if ref, err = ref.WithLimits(content.Files, yard.Limits); err != nil {
		return nil, err
	}
	return ref.WithChapters(yard)
}

// piecesIn gives the job that reads the yard in a folder hull by hull and writes all of them.
func piecesIn(t testing.TB, dir, out string) Job {
	t.Helper()
	root := rootIn(t, dir)
	shipped, err := reference()
	if err != nil {
		t.Fatal(err)
	}
	return Job{Root: root, Out: out, Version: "test", Pieces: &Pieces{
		Known:  func() (record.Known, error) { return record.Known{Alloys: shipped.Alloys.Names()}, nil },
		Choose: func(all []string) ([]string, error) { return all, nil },
		Ready: func(y *record.Yard) (Reckoner, error) {
			ref, err := referenceOf(y)
			if err != nil {
				return Reckoner{}, err
			}
			return Reckoner{Handbook: ref.Handbook, Words: ref.Words, Assess: func(y *record.Yard, h *record.Hull) *engine.Dossier {
				return engine.Assess(y, h, ref, root)
			}}, nil
		},
	}}
}

// shipped is what comes with the program, and reference what all hulls of all tests are reckoned by.
var (
	shipped   = sync.OnceValue(func() *engine.Shipped { return engine.ReadShipped(content.Files) })
	reference = sync.OnceValues(func() (*engine.Reference, error) { return shipped().Reference(nil) })
)

// readable reports whether the records in a folder are without faults.
func readable(t testing.TB, dir string) bool {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	ref, err := reference()
	if err != nil {
		t.Fatal(err)
	}
	yard, err := record.Read(root, record.Known{Alloys: ref.Alloys.Names()})
	if err != nil {
		return false
	}
	_, err = referenceOf(yard) // sheets, lists and tables of limits are looked through when they are laid over the shipped ones
	return err == nil
}

// rendered writes the job and gives its output folder.
func rendered(t testing.TB, job Job) string {
	t.Helper()
	if _, err := Render(context.Background(), job); err != nil {
		t.Fatal(err)
	}
	return job.Out
}

// emptyJob is a yard with one hull of which nothing is known but its number.
func emptyJob(t testing.TB) Job {
	h := &record.Hull{Number: "E-1"}
	yard := &record.Yard{Hulls: []*record.Hull{h}}
	return Job{
		Yard: yard, Hulls: yard.Hulls, Out: filepath.Join(t.TempDir(), "out"),
		Assess: func(h *record.Hull) *engine.Dossier { return &engine.Dossier{Builder: &yard.Builder, Hull: h} },
	}
}

// hostile is a text that does harm wherever it is not escaped.
const hostile = `"'><xss y=z>&amp;<!-- ]]></script></title></svg></math></code> javascript:alert(1) \22 */ {{.}} {# ` + "\u202e"

// hostileFile is a record file whose own name does harm.
const hostileFile = `hulls/H-1/h"'><xss y=z>#?&ull.toml`

// hostileJob is a yard with one hull in which every text, on record and reckoned, is hostile.
func hostileJob(t testing.TB) Job {
	t.Helper()
	dir := t.TempDir()
	paper := `documents/p"'><xss y=z>#?&%41.pdf`
	for _, name := range []string{paper, hostileFile} { // a run sees that the records it read are still there
		if err := os.MkdirAll(filepath.Join(dir, filepath.Dir(name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(hostile), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	yard, hull := &record.Yard{}, &record.Hull{}
	fill(reflect.ValueOf(&yard.Builder).Elem(), 0)
	fill(reflect.ValueOf(hull).Elem(), 0)
	hull.Number, hull.Over = "H-1", []string{hostileFile}
	for i, page := range []string{"boat", "structure", "weight", "afloat", "trials", "documents"} {
		note := hull.Notes[0]
		note.ID, note.Page.V = string(rune('a'+i)), page
		note.Text.V = "# " + hostile + "\n\n[x](javascript:alert(1)) [y](panel " + "B) ![z](http://example.invalid/a.png) <xss y=z>\n\n" + hostile
		hull.Notes = append(hull.Notes, note)
	}
	yard.Hulls = []*record.Hull{hull}
	yard.Files = []record.File{{Path: hostileFile, Text: []byte(hostile + "\n" + hostile + "\r\n\x00\xff")}}
	d := &engine.Dossier{}
	fill(reflect.ValueOf(d).Elem(), 0)
	d.Builder, d.Hull = &yard.Builder, hull
	for i := range d.Documents.Documents {
		p := &d.Documents.Documents[i]
		p.Path, p.Out, p.SHA256 = paper, paper, ""
	}
	for i := range d.Requirements.Lists { // a reader names each list by its file, and an item knows its own list
		of := &d.Requirements.Lists[i]
		of.Record.Name += strconv.Itoa(i)
		for k := range of.Items {
			of.Items[k].List = of.Record
			d.Requirements.Open[k] = &of.Items[k]
		}
	}
	for i := range d.Logs.Logs {
		log := &d.Logs.Logs[i]
		log.Path, log.Out, log.SHA256 = paper, "logs/log-"+strconv.Itoa(i)+".csv", ""
	}
	return Job{
		Yard: yard, Hulls: yard.Hulls, Root: root, Out: filepath.Join(t.TempDir(), "out"), Version: hostile,
		Assess: func(*record.Hull) *engine.Dossier { return d },
	}
}

// fill puts something into every field that can be set, however deep: hostile text into texts, two entries into lists.
func fill(v reflect.Value, depth int) { (&filler{}).fill(v, depth) }

// filler counts the entries that it makes, because a reader lets no two of them have one key.
type filler struct{ entries int }

func (f *filler) fill(v reflect.Value, depth int) {
	if depth > 14 || !v.CanSet() {
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(textFor(v.Type()))
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int64:
		v.SetInt(1) // some are indices into lists of two
	case reflect.Float64:
		v.SetFloat(1.5)
	case reflect.Pointer:
		if v.Type() == reflect.TypeFor[*method.Working]() && depth > 7 {
			return // workings hang below workings without end; one that is cut off half-way is none
		}
		v.Set(reflect.New(v.Type().Elem()))
		f.fill(v.Elem(), depth+1)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			f.fill(v.Index(i), depth+1)
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		key, val := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		f.fill(key, depth+1)
		f.fill(val, depth+1)
		v.SetMapIndex(key, val)
	case reflect.Array:
		for i := range v.Len() {
			f.fill(v.Index(i), depth+1)
		}
	case reflect.Struct:
		f.fillStruct(v, depth)
	}
}

func (f *filler) fillStruct(v reflect.Value, depth int) {
	switch v.Type() {
	case reflect.TypeFor[finding.Place]():
		v.Set(reflect.ValueOf(finding.Place{File: hostileFile, Line: 2, Col: 1}))
		return
	case reflect.TypeFor[method.Node]():
		v.Set(reflect.ValueOf(method.Node{Op: method.OpSymbol, Symbol: hostile, Word: hostile, Raw: hostile}))
		return
	}
	for i := range v.NumField() {
		f.fill(v.Field(i), depth+1)
	}
	if e, ok := v.Addr().Interface().(*record.Entry); ok {
		f.entries++
		e.ID += strconv.Itoa(f.entries)
	}
}

// textFor gives a hostile text, or a word that the type really takes where its words are ours.
func textFor(typ reflect.Type) string {
	switch typ {
	case reflect.TypeFor[finding.Kind]():
		return string(finding.Gap)
	case reflect.TypeFor[finding.Standing]():
		return string(finding.Short)
	case reflect.TypeFor[method.State]():
		return string(method.Outside)
	}
	return hostile
}
