package seal

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

func TestTenThousandDocuments(t *testing.T) {
	f := newFile(t, "HL74-012")
	texts := map[string]string{}
	for _, name := range []string{"weight.html", "structure.html", "documents/certificate.pdf", "records/yard.toml", "results.json"} {
		texts[name] = f.read(name)
	}
	for i := range 10_000 {
		name := fmt.Sprintf("documents/paper-%05d.txt", i)
		texts[name] = name
		f.write(name, name)
	}
	f.list(ContentsName, texts)
	texts[ContentsName] = f.read(ContentsName)
	texts["index.html"] = "<p>root " + digest(texts[ContentsName])
	f.write("index.html", texts["index.html"])
	f.list(SumsName, texts)
	if r := f.verify(Given{}); r.Standing() != finding.NotShown || r.Files.Listed != 10_007 {
		t.Errorf("whole: %s, %d files, %+v", r.Standing(), r.Files.Listed, r.Checks)
	}
	for i := range 10_000 {
		if i%2 == 0 {
			f.remove(fmt.Sprintf("documents/paper-%05d.txt", i))
		} else {
			f.write(fmt.Sprintf("documents/paper-%05d.txt", i), "altered")
		}
	}
	if r := f.verify(Given{}); len(r.Files.Troubles) != 10_000 {
		t.Errorf("%d troubles, want every one of 10000", len(r.Files.Troubles))
	}
}

// A document of two gigabytes is read as it comes: what is allocated does not grow with it.
func TestLongDocumentIsStreamed(t *testing.T) {
	if testing.Short() {
		t.Skip("takes some seconds")
	}
	f := newFile(t, "HL74-012")
	const long = 2 << 30
	f.write("documents/film.mov", "")
	if err := os.Truncate(f.at("documents/film.mov"), long); err != nil {
		t.Skip("no sparse file:", err)
	}
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	r := f.verify(Given{})
	runtime.ReadMemStats(&after)
	if got := after.TotalAlloc - before.TotalAlloc; got > 8<<20 {
		t.Errorf("%d MB allocated for one document of 2 GB", got>>20)
	}
	if r.Files.Bytes < long || len(r.Files.Troubles) != 1 || r.Files.Troubles[0].Path != "documents/film.mov" {
		t.Errorf("%d bytes read, troubles %+v", r.Files.Bytes, r.Files.Troubles)
	}
}

// zipOf packs entries in the order in which they are given: name and text, one after the other.
func zipOf(t testing.TB, entries ...string) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for i := 0; i < len(entries); i += 2 {
		w, err := z.CreateHeader(&zip.FileHeader{Name: entries[i], Method: zip.Deflate})
		if err == nil {
			_, err = w.Write([]byte(entries[i+1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestZips(t *testing.T) {
	f := newFile(t, "HL74-012")
	var whole, bare []string
	err := fs.WalkDir(f.root.FS(), ".", func(name string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			whole, bare = append(whole, "HL74-012/"+name, f.read(name)), append(bare, name, f.read(name))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, entries := range [][]string{whole, bare} {
		text := zipOf(t, entries...)
		from, err := OpenZip(bytes.NewReader(text), int64(len(text)))
		if err != nil {
			t.Fatal(err)
		}
		r, err := Verify(context.Background(), from, Given{Root: digest(f.read(ContentsName))})
		if err != nil || len(r.Files.Troubles) != 0 || r.Files.Listed != 7 {
			t.Errorf("whole zip: %v, %+v", err, r)
		}
	}
	link := func(name string) []byte {
		var out bytes.Buffer
		z := zip.NewWriter(&out)
		h := &zip.FileHeader{Name: name}
		h.SetMode(fs.ModeSymlink | 0o777)
		w, err := z.CreateHeader(h)
		if err == nil {
			_, err = w.Write([]byte("/etc/passwd"))
		}
		if err := errors.Join(err, z.Close()); err != nil {
			t.Fatal(err)
		}
		return out.Bytes()
	}
	bad := map[string][]byte{
		"climbs out":          zipOf(t, "../evil.txt", "x"),
		"climbs out below":    zipOf(t, "HL74-012/../../evil.txt", "x"),
		"root of the disk":    zipOf(t, "/etc/evil.txt", "x"),
		"backslash":           zipOf(t, "HL74-012\\..\\evil.txt", "x"),
		"newline":             zipOf(t, "a\nb.txt", "x"),
		"two of one name":     zipOf(t, "a.txt", "x", "a.txt", "y"),
		"two but for case":    zipOf(t, "a.txt", "x", "A.TXT", "y"),
		"a link":              link("HL74-012/way-out"),
		"no zip":              []byte("%PDF-"),
		"broken off":          zipOf(t, whole...)[:200],
		"says nothing at all": nil,
	}
	for where, text := range bad {
		if _, err := OpenZip(bytes.NewReader(text), int64(len(text))); err == nil || !strings.Contains(err.Error(), "refused") && !strings.Contains(err.Error(), "no zip") {
			t.Errorf("%s: %v", where, err)
		}
	}
}

func BenchmarkVerify(b *testing.B) {
	f := newFile(b, "HL74-012")
	texts := map[string]string{}
	for i := range 300 {
		name := fmt.Sprintf("page-%03d.html", i)
		texts[name] = strings.Repeat(name, 2500)
		f.write(name, texts[name])
	}
	f.list(SumsName, texts)
	bytes := int64(0)
	for b.Loop() {
		r, err := Verify(context.Background(), f.root.FS(), Given{})
		if err != nil {
			b.Fatal(err)
		}
		bytes = r.Files.Bytes
	}
	b.SetBytes(bytes)
}
