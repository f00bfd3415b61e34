package site

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"hullfile/engine/finding"
)

const (
	registerDir = "register" // pages of a long register, and those of designs
	pageful     = 300        // hulls on one page; a yard with more has pages by number
	shardful    = 5000       // hulls in one file of the index that is searched
)

// RegisterPage lists hulls of the yard and leads to their files. On the first page of a long register the pages stand in
// place of the hulls.
type RegisterPage struct {
	Builder string
	Of      int // hulls of the yard
	Hulls   []HullRow
	Written int
	Parts   []PartRow
	Shards  int // files of the index that is searched, nought where the page holds all hulls
	Designs []Link
	Left    []string
}

// PartRow is one page of a long register.
type PartRow struct {
	Link   Link
	Hulls  int
	Met    int
	Short  int
	Open   int // not shown
	Absent int // without a file
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

// register is the register in the making. Hulls without a hash have no file.
type register struct {
	press  *press
	folder *folder
	block  Block
	lines  []line
	left   []string
	text   []byte
}

// register writes the yard's pages and the lists of their hashes. The lines are in order of number.
func (p *press) register(ctx context.Context, s *stage, block Block, lines []line, left []string) error {
	f, err := newFolder(ctx, s.fresh(""))
	if err != nil {
		return err
	}
	defer f.close()
	r := &register{press: p, folder: f, block: block, lines: lines, left: left}
	return r.write()
}

func (r *register) write() error {
	right := ""
	if r.block.Invented {
		right = "invented for demonstration"
	}
	var find [][]byte
	if len(r.lines) > pageful {
		find = append(find, r.press.find)
	}
	if err := r.press.assets(r.folder, r.block.Builder+", register of hulls", right, find...); err != nil {
		return err
	}
	first := r.page(r.lines)
	first.Left = r.left
	designs, err := r.designs()
	if err != nil {
		return err
	}
	first.Designs = designs
	if len(r.lines) > pageful {
		first.Hulls = nil
		if first.Parts, first.Shards, err = r.long(); err != nil {
			return err
		}
	}
	if err := r.print("register", "", Frame{Title: "Register of hulls"}, first); err != nil {
		return err
	}
	index := bytes.Clone(r.text)
	if _, err := r.folder.closeContents(); err != nil {
		return err
	}
	if err := r.folder.write(coverName, index); err != nil {
		return err
	}
	var below []sum
	for _, n := range r.lines {
		if n.Sums != "" {
			below = append(below, sum{n.Number + "/" + sumsName, n.Sums})
		}
	}
	_, err = r.folder.closeSums(below...)
	return err
}

// print makes a page, which stays in r.text until the next, and, where it has a name, writes it.
func (r *register) print(kind, name string, frame Frame, body any) error {
	frame.Heading, frame.Block, frame.Version = frame.Title, r.block, r.press.job.Version
	var err error
	if r.text, err = r.press.print(r.text, kind, Page{frame, body}); err != nil || name == "" {
		return err
	}
	return r.folder.write(name, r.text)
}

// page gives the page of some hulls.
func (r *register) page(lines []line) RegisterPage {
	p := RegisterPage{Builder: r.block.Builder, Of: len(lines)}
	for _, n := range lines {
		if n.Sums != "" {
			p.Written++
		}
		if len(lines) <= pageful {
			p.Hulls = append(p.Hulls, hullRow(n))
		}
	}
	return p
}

// long writes the pages of a long register, by number, and the index that its first page searches.
func (r *register) long() (parts []PartRow, shards int, err error) {
	for at := 0; at < len(r.lines); at += pageful {
		some := r.lines[at:min(at+pageful, len(r.lines))]
		row := partRow(some)
		name := fmt.Sprintf("%s/%04d.html", registerDir, len(parts)+1)
		row.Link.Href, row.Link.To = name, name
		page := r.page(some)
		for i := range page.Hulls {
			page.Hulls[i].lower()
		}
		if err := r.print("register", name, r.below(row.Link.Text), page); err != nil {
			return nil, 0, err
		}
		parts = append(parts, row)
	}
	for at := 0; at < len(r.lines); at += shardful {
		shards++
		if err := r.shard(shards, r.lines[at:min(at+shardful, len(r.lines))]); err != nil {
			return nil, 0, err
		}
	}
	return parts, shards, nil
}

// below is the frame of a page one folder down.
func (r *register) below(title string) Frame {
	return Frame{Title: title, Up: "../", Crumbs: []Link{{Text: "Register of hulls", Href: "../" + coverName}}}
}

// lower makes the links of a row those of a page one folder down.
func (h *HullRow) lower() {
	if h.Link.Href == "" {
		return
	}
	h.Link.Href = "../" + h.Link.Href
	for i := range h.Counts {
		h.Counts[i].Href = "../" + h.Counts[i].Href
	}
}

func partRow(lines []line) PartRow {
	row := PartRow{Link: Link{Text: lines[0].Number + " to " + lines[len(lines)-1].Number}, Hulls: len(lines)}
	for _, n := range lines {
		switch {
		case n.Sums == "":
			row.Absent++
		case n.Standing == finding.Met:
			row.Met++
		case n.Standing == finding.Short:
			row.Short++
		default:
			row.Open++
		}
	}
	return row
}

// shard writes a part of the index as a classic script: one list of texts a hull, its number first.
func (r *register) shard(n int, lines []line) error {
	rows := make([][5]string, len(lines))
	for i, l := range lines {
		rows[i] = [5]string{l.Number, l.Title, l.Design, l.State, string(l.Standing)}
	}
	text, err := json.Marshal(rows)
	if err != nil {
		return err
	}
	return r.folder.write(fmt.Sprintf("%s/hulls-%04d.js", registerDir, n), fmt.Appendf(nil, "window.HULLFILE_HULLS(%s);\n", text))
}

func hullRow(n line) HullRow {
	row := HullRow{Link: Link{Text: n.Number}, Title: n.Title, Design: n.Design, State: n.State}
	if n.Sums == "" {
		return row
	}
	row.Link.Href, row.Link.To = escapePath(n.Number)+"/"+coverName, n.Number+"/"+coverName
	row.Issue, row.Standing, row.Sums = n.Issue, standing(n.Standing), n.Sums
	for _, k := range finding.Kinds() {
		row.Counts = append(row.Counts, Count{Kind: kind(k), N: n.Counts[k], Href: escapePath(n.Number) + "/" + findingsPath + "#" + string(k)})
	}
	return row
}
