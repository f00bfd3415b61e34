package site

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"

	"hullfile/engine/finding"
)

// RegisterPage lists the hulls of the yard and leads to their files.
type RegisterPage struct {
	Builder string
	Hulls   []HullRow
	Written int
	Left    []string
}

// HullRow is one hull of the yard. A hull without a file has no link.
type HullRow struct {
	Link     Link
	Title    string
	Design   string
	State    string
	Issue    string
	Standing Standing
	Counts   []Count
	Sums     string // hash of its SHA256SUMS
}

// line is what the register and the report say of one hull. It is all that is kept of a hull once its book is closed.
type line struct {
	number   string
	title    string
	design   string
	state    string
	issue    string
	standing finding.Standing
	counts   map[finding.Kind]int
	sums     string
	root     string
	pages    int
	files    int
	bytes    int64
}

func (b *book) line(sums string) line {
	h := b.hull
	n := line{
		number: h.Number, title: h.Title.V, design: h.Design.V, state: h.Identity.State.V, standing: b.dossier.Standing(), counts: tellKinds(b.findings),
		sums: sums, root: b.root, pages: b.pages, files: len(b.folder.sums), bytes: b.folder.bytes,
	}
	if h.Issue.Number.Set {
		n.issue = strconv.Itoa(h.Issue.Number.V)
	}
	return n
}

// register writes the yard's page and the lists of its own files. Hulls that were not part of the job stand as the
// file that lies there says; a hull without a file is listed without a link.
func (p *press) register(ctx context.Context, s *stage, lines []line) error {
	f, err := newFolder(ctx, s.fresh(""))
	if err != nil {
		return err
	}
	made := map[string]line{}
	for _, n := range lines {
		made[n.number] = n
	}
	page := RegisterPage{Builder: p.job.Yard.Builder.Name.V, Left: s.left(p.job.Yard.Hulls)}
	var below []sum
	for _, h := range p.job.Yard.Hulls {
		n, ok := made[h.Number]
		if !ok {
			n, ok = earlier(s.final(h.Number), h.Number)
		}
		row := HullRow{Link: Link{Text: h.Number}, Title: h.Title.V, Design: h.Design.V, State: h.Identity.State.V}
		if ok {
			row = hullRow(n)
			below = append(below, sum{h.Number + "/" + sumsName, n.sums})
			page.Written++
		}
		page.Hulls = append(page.Hulls, row)
	}
	return p.registerFiles(f, page, below)
}

func (p *press) registerFiles(f *folder, page RegisterPage, below []sum) error {
	builder := &p.job.Yard.Builder
	right := ""
	if builder.Invented.V {
		right = "invented for demonstration"
	}
	if err := p.assets(f, page.Builder+", register of hulls", right); err != nil {
		return err
	}
	var buf bytes.Buffer
	frame := Frame{Title: "Register of hulls", Heading: "Register of hulls", Block: blockOf(builder), Version: p.job.Version}
	if err := p.print(&buf, "register", Page{frame, page}); err != nil {
		return err
	}
	if _, err := f.closeContents(); err != nil {
		return err
	}
	if err := f.write(coverName, buf.Bytes()); err != nil {
		return err
	}
	_, err := f.closeSums(below...)
	return err
}

func hullRow(n line) HullRow {
	row := HullRow{
		Link: Link{Text: n.number, Href: escapePath(n.number) + "/" + coverName, To: n.number + "/" + coverName}, Title: n.title, Design: n.design, State: n.state,
		Issue: n.issue, Standing: standing(n.standing), Sums: n.sums,
	}
	for _, k := range finding.Kinds() {
		row.Counts = append(row.Counts, Count{Kind: kind(k), N: n.counts[k], Href: escapePath(n.number) + "/" + findingsPath + "#" + string(k)})
	}
	return row
}

// earlier reads what the file of a hull that lies there says of itself.
func earlier(dir, number string) (line, bool) {
	text, err := os.ReadFile(filepath.Join(dir, resultsName))
	if err != nil {
		return line{}, false
	}
	sums, err := os.ReadFile(filepath.Join(dir, sumsName))
	if err != nil {
		return line{}, false
	}
	var head resultsHead
	if json.Unmarshal(text, &head) != nil {
		return line{}, false
	}
	n := line{
		number: number, title: head.Hull.Title, design: head.Hull.Design, state: head.Hull.State, standing: head.Standing, counts: head.Counts, sums: hashOf(sums),
	}
	if head.Hull.Issue > 0 {
		n.issue = strconv.Itoa(head.Hull.Issue)
	}
	return n, true
}

// report says what was written, for the caller.
func report(p *press, s *stage, lines []line) Report {
	out := Report{Register: s.final(coverName), Left: s.left(p.job.Yard.Hulls)}
	for _, n := range lines {
		out.Hulls = append(out.Hulls, HullReport{
			Number: n.number, Page: filepath.Join(s.final(n.number), coverName), Standing: n.standing, Counts: n.counts,
			Pages: n.pages, Files: n.files, Bytes: n.bytes, Root: n.root, Sums: n.sums,
		})
	}
	return out
}
