package document

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

const pdf = "%PDF-1.7\nan invented certificate\n"

func put[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: 4})
}

// yard writes files into a new yard folder and opens it.
func yard(t testing.TB, files map[string]string) (*os.Root, string) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		full := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root, dir
}

func paper(key, file string) record.Document {
	return record.Document{
		Entry: record.Entry{ID: key, At: finding.Place{File: "hulls/H1/hull.toml", Line: 3}}, File: put(file), SHA256: put(hash(pdf)),
	}
}

func hull(docs ...record.Document) *record.Hull {
	h := &record.Hull{Number: "H1", Folder: "hulls/H1", Over: []string{"hulls/H1/hull.toml"}}
	h.Documents = docs
	return h
}

func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:])
}

func TestADocumentInOrder(t *testing.T) {
	root, _ := yard(t, map[string]string{"hulls/H1/documents/cert 117.pdf": pdf})
	d := paper("cert-117", "cert 117.pdf")
	d.SHA256 = put(strings.ToUpper(hash(pdf)))
	h := hull(d)
	h.Panels = []record.Panel{{Entry: record.Entry{ID: "B3"}, Document: put("cert-117")}}
	r := Assess(root, h)
	got := r.Documents[0]
	want := Document{
		Record: &h.Documents[0], Path: "hulls/H1/documents/cert 117.pdf", Out: "documents/cert-117.pdf",
		Present: true, Bytes: int64(len(pdf)), SHA256: hash(pdf), Matches: true, Type: "PDF", UsedBy: []string{"panel B3"},
	}
	if fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s: %s, %s", c.Rule, c.Standing, c.Says)
		}
	}
	if len(r.Checks) != 2 || len(r.Findings) != 0 || len(r.Strays) != 0 {
		t.Errorf("checks %v, findings %v, strays %v", r.Checks, r.Findings, r.Strays)
	}
}

func TestTheHashIsThatOfTheWholeFile(t *testing.T) {
	text := pdf + strings.Repeat("more than the first bytes\n", 10000)
	root, _ := yard(t, map[string]string{"hulls/H1/documents/a.pdf": text})
	d := Assess(root, hull(paper("a", "a.pdf"))).Documents[0]
	if d.SHA256 != hash(text) || d.Bytes != int64(len(text)) || d.Matches {
		t.Errorf("%+v", d)
	}
}

func TestFindings(t *testing.T) {
	files := map[string]string{
		"hulls/H1/documents/good.pdf":  pdf,
		"hulls/H1/documents/page.pdf":  "<!doctype html><script>alert(1)</script>",
		"hulls/H1/documents/empty.pdf": "",
	}
	day := func(d int) record.Val[record.Date] { return put(record.Date{Year: 2026, Month: time.May, Day: d}) }
	rows := []struct {
		where string
		doc   func(*record.Document)
		rule  string
		kind  finding.Kind
		says  string
	}{
		{"not there", func(d *record.Document) { d.File = put("lost.pdf") }, "document-present", finding.Gap, "it is not there"},
		{"empty", func(d *record.Document) { d.File, d.SHA256 = put("empty.pdf"), put(hash("")) }, "document-present", finding.Gap, "empty.pdf is empty"},
		{"altered", func(d *record.Document) { d.SHA256 = put(hash("other")) }, "document-unchanged", finding.Contradiction, "not the file that was put on record"},
		{"a page named as PDF", func(d *record.Document) { d.File = put("page.pdf") }, "document-kind", finding.Contradiction, "should be PDF by its name; by its first bytes it is text"},
		{"no hash", func(d *record.Document) { d.SHA256 = record.Val[string]{} }, "document-hash", finding.Doubt, "1 of 1 documents"},
		{"out of date at the trial", func(d *record.Document) { d.Until = day(9) }, "document-valid", finding.Shortfall, "valid until 9 May 2026, needed on 10 May 2026"},
		{"outside", func(d *record.Document) { d.File = put("../hull.toml") }, "document-present", finding.Contradiction, "leaves the documents folder"},
	}
	for _, r := range rows {
		root, _ := yard(t, files)
		d := paper("a", "good.pdf")
		r.doc(&d)
		h := hull(d)
		h.Trials = []record.Trial{{Entry: record.Entry{ID: "T1"}, Document: put("a"), Date: day(10)}}
		h.Issue.Date = day(20)
		res := Assess(root, h)
		all := append(res.Findings, finding.Findings(res.Checks)...)
		found := false
		for _, f := range all {
			if f.Rule == r.rule && f.Kind == r.kind {
				found = true
				if !strings.Contains(f.Says, r.says) || f.Settle == "" || len(f.Places) == 0 {
					t.Errorf("%s: %+v", r.where, f)
				}
			}
		}
		if !found {
			t.Errorf("%s: no %s %s in %v", r.where, r.kind, r.rule, all)
		}
	}
}

