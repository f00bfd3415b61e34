package site

import (
	"html/template"

	"hullfile/engine/method"
)

// compared is one working of a family.
type compared struct {
	name    string
	working *method.Working
	governs string
}

// Compare is what differs between the workings of a family: one column a quantity, one row a panel or member. Values
// that are the same for all stand in the working of the one that is shown in full.
type Compare struct {
	Head  template.HTML // cells of the head
	Rows  template.HTML
	Forms []OtherForm // forms of a step that others take
	Same  int         // quantities that are the same for all
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
	insMost := decimals(sound, ins, func(w *method.Working) []method.Shown { return w.Inputs })
	outsMost := decimals(sound, outs, func(w *method.Working) []method.Shown { return w.Steps })
	var head, rows markup
	for _, i := range ins {
		head.columnHead(&shown.Inputs[i], "")
	}
	for _, i := range outs {
		head.columnHead(&shown.Steps[i], steps[shown.Steps[i].Symbol])
	}
	f := forms{shown: shown, marks: map[*method.Formula]string{}}
	for _, c := range sound {
		rows.raw(`<tr><th scope="row">`)
		rows.text(c.name)
		rows.raw("</th>")
		for n, i := range ins {
			rows.valueCell(&c.working.Inputs[i], "", false, insMost[n])
		}
		for n, i := range outs {
			s := &c.working.Steps[i]
			rows.valueCell(s, f.mark(i, s), s.Symbol == c.governs, outsMost[n])
		}
		rows.raw("</tr>\n")
	}
	for _, s := range f.found {
		if fixed, err := l.press.fixed(s); err == nil {
			out.Forms = append(out.Forms, OtherForm{f.marks[s.Formula], fixed})
		}
	}
	out.Head, out.Rows = head.whole(), rows.whole()
	return out
}

// differing gives the places of the values that are not the same in all workings.
func differing(all []compared, of func(*method.Working) []method.Shown) []int {
	var out []int
	first := of(all[0].working)
	for i := range first {
		a, text := &first[i], shownText(&first[i])
		for _, c := range all[1:] {
			if b := &of(c.working)[i]; a.State != b.State || a.Formula != b.Formula || text != shownText(b) {
				out = append(out, i)
				break
			}
		}
	}
	return out
}

// decimals gives the most decimals of each of some quantities.
func decimals(all []compared, at []int, of func(*method.Working) []method.Shown) []int {
	out := make([]int, len(at))
	for n, i := range at {
		for _, c := range all {
			if d, ok := decimalsOf(shownText(&of(c.working)[i])); ok {
				out[n] = max(out[n], d)
			}
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

func (m *markup) columnHead(s *method.Shown, anchor string) {
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
	m.html(symbolMath(s.Symbol))
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

// valueCell writes one value in a column whose longest has most decimals; what has none is a dash, what lies outside its range
// bears a dagger.
func (m *markup) valueCell(s *method.Shown, form string, governs bool, most int) {
	m.raw(`<td class="num">`)
	text := shownText(s)
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
