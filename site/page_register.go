package site

import (
	"bytes"
	"context"

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

// register writes the yard's page and the lists of its own files. Hulls that were not part of the job stand as the
// file that lies there says; a hull without a file is listed without a link.
func (p *press) register(ctx context.Context, s *stage, lines []line) error {
	f, err := newFolder(ctx, s.fresh(""))
	if err != nil {
		return err
	}
	defer f.close()
	made := map[string]line{}
	for _, n := range lines {
		made[n.Number] = n
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
			below = append(below, sum{h.Number + "/" + sumsName, n.Sums})
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
		Link: Link{Text: n.Number, Href: escapePath(n.Number) + "/" + coverName, To: n.Number + "/" + coverName}, Title: n.Title, Design: n.Design, State: n.State,
		Issue: n.Issue, Standing: standing(n.Standing), Sums: n.Sums,
	}
	for _, k := range finding.Kinds() {
		row.Counts = append(row.Counts, Count{Kind: kind(k), N: n.Counts[k], Href: escapePath(n.Number) + "/" + findingsPath + "#" + string(k)})
	}
	return row
}