func TestValidOnTheLastDay(t *testing.T) {
	root, _ := yard(t, map[string]string{"hulls/H1/documents/good.pdf": pdf})
	d := paper("a", "good.pdf")
	d.Until = put(record.Date{Year: 2026, Month: time.May, Day: 10})
	h := hull(d)
	if c := last(Assess(root, h)); c.Standing != finding.NotShown {
		t.Errorf("no day: %s, %s", c.Standing, c.Says)
	}
	h.Issue.Date = d.Until
	if c := last(Assess(root, h)); c.Rule != "document-valid" || c.Standing != finding.Met {
		t.Errorf("last day: %s %s, %s", c.Rule, c.Standing, c.Says)
	}
}

// A paper used on two days must be valid on the later of them.
func TestValidOnTheLaterOfTwoDays(t *testing.T) {
	root, _ := yard(t, map[string]string{"hulls/H1/documents/good.pdf": pdf})
	on := func(d int) record.Val[record.Date] { return put(record.Date{Year: 2026, Month: time.May, Day: d}) }
	d := paper("a", "good.pdf")
	d.Until = on(10)
	for _, days := range [][2]int{{9, 11}, {11, 9}} {
		h := hull(d)
		h.Trials = []record.Trial{{Document: put("a"), Date: on(days[0])}}
		h.Weighings = []record.Weighing{{Document: put("a"), Date: on(days[1])}}
		if c := last(Assess(root, h)); c.Standing != finding.Short || c.Needed != "on 11 May 2026" {
			t.Errorf("used on %v: %s, %s", days, c.Standing, c.Says)
		}
	}
}

func last(r Result) finding.Check { return r.Checks[len(r.Checks)-1] }

func TestLinksAreRefused(t *testing.T) {
	root, dir := yard(t, map[string]string{"hulls/H1/documents/good.pdf": pdf, "secret.pdf": pdf, "hulls/H2/documents/b.pdf": pdf})
	outside := filepath.Join(t.TempDir(), "outside.pdf")
	if err := os.WriteFile(outside, []byte(pdf), 0o644); err != nil {
		t.Fatal(err)
	}
	docs := filepath.Join(dir, "hulls", "H1", "documents")
	for name, to := range map[string]string{"inside.pdf": filepath.Join("..", "..", "..", "secret.pdf"), "outside.pdf": outside, "folder": dir} {
		if err := os.Symlink(to, filepath.Join(docs, name)); err != nil {
			t.Skip("no links on this system")
		}
	}
	for _, name := range []string{"inside.pdf", "outside.pdf", "folder/secret.pdf"} {
		d := Assess(root, hull(paper("a", name))).Documents[0]
		if d.Present || d.Path != "" || d.SHA256 != "" || !strings.Contains(d.Why, "link") {
			t.Errorf("%s: %+v", name, d)
		}
	}
	d := Assess(root, hull(paper("a", "good.pdf"))).Documents[0]
	if !d.Present {
		t.Errorf("a plain file beside links: %+v", d)
	}
}

func TestAFolderIsNoDocument(t *testing.T) {
	root, _ := yard(t, map[string]string{"hulls/H1/documents/folder/a.pdf": pdf})
	r := Assess(root, hull(paper("a", "folder"), paper("b", "folder/a.pdf")))
	if d := r.Documents[0]; d.Present || d.Path != "" || d.Why != "it is not a file" {
		t.Errorf("%+v", d)
	}
	if d := r.Documents[1]; !d.Present || d.Out != "documents/folder-a.pdf" {
		t.Errorf("%+v", d)
	}
}

func TestRefuse(t *testing.T) {
	bad := []string{
		"", "..", "../a.pdf", "a/../../b.pdf", "/etc/passwd", `a\b.pdf`, "C:a.pdf", "a//b.pdf", "./a.pdf", "a/", "a\x00.pdf", "a\n.pdf", "a\u202efdp.exe",
		"a\u200b.pdf", "a\u2028.pdf", "con", "CON.pdf", "nul.txt", "com1.pdf", "LPT9", "com¹.txt", "aux .pdf", "a.pdf.", "a.pdf ", " a.pdf", "a?.pdf", "a\xff.pdf",
		strings.Repeat("a", 300),
	}
	for _, name := range bad {
		if refuse(name) == "" {
			t.Errorf("%q is not refused", name)
		}
	}
	for _, name := range []string{"cert 117.pdf", "photos/bow.jpg", "Prüfbericht.pdf", "console.txt", "com10.pdf", ".hidden", "a.b.c.pdf"} {
		if why := refuse(name); why != "" {
			t.Errorf("%q is refused: %s", name, why)
		}
	}
}

func FuzzRefuse(f *testing.F) {
	for _, seed := range []string{"a.pdf", "../a", `..\a`, "con.pdf", "a/b/c", "é.pdf", "a\u202e"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, name string) {
		if refuse(name) != "" {
			return
		}
		if !filepath.IsLocal(filepath.FromSlash(name)) || strings.ContainsAny(name, "\\:\x00") {
			t.Fatalf("%q is taken and may leave the folder", name)
		}
		stem, end := safeName(name, kindUnknown)
		if out := stem + end; refuse(out) != "" || strings.Trim(out, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-") != "" {
			t.Fatalf("%q becomes %q", name, out)
		}
	})
}

