package site

import (
	"path"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/held"
	"hullfile/engine/unit"
)

// LimitRowsPage is one table of limits as it was used: every row, where it comes from, how it is known, and who held it
// against the text.
type LimitRowsPage struct {
	Name   string
	Held   LimitTableRow
	Says   string // whose rows they are, and who held them
	Bases  []BasisCount
	About  []string
	Terms  []TermWords
	Blocks []HeldBlock
}

// TermWords is a key of a table with what it means.
type TermWords struct{ Key, Says string }

// HeldBlock is rows of one kind, or the values of one entry.
type HeldBlock struct {
	Title string
	Notes string
	Heads []string
	Rows  []TableLine
}

// TableLine is one row; Cells stand in the order of the heads, or are a key and its value.
type TableLine struct{ Cells []string }

// limitRows adds a page for each table, under a name that every system can hold. One file is one table.
func (b *book) limitRows(above *section) {
	names := slugs{}
	for _, t := range b.dossier.Tables {
		if b.limitsAt[t.File] != "" {
			continue
		}
		at := "methods/limits-" + names.take(strings.TrimSuffix(path.Base(t.File), ".toml")) + ".html"
		b.limitsAt[t.File] = at
		below(above, "Limits: "+or(tableNames[t.File], t.File), at, "ready", page(func(l *leaf) (ReadyPage, error) { return l.readyLimitRows(t) }))
	}
}

func (l *leaf) limitRowsPage(t held.Table) (LimitRowsPage, error) {
	about, blocks, err := t.Blocks()
	if err != nil {
		return LimitRowsPage{}, err
	}
	p := LimitRowsPage{Name: t.File, Held: l.limitTable(t), Says: closed(capital(t.Says()))}
	p.About, p.Terms = explained(about)
	count := map[finding.Basis]int{}
	for _, b := range blocks {
		p.Blocks = append(p.Blocks, heldBlock(b))
		for _, word := range b.Bases {
			count[finding.Basis(word)]++
		}
	}
	for _, b := range finding.Bases() {
		if count[b] > 0 {
			p.Bases = append(p.Bases, BasisCount{basis(b), count[b]})
		}
	}
	return p, nil
}

func heldBlock(b held.Block) HeldBlock {
	out := HeldBlock{Title: strings.ReplaceAll(b.Name, "_", " "), Notes: strings.ReplaceAll(b.Notes, "\n", " ")}
	for _, head := range b.Heads {
		out.Heads = append(out.Heads, keyWords(head))
	}
	for _, r := range b.Rows {
		row := TableLine{r}
		if len(b.Heads) == 0 {
			row.Cells = []string{keyWords(r[0]), r[1]}
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// keyWords gives a key as words with its unit behind it: over_mm is over, mm.
func keyWords(key string) string {
	var end unit.Named
	for _, name := range unit.Types() {
		if n, _ := unit.Of(name); len(n.Suffix) > len(end.Suffix) && strings.HasSuffix(key, "_"+n.Suffix) {
			end = n
		}
	}
	bare := strings.ReplaceAll(strings.TrimSuffix(key, "_"+end.Suffix), "_", " ")
	if end.Suffix == "" {
		return strings.ReplaceAll(key, "_", " ")
	}
	return bare + ", " + end.Sign
}

// explained parts the comment at the head of a table into paragraphs and keys with what they mean; a key and its meaning stand
// two spaces apart, and a line that begins with spaces goes on with the one above.
func explained(about string) (paragraphs []string, terms []TermWords) {
	var now []string
	flush := func() {
		if len(now) > 0 {
			paragraphs = append(paragraphs, strings.Join(now, " "))
		}
		now = nil
	}
	for line := range strings.SplitSeq(about, "\n") {
		key, says, two := strings.Cut(line, "  ")
		switch {
		case strings.TrimSpace(line) == "":
			flush()
		case strings.HasPrefix(line, " ") && len(terms) > 0:
			terms[len(terms)-1].Says += " " + strings.TrimSpace(line)
		case two && key != "":
			flush()
			terms = append(terms, TermWords{key, strings.TrimSpace(says)})
		default:
			now = append(now, line)
		}
	}
	flush()
	return paragraphs, terms
}
