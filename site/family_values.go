package site

import (
	"html/template"
	"math"
	"slices"
	"unicode/utf8"

	"hullfile/engine/method"
)

// compared is one working of a family.
type compared struct {
	name    string
	href    string // where it is shown, empty where that is this page
	id      string // anchor of its row, empty without
	working *method.Working
	governs string
}

// Compare is what differs between the workings of a family: one column a quantity, one row a panel or member. Values
// that are the same for all stand in the working of the one that is shown in full. Where there are more columns than a page is
// wide, they stand in several tables below each other.
type Compare struct {
	Blocks []CompareBlock
	Forms  []OtherForm // forms of a step that others take
	Same   int         // quantities that are the same for all
	IDs    []string    // anchors that stand nowhere else, where there are no blocks
}

// CompareBlock is as many columns as a page is wide.
type CompareBlock struct {
	Head template.HTML // cells of the head
	Rows template.HTML
}

// compareColumn is one quantity: an input or a step by its place in a working.
type compareColumn struct {
	step  bool
	at    int
	texts []string // in each of the workings
	most  int      // decimals of the one that has the most
	wide  float64
}

func (c compareColumn) of(w *method.Working) *method.Shown {
	if c.step {
		return &w.Steps[c.at]
	}
	return &w.Inputs[c.at]
}

// OtherForm is a form of a step that another panel or member takes than the one worked in full.
type OtherForm struct {
	Mark string
	Form StepFixed
}

// compare sets the values of a family side by side. shown is the working that the page has in full, steps the anchors
// of its steps. All are of one scope of one sheet.
func (l *leaf) compare(all []compared, shown *method.Working, steps map[string]string) Compare {
	var out Compare
	sound := all[:0:0]
	for _, c := range all {
		if c.working != nil && shown != nil && len(c.working.Steps) == len(shown.Steps) && len(c.working.Inputs) == len(shown.Inputs) {
			sound = append(sound, c)
		}
	}
	if len(sound) < 2 {
		return out
	}
	ins := differing(sound, func(w *method.Working) []method.Shown { return w.Inputs })
	outs := differing(sound, func(w *method.Working) []method.Shown { return w.Steps })
	out.Same = len(shown.Inputs) + len(shown.Steps) - len(ins) - len(outs)
	var columns []compareColumn
	for _, i := range ins {
		columns = append(columns, compareColumn{at: i})
	}
	for _, i := range outs {
		columns = append(columns, compareColumn{step: true, at: i})
	}
	for i := range columns {
		columns[i].measure(sound)
	}
	f := forms{shown: shown, marks: map[*method.Formula]string{}}
	for n, part := range parted(columns) {
		var head markup
		for _, c := range part {
			anchor := ""
			if c.step {
				anchor = steps[shown.Steps[c.at].Symbol]
			}
			head.columnHead(c.of(shown), l.press.symbol(c.of(shown).Symbol), anchor)
		}
		out.Blocks = append(out.Blocks, CompareBlock{head.whole(), l.press.compareRows(sound, part, &f, n == 0)})
	}
	for _, s := range f.found {
		if fixed, err := l.press.fixed(s); err == nil {
			out.Forms = append(out.Forms, OtherForm{f.marks[s.Formula], fixed})
		}
	}
	return out
}

// compareRows gives the rows of one block; the first has the anchors and the ways to where each is shown.
func (p *press) compareRows(all []compared, columns []compareColumn, f *forms, first bool) template.HTML {
	rows := markup(p.rooms.take(usualRows))
	for n, c := range all {
		rows.raw("<tr")
		if first && c.id != "" {
			rows.raw(` id="`)
			rows.text(c.id)
			rows.raw(`"`)
		}
		rows.raw(`><th scope="row">`)
		if first && c.href != "" {
			rows.raw(`<a href="`)
			rows.text(c.href)
			rows.raw(`">`)
			rows.text(c.name)
			rows.raw("</a>")
		} else {
			rows.text(c.name)
		}
		rows.raw("</th>")
		for _, col := range columns {
			s := col.of(c.working)
			if !col.step {
				rows.valueCell(s, col.texts[n], "", false, col.most)
				continue
			}
			rows.valueCell(s, col.texts[n], f.mark(col.at, s), s.Symbol == c.governs, col.most)
		}
		rows.raw("</tr>\n")
	}
	return p.made(rows)
}