func TestNamesInsideTheFile(t *testing.T) {
	n := newNames()
	rows := []struct {
		where, path, file, kind, want string
	}{
		{"plain", "a/documents/cert.pdf", "cert.pdf", kindPDF, "documents/cert.pdf"},
		{"the same file again", "a/documents/cert.pdf", "cert.pdf", kindPDF, "documents/cert.pdf"},
		{"another of that name", "b/documents/cert.pdf", "cert.pdf", kindPDF, "documents/cert-2.pdf"},
		{"case does not part them", "a/documents/CERT.PDF", "CERT.PDF", kindPDF, "documents/CERT-3.PDF"},
		{"a page is not run", "a/documents/x.html", "x.html", kindText, "documents/x.html.txt"},
		{"a picture that can hold script is not run", "a/documents/x.svg", "x.svg", kindText, "documents/x.svg.txt"},
		{"nor is what looks like nothing", "a/documents/y.html", "y.html", kindUnknown, "documents/y.html.bin"},
		{"other letters", "a/documents/æøå.jpg", "æøå.jpg", kindJPEG, "documents/document.jpg"},
		{"a device by washing", "a/documents/äaux.pdf", "äaux.pdf", kindPDF, "documents/document-aux.pdf"},
	}
	for _, r := range rows {
		d := &Document{Path: r.path, Type: r.kind, Record: &record.Document{File: put(r.file)}}
		if got := n.take(d); got != r.want {
			t.Errorf("%s: %s, want %s", r.where, got, r.want)
		}
	}
	seen := map[string]string{}
	for p, out := range n.byPath {
		if other, twice := seen[strings.ToLower(out)]; twice {
			t.Errorf("%s and %s both become %s", p, other, out)
		}
		seen[strings.ToLower(out)] = p
	}
}

func TestKindOf(t *testing.T) {
	rows := []struct{ where, head, want string }{
		{"ISO 32000 header", "%PDF-1.4\n", kindPDF},
		{"PNG signature, W3C PNG clause 5.2", "\x89PNG\r\n\x1a\n\x00\x00", kindPNG},
		{"JPEG start of image and marker", "\xff\xd8\xff\xe0\x00\x10JFIF", kindJPEG},
		{"plain", "length 7.4 m\r\nbreadth 2.5 m\n", kindText},
		{"page", "<html>", kindText},
		{"drawing", "<svg xmlns='http://www.w3.org/2000/svg'/>", kindText},
		{"cut in the middle of a letter", "7,4 m²"[:6], kindText},
		{"zip", "PK\x03\x04\x00\x00", kindUnknown},
		{"nothing", "", kindUnknown},
		{"latin one", "Pr\xfcfung and more", kindUnknown},
	}
	for _, r := range rows {
		if got := kindOf([]byte(r.head)); got != r.want {
			t.Errorf("%s: %s, want %s", r.where, got, r.want)
		}
	}
}

func TestStrays(t *testing.T) {
	root, _ := yard(t, map[string]string{
		"hulls/H1/documents/a.pdf": pdf, "hulls/H1/documents/b.pdf": pdf, "hulls/H1/documents/photos/c.jpg": "x", "hulls/H1/documents/.trace": "x",
		"hulls/H2/documents/d.pdf": pdf, "hulls/H1/hull.toml": "",
	})
	r := Assess(root, hull(paper("a", "a.pdf")))
	if got := strings.Join(r.Strays, " "); got != "hulls/H1/documents/b.pdf hulls/H1/documents/photos/c.jpg" {
		t.Errorf("strays %s", got)
	}
	if len(r.Findings) != 1 || r.Findings[0].Rule != "document-stray" || r.Findings[0].Kind != finding.Doubt {
		t.Errorf("%v", r.Findings)
	}
}

func TestADesignsDocumentLiesBesideTheDesign(t *testing.T) {
	root, _ := yard(t, map[string]string{"designs/HL74/documents/a.pdf": pdf})
	d := paper("a", "a.pdf")
	d.File.At.File = "designs/HL74/design.toml"
	got := Assess(root, hull(d)).Documents[0]
	if !got.Present || got.Path != "designs/HL74/documents/a.pdf" {
		t.Errorf("%+v", got)
	}
}

func TestWithoutAYardFolder(t *testing.T) {
	r := Assess(nil, hull(paper("a", "a.pdf")))
	if r.Documents[0].Present || r.Checks[0].Standing != finding.NotShown {
		t.Errorf("%+v", r)
	}
}

func BenchmarkAssess20DocumentsOf200KB(b *testing.B) {
	files := map[string]string{}
	var docs []record.Document
	for i := range 20 {
		name := fmt.Sprintf("d%d.pdf", i)
		files["hulls/H1/documents/"+name] = pdf + strings.Repeat("0123456789", 20000)
		docs = append(docs, paper(name, name))
	}
	root, _ := yard(b, files)
	h := hull(docs...)
	b.SetBytes(20 * 200000)
	for b.Loop() {
		Assess(root, h)
	}
}
