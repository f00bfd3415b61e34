package site

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// What is refused never reaches the disk.
func TestEnclosedPathsStayInside(t *testing.T) {
	form := func(records, papers string) string {
		return `{"form":1,"hull":"H1","records":[` + records + `],"papers":[` + papers + `],"neighbours":[]}`
	}
	rows := []struct{ where, text, says string }{
		{"upwards", form(`"../yard.toml"`, ``), "would not lie"},
		{"from the root of the disk", form(`"/etc/yard.toml"`, ``), "would not lie"},
		{"a paper upwards", form(``, `{"at":"a/../../b","in":"documents/b"}`), "would not lie"},
		{"a paper from elsewhere", form(``, `{"at":"documents/b","in":"../b"}`), "would not lie"},
		{"another form", `{"form":9,"hull":"H1","records":[],"papers":[],"neighbours":[]}`, "form 9"},
		{"a hull that is a path", `{"form":1,"hull":"../H1","records":[],"papers":[],"neighbours":[]}`, "names no hull"},
		{"a key that is none", `{"form":1,"hull":"H1","record":[]}`, "not as this program writes it"},
		{"half of it", `{"form":1,"hull":"H1","rec`, "not as this program writes it"},
	}
	for _, row := range rows {
		_, err := ReadEnclosed(fstest.MapFS{rebuildName: {Data: []byte(row.text)}})
		if err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s: %v, want %q", row.where, err, row.says)
		}
	}
	if _, err := ReadEnclosed(fstest.MapFS{}); err == nil || !strings.Contains(err.Error(), "is not in the file") {
		t.Errorf("without %s: %v", rebuildName, err)
	}
}

func TestUnpackPutsEverythingWhereItLay(t *testing.T) {
	from := fstest.MapFS{
		rebuildName:                  {Data: []byte(`{"form":1,"hull":"H1","records":["yard.toml","hulls/H1/hull.toml"],"papers":[{"at":"hulls/H1/documents/a b.pdf","in":"documents/a-b.pdf"},{"at":"hulls/H1/documents/stray.txt"}],"neighbours":[]}`)},
		"records/yard.toml":          {Data: []byte("name")},
		"records/hulls/H1/hull.toml": {Data: []byte("title")},
		"documents/a-b.pdf":          {Data: []byte("%PDF-")},
	}
	e, err := ReadEnclosed(from)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	if err := e.Unpack(from, root); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"yard.toml": "name", "hulls/H1/hull.toml": "title", "hulls/H1/documents/a b.pdf": "%PDF-", "hulls/H1/documents/stray.txt": ""} {
		got, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
		if err != nil || string(got) != want {
			t.Errorf("%s: %q, %v; want %q", name, got, err, want)
		}
	}
	delete(from, "documents/a-b.pdf")
	again, err := os.OpenRoot(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if err := e.Unpack(from, again); err == nil || !strings.Contains(err.Error(), "documents/a-b.pdf is not in the file") {
		t.Errorf("a paper that is not there: %v", err)
	}
}

func FuzzEnclosed(f *testing.F) {
	f.Add([]byte(`{"form":1,"hull":"H1","records":["yard.toml"],"papers":[{"at":"documents/a","in":"documents/a"}],"neighbours":[{"number":"H2","hours":[[1,2]]}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		e, err := decodeEnclosed(text)
		if err != nil {
			return
		}
		for _, name := range e.Records {
			if !filepath.IsLocal(filepath.FromSlash(name)) || bytes.ContainsRune([]byte(name), 0) {
				t.Errorf("record %q is taken", name)
			}
		}
	})
}