// pageWide is how much room a page of medium width leaves for the columns beside the names, CSS pixels at the size of such tables;
// figureWide is that of a figure, besideFigure that of the space between two columns.
const (
	pageWide     = 620.0
	figureWide   = 6.7
	besideFigure = 11.0
)

// measure takes the texts of a column, the most decimals, and about how wide it is.
func (c *compareColumn) measure(all []compared) {
	most := max(2, utf8.RuneCountInString(c.of(all[0].working).Unit)-1)
	c.texts = make([]string, len(all))
	for n, one := range all {
		text := shownText(c.of(one.working))
		c.texts[n] = text
		if d, ok := decimalsOf(text); ok {
			c.most = max(c.most, d)
		}
		most = max(most, utf8.RuneCountInString(text))
	}
	c.wide = figureWide*float64(most) + besideFigure
}

// parted parts columns into as few blocks of about the same width as fit a page.
func parted(columns []compareColumn) [][]compareColumn {
	whole := 0.0
	for _, c := range columns {
		whole += c.wide
	}
	blocks := math.Ceil(whole / pageWide)
	var out [][]compareColumn
	begun, passed := 0, 0.0
	for i, c := range columns {
		if block := int((passed + c.wide/2) * blocks / whole); block > len(out) {
			out = append(out, columns[begun:i])
			begun = i
		}
		passed += c.wide
	}
	if begun < len(columns) {
		out = append(out, columns[begun:])
	}
	return out
}

// differing gives the places of the values that are not the same in all workings.
func differing(all []compared, of func(*method.Working) []method.Shown) []int {
	var out []int
	first := of(all[0].working)
	for i := range first {
		a := &first[i]
		if slices.ContainsFunc(all[1:], func(c compared) bool {
			b := &of(c.working)[i]
			return !a.Alike(b) && (a.State != b.State || a.Formula != b.Formula || shownText(a) != shownText(b))
		}) {
			out = append(out, i)
		}
	}
	return out
}

func shownText(s *method.Shown) string {
	if s.IsWord {
		return s.Word
	}
	return s.Number()
}

// forms hands out marks for forms of steps that the working shown in full does not take.
type forms struct {
	shown *method.Working
	marks map[*method.Formula]string
	found []*method.Shown
}

func (f *forms) mark(i int, s *method.Shown) string {
	if s.Formula == nil || s.Formula == f.shown.Steps[i].Formula {
		return ""
	}
	mark, known := f.marks[s.Formula]
	if !known {
		mark = string(rune('a' + len(f.found)%26))
		f.marks[s.Formula] = mark
		f.found = append(f.found, s)
	}
	return mark
}

func (m *markup) columnHead(s *method.Shown, symbol template.HTML, anchor string) {
	m.raw(`<th scope="col" class="num">`)
	tag := "span"
	if anchor != "" {
		tag = "a"
		m.raw(`<a href="#`)
		m.text(anchor)
		m.raw(`" title="`)
	} else {
		m.raw(`<span title="`)
	}
	m.text(s.Name)
	m.raw(`">`)
	m.html(symbol)
	m.raw(`<span class="aside">`)
	m.text(s.Name)
	m.raw("</span></" + tag + ">")
	if s.Unit != "" {
		m.raw("<small>")
		m.text(s.Unit)
		m.raw("</small>")
	}
	m.raw("</th>")
}

// valueCell writes the text of one value in a column whose longest has most decimals; what has none is a dash, what lies outside its range
// bears a dagger.
func (m *markup) valueCell(s *method.Shown, text, form string, governs bool, most int) {
	m.raw(`<td class="num">`)
	if text == "" {
		m.raw("–</td>")
		return
	}
	if governs {
		m.raw("<b>")
	}
	m.text(text)
	if governs {
		m.raw("</b>")
	}
	if s.State == method.Outside {
		m.raw("<sup>†</sup>")
	}
	if form != "" {
		m.raw("<sup>")
		m.text(form)
		m.raw("</sup>")
	}
	m.raw(padding(text, most))
	m.raw("</td>")
}
