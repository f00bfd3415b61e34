package seal

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"runtime"
	"strings"
	"testing"
)

func packed(t testing.TB, f *file, entries []Packed) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Pack(context.Background(), f.root.FS(), entries, &out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestPackForSurveyor(t *testing.T) {
	f := newFile(t, "HL74-012")
	f.sealed("builder", "B", "2026-04-20", newKey(t))
	entries, err := ForSurveyor(f.root.FS(), f.verify(Given{}))
	if err != nil {
		t.Fatal(err)
	}
	text := packed(t, f, entries)
	if !bytes.Equal(text, packed(t, f, entries)) {
		t.Error("packed twice, the same file gives two zips")
	}
	from, err := OpenZip(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	r, err := Verify(context.Background(), from, Given{})
	if err != nil || len(r.Files.Troubles) != 0 || len(r.Seals) != 1 || r.Seals[0].Standing != "not shown" {
		t.Errorf("what was packed: %v, %+v", err, r)
	}
	z, err := zip.NewReader(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	last := ""
	for _, e := range z.File {
		if e.Name <= last || !e.Modified.Equal(packDay) || e.Mode() != 0o644 {
			t.Errorf("%s after %s, %v, %v", e.Name, last, e.Modified, e.Mode())
		}
		last = e.Name
	}
	first, err := z.Open("READ-FIRST.txt")
	if err != nil {
		t.Fatal(err)
	}
	words, err := io.ReadAll(first)
	if err != nil || !strings.Contains(string(words), "HL74-012/index.html") || !strings.Contains(string(words), r.Root) {
		t.Errorf("%v, %s", err, words)
	}
}

func TestPackForOwner(t *testing.T) {
	f := newFile(t, "HL74-012")
	if _, err := ForOwner(f.root.FS(), f.verify(Given{})); !errors.Is(err, ErrNoOwner) {
		t.Errorf("without an owner's book: %v", err)
	}
	texts := map[string]string{"owner/index.html": "<p>yours", "owner/assets/book.css": "p{}", "welds.html": "private", "owners.html": "private", "results.json": f.read("results.json")}
	for name, text := range texts {
		f.write(name, text)
	}
	for _, name := range []string{"weight.html", "structure.html", "documents/certificate.pdf", "records/yard.toml"} {
		f.remove(name)
	}
	f.list(ContentsName, texts)
	texts[ContentsName] = f.read(ContentsName)
	texts["index.html"] = "<p>root " + digest(texts[ContentsName])
	f.write("index.html", texts["index.html"])
	f.list(SumsName, texts)
	r := f.verify(Given{})
	if len(r.Files.Troubles) > 0 {
		t.Fatal(r.Files.Troubles)
	}
	entries, err := ForOwner(f.root.FS(), r)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	z, err := zip.NewReader(bytes.NewReader(packed(t, f, entries)), int64(len(packed(t, f, entries))))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range z.File {
		names = append(names, e.Name)
	}
	if got := strings.Join(names, " "); got != "HL74-012-owner/SHA256SUMS HL74-012-owner/assets/book.css HL74-012-owner/index.html READ-FIRST.txt" {
		t.Errorf("the owner gets %s", got)
	}
}

func TestPackRefusesNames(t *testing.T) {
	f := newFile(t, "HL74-012")
	for _, names := range [][]string{{"../a"}, {"/a"}, {"a\\b"}, {"a\nb"}, {"a/./b"}, {"a", "A"}, {"a", "a"}, {""}} {
		var entries []Packed
		for _, n := range names {
			entries = append(entries, Packed{Name: n, Text: []byte("x")})
		}
		if err := Pack(context.Background(), f.root.FS(), entries, io.Discard); err == nil {
			t.Errorf("%q is packed", names)
		}
	}
	if err := Pack(context.Background(), f.root.FS(), []Packed{{Name: "a", From: "not-there"}}, io.Discard); err == nil {
		t.Error("a file that is not there is packed")
	}
}

// A long document is packed as it is read.
func TestLongDocumentIsPackedAsItIsRead(t *testing.T) {
	f := newFile(t, "HL74-012")
	f.write("documents/film.mov", "")
	if err := os.Truncate(f.at("documents/film.mov"), 96<<20); err != nil {
		t.Skip("no sparse file:", err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	if err := Pack(context.Background(), f.root.FS(), []Packed{{Name: "film.mov", From: "documents/film.mov"}, {Name: "again.pdf", From: "documents/film.mov"}}, io.Discard); err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	if got := after.TotalAlloc - before.TotalAlloc; got > 8<<20 {
		t.Errorf("%d MB allocated for two documents of 96 MB", got>>20)
	}
}
