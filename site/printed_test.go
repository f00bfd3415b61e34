package site

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// Two pages with the same identifiers, joined: every identifier is its own, links lead inside, numbers follow sections.
func TestPagesAreJoined(t *testing.T) {
	main := func(body string) []byte {
		return []byte("<html><body>" + `<main id="main" tabindex="-1">` + "\n" + body + `<nav class="turn" aria-label="x"></nav></main></body></html>`)
	}
	top := &section{no: "3", title: "Structure", path: "structure.html"}
	kid := &section{no: "3.1", title: "Panel", path: "structure/b3.html", above: top}
	j := newJoiner([]joinedPage{
		{top, main(`<h1><span class="no">3</span> Structure</h1><a href="structure/b3.html#t" data-to="3.1">B3</a> <a href="#t">here</a> <a href="documents/a%20b.pdf">paper</a> <a href="https://x.y/#t">web</a><div class="scroll"><table><caption>One</caption><tr id="t"><td>1</td></tr></table></div>`)},
		{kid, main(`<h1>Panel</h1><h2 id="t">Working</h2><div class="scroll"><table><caption>Two &amp; a half</caption><tr id="t2"><td>2</td></tr></table></div><svg role="img" aria-labelledby="a b"><title id="a">x</title><use href="#a"/><rect fill="url(#g)"/></svg><figcaption>A. B</figcaption><a href="../structure.html" data-to="3">up</a> <a href="../structure.html#t" data-to="3">row</a>`)},
	})
	var all strings.Builder
	for _, s := range j.sections() {
		all.WriteString(string(s.Text))
	}
	text := all.String()
	for _, want := range []string{
		`<a href="#s3-1-t" data-to="3.1">`, `<a href="#s3-t">here`, `<a href="documents/a%20b.pdf">`, `<a href="https://x.y/#t">`,
		`<caption><span class="capno">Table 3-1</span> One`, `<tr id="s3-t">`, `<h2 class="was1"><span class="no">3</span>`, `<h3 class="was1">Panel</h3>`, `<h4 class="was2" id="s3-1-t">Working</h4>`,
		`aria-labelledby="s3-1-a s3-1-b"`, `<title id="s3-1-a">`, `<use href="#s3-1-a"/>`, `url(#s3-1-g)`, `<span class="capno">Figure 3.1-1</span> A. B`, `<a href="#s3" data-to="3">up`, `<a href="#s3-t" data-to="Table 3-1">row`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
	if len(j.tables) != 2 || j.tables[1].Title != "Two & a half" || j.tables[1].Page != "3.1-1" || j.figures[0].Title != "A" {
		t.Errorf("lists: %+v %+v", j.tables, j.figures)
	}
	if rules := j.pageRules("a\"b"); !strings.Contains(rules, "@page s3-1{counter-increment:ns3-1;") || !strings.Contains(rules, `a\000022b`) {
		t.Errorf("%s", rules)
	}
}

// In the print edition of the whole file no identifier stands twice, every link inside leads somewhere, and no page is
// left out.
func TestPrintEdition(t *testing.T) {
	job := demoJob(t)
	job.Print = true
	dir := rendered(t, job)
	for _, name := range []string{"HL74-012/print.html", "HL74-012/owner/print.html"} {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		tree, err := html.Parse(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		ids, parts := map[string]bool{}, 0
		var to []string
		each(tree, func(n *html.Node) {
			if id := attr(n, "id"); id != "" {
				if ids[id] {
					t.Errorf("%s: identifier %q stands twice", name, id)
				}
				ids[id] = true
			}
			if strings.HasPrefix(attr(n, "class"), "part ") {
				parts++
			}
			if h := attr(n, "href"); strings.HasPrefix(h, "#") {
				to = append(to, h[1:])
			}
		})
		for _, id := range to {
			if !ids[id] {
				t.Errorf("%s: a link leads to %q, which is not there", name, id)
			}
		}
		lines := regexp.MustCompile(`(?s)<ol class="toc">(.*?)</ol>`).FindString(string(text))
		if n := strings.Count(lines, "<li"); n != parts || n < 20 {
			t.Errorf("%s: %d lines in the contents, %d sections", name, n, parts)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "HL74-012", "contents.sha256")); err != nil {
		t.Error(err)
	}
	sums, err := os.ReadFile(filepath.Join(dir, "HL74-012", "SHA256SUMS"))
	if err != nil || !strings.Contains(string(sums), "  print.html\n") {
		t.Errorf("the print edition is not in SHA256SUMS: %v", err)
	}
}

func FuzzJoined(f *testing.F) {
	f.Add(`<h1>a</h1><p id="x" class="y">b <a href="#x">c</a></p>`)
	f.Add(`<table><caption>a<tr id="`)
	f.Add(`</h1><h7><a href="`)
	f.Fuzz(func(t *testing.T, body string) {
		s := &section{no: "1", title: "t", path: "a.html"}
		j := newJoiner([]joinedPage{{s, []byte(`<main id="main" tabindex="-1">` + body + `</main>`)}})
		j.sections()
	})
}

func BenchmarkJoin(b *testing.B) {
	body := `<main id="main" tabindex="-1"><h1>a</h1>` + strings.Repeat(`<p id="x" class="y">Some words of a page <a href="#x" data-to="3.1">and a link</a> in it.</p>`, 5000) + `</main>`
	s := &section{no: "1", title: "t", path: "a.html"}
	b.SetBytes(int64(len(body)))
	for b.Loop() {
		newJoiner([]joinedPage{{s, []byte(body)}}).sections()
	}
}

// The volumes hold together what the one page holds, each section once, and a link from one volume into another leads to
// something there.
func TestPrintVolumes(t *testing.T) {
	job := demoJob(t)
	job.Print = true
	job.Hulls = job.Hulls[len(job.Hulls)-1:]
	dir := filepath.Join(rendered(t, job), job.Hulls[0].Number)
	files, err := filepath.Glob(filepath.Join(dir, "print*.html"))
	if err != nil || len(files) < 6 {
		t.Fatalf("print editions: %v, %v", files, err)
	}
	ids, parts, to := map[string]map[string]bool{}, map[string]int{}, map[string][]string{}
	for _, file := range files {
		name := filepath.Base(file)
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		tree, err := html.Parse(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		ids[name] = idsOf(t, name, tree)
		each(tree, func(n *html.Node) {
			if strings.HasPrefix(attr(n, "class"), "part ") && name != "print.html" {
				parts[attr(n, "id")]++
			}
			if h := attr(n, "href"); strings.Contains(h, "#") && (strings.HasPrefix(h, "#") || strings.HasPrefix(h, "print")) {
				to[name] = append(to[name], h)
			}
		})
	}
	across := 0
	for name, links := range to {
		for _, link := range links {
			file, id, _ := strings.Cut(link, "#")
			if file == "" {
				file = name
			} else {
				across++
			}
			if !ids[file][id] {
				t.Errorf("%s: %s leads to nothing", name, link)
			}
		}
	}
	if across < 100 {
		t.Errorf("only %d links lead from one volume to another", across)
	}
	whole := 0
	for id := range ids["print.html"] {
		if regexp.MustCompile(`^s[0-9]+(-[0-9]+)*$`).MatchString(id) {
			whole++
			if parts[id] != 1 {
				t.Errorf("section %s stands in %d volumes", id, parts[id])
			}
		}
	}
	if whole != len(parts) {
		t.Errorf("%d sections in the whole, %d in the volumes", whole, len(parts))
	}
}
