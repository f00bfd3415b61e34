package site

import (
	"bytes"
	"html/template"
	"strconv"
	"unicode/utf8"

	"hullfile/engine/finding"
)

// Besides the templates, this file is the only place where markup is made of text: the rows of the tables of which a
// book has thousands, and the lines of record files.
// Every text goes through escaped; every word of ours comes out of a part of the templates, made once a run.

// markup gathers the markup of rows.
type markup []byte

func (m *markup) raw(ours string)         { *m = append(*m, ours...) }
func (m *markup) html(made template.HTML) { *m = append(*m, made...) }
func (m *markup) text(s string)           { *m = appendEscaped(*m, s) }

// whole gives what was gathered; all text in it went through escaped.
func (m markup) whole() template.HTML { return template.HTML(m) } //nolint:gosec // escaped as it was made

// made gives what was gathered in a room of the press, which is free afterwards.
func (p *press) made(m markup) template.HTML {
	text := m.whole()
	p.rooms.back(m)
	return text
}

// stepRows gives the rows of the table of working.
func (p *press) stepRows(steps []StepRow) (template.HTML, error) {
	words, err := p.words()
	if err != nil {
		return "", err
	}
	m := markup(p.rooms.take(usualRows))
	for i := range steps {
		if err := p.stepRow(&m, &steps[i], words); err != nil {
			return "", err
		}
	}
	return p.made(m), nil
}

func (p *press) stepRow(m *markup, s *StepRow, words rowWords) error {
	m.raw(`<tr id="`)
	m.text(s.ID)
	if s.Governs {
		m.raw(`" class="governs`)
	}
	m.raw(`"><th scope="row">`)
	m.text(s.Name)
	if s.Governs {
		m.html(words.Governs)
	}
	m.raw("</th>\n<td class=\"how\">")
	m.html(s.Fixed.Formula)
	m.stepValues(s)
	m.html(s.Fixed.After)
	if err := p.passedForms(m, s.Passed); err != nil {
		return err
	}
	m.raw("</td>\n<td class=\"num result\">")
	if err := p.figure(m, s.Result); err != nil {
		return err
	}
	if s.Unit != "" {
		m.raw(` <span class="unit">`)
		m.text(s.Unit)
		m.raw("</span>")
	}
	m.raw("</td>\n<td class=\"ref\">")
	m.html(s.Fixed.Ref)
	if s.Rests.Word != "" {
		m.html(words.Rests[s.Rests.Word])
	}
	m.raw("</td></tr>\n")
	return nil
}

// stepValues writes the formula with its values, and what must be said of the result.
func (m *markup) stepValues(s *StepRow) {
	if s.Values != "" {
		m.raw(`<div class="f"><math><mo>=</mo></math> `)
		m.html(s.Values)
		m.raw("</div>")
	}
	if s.State != "" {
		m.raw(`<p class="cond"><span class="st open">`)
		m.text(s.State)
		m.raw("</span>")
		if s.Why != "" {
			m.raw(": ")
			m.text(s.Why)
		}
		m.raw("</p>")
	}
	if s.Remark != "" {
		m.raw(`<p class="cond">`)
		m.text(s.Remark)
		m.raw("</p>")
	}
}

func (p *press) passedForms(m *markup, forms []template.HTML) error {
	if len(forms) == 0 {
		return nil
	}
	summary, err := get(&p.cache, len(forms), func() (template.HTML, error) { return p.part("passedsummary", len(forms)) })
	if err != nil {
		return err
	}
	m.raw(`<details class="passed">`)
	m.html(summary)
	for _, form := range forms {
		m.html(form)
	}
	m.raw("</details>")
	return nil
}

// inputRows gives the rows of the table of values that go in.
func (p *press) inputRows(inputs []InputRow) (template.HTML, error) {
	words, err := p.words()
	if err != nil {
		return "", err
	}
	m := markup(p.rooms.take(usualRows))
	for i := range inputs {
		if err := p.inputRow(&m, &inputs[i], words); err != nil {
			return "", err
		}
	}
	return p.made(m), nil
}

func (p *press) inputRow(m *markup, in *InputRow, words rowWords) error {
	m.raw(`<tr id="`)
	m.text(in.ID)
	m.raw(`"><th scope="row">`)
	m.text(in.Name)
	if in.Why != "" {
		m.raw("<small>")
		m.text(in.Why)
		m.raw("</small>")
	}
	m.raw("</th><td>")
	m.html(in.Symbol)
	m.raw(`</td><td class="num">`)
	if err := p.figure(m, in.Value); err != nil {
		return err
	}
	m.raw("</td><td>")
	m.text(in.Unit)
	m.raw("</td><td>")
	m.place(in.Place)
	if in.Source != "" {
		m.raw(" ")
		m.text(in.Source)
	}
	m.raw(" ")
	m.html(words.Basis[in.Basis.Word])
	if in.State != "" {
		m.raw(` <span class="st open">`)
		m.text(in.State)
		m.raw("</span>")
	}
	if in.Idle {
		m.html(words.Idle)
	}
	m.raw("</td></tr>\n")
	return nil
}

// cells gives the rows of a table of which the first cell heads its row, each after a new line.
func cells(rows [][]string) template.HTML {
	size := 0
	for _, row := range rows {
		for _, cell := range row {
			size += len(cell) + 2*len("<td></td>")
		}
	}
	m := make(markup, 0, size)
	for _, row := range rows {
		m.raw("\n<tr>")
		for i, cell := range row {
			if i == 0 {
				m.raw(`<th scope="row">`)
				m.text(cell)
				m.raw("</th>")
				continue
			}
			m.raw("<td>")
			m.text(cell)
			m.raw("</td>")
		}
		m.raw("</tr>")
	}
	return template.HTML(m) //nolint:gosec // escaped above
}

// place writes a way to a record line, as the part of the same name does.
func (m *markup) place(l Link) {
	switch {
	case l.Href != "":
		m.raw(`<a class="rec" href="`)
		m.text(l.Href)
		m.raw(`">`)
		m.recline(l.Text)
		m.raw("</a>")
	case l.Text != "":
		m.raw(`<span class="rec">`)
		m.recline(l.Text)
		m.raw("</span>")
	}
}

// recline writes the name of a record line, which may be broken behind the folder, as the part of the same name does.
func (m *markup) recline(text string) {
	if dir := recordFolder(text); dir != "" {
		m.text(dir)
		m.raw("<wbr>")
	}
	m.text(recordLine(text))
}

// figure writes a figure, or the reason why there is none, as the part of the same name does.
func (p *press) figure(m *markup, f Figure) error {
	if f.Text != "" {
		m.text(f.Text)
		return nil
	}
	none, err := get(&p.cache, f, func() (template.HTML, error) { return p.part("fig", f) })
	m.html(none)
	return err
}

// rowWords are the words of ours in those rows, made by the templates.
type rowWords struct {
	Governs template.HTML
	Idle    template.HTML
	Basis   map[string]template.HTML // by the word for the basis
	Rests   map[string]template.HTML
}

func (p *press) words() (rowWords, error) {
	return get(&p.cache, "words", func() (w rowWords, err error) {
		w = rowWords{Basis: map[string]template.HTML{}, Rests: map[string]template.HTML{}}
		if w.Governs, err = p.part("stepgoverns", nil); err != nil {
			return w, err
		}
		if w.Idle, err = p.part("inputidle", nil); err != nil {
			return w, err
		}
		for _, b := range finding.Bases() {
			if w.Basis[string(b)], err = p.part("basis", basis(b)); err != nil {
				return w, err
			}
			if w.Rests[string(b)], err = p.part("steprests", basis(b)); err != nil {
				return w, err
			}
		}
		return w, nil
	})
}

// recordLines gives a record file as list items, one a line, each with the anchor that findings lead to.
func (p *press) recordLines(text []byte, usedBy func(out []byte, line int) []byte) template.HTML {
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
	out := p.rooms.take(usualRows)
	for n := 1; len(text) > 0; n++ {
		row, rest, _ := bytes.Cut(text, []byte("\n"))
		out = append(out, `<li id="L`...)
		out = strconv.AppendInt(out, int64(n), 10)
		out = append(out, `"><code>`...)
		out = escaped(out, bytes.TrimSuffix(row, []byte("\r")))
		out = append(out, "</code>"...)
		out = usedBy(out, n)
		out = append(out, "</li>\n"...)
		text = rest
	}
	return p.made(out)
}

// escaped appends text in which nothing is markup. Bytes that are no character, and characters that a page may not
// hold or that turn the order of reading, become the replacement character, so that they can be seen.
func escaped(out, text []byte) []byte { return appendEscaped(out, string(text)) }

func appendEscaped(out []byte, text string) []byte {
	for len(text) > 0 {
		plain := 0
		for plain < len(text) && isPlain(text[plain]) {
			plain++
		}
		out, text = append(out, text[:plain]...), text[plain:]
		if text == "" {
			break
		}
		r, size := utf8.DecodeRuneInString(text)
		switch {
		case r == '&':
			out = append(out, "&amp;"...)
		case r == '<':
			out = append(out, "&lt;"...)
		case r == '>':
			out = append(out, "&gt;"...)
		case r == '"':
			out = append(out, "&#34;"...)
		case r == '\'':
			out = append(out, "&#39;"...)
		case hidden(r):
			out = append(out, "�"...)
		default:
			out = utf8.AppendRune(out, r)
		}
		text = text[size:]
	}
	return out
}

// isPlain reports a byte of ASCII that stands for itself in a page.
func isPlain(c byte) bool {
	return c >= ' ' && c < 0x7f && c != '&' && c != '<' && c != '>' && c != '"' && c != '\''
}

func hidden(r rune) bool {
	switch {
	case r < ' ' && r != '\t', r >= 0x7f && r < 0xa0, r == utf8.RuneError:
		return true
	case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r == 0x2028, r == 0x2029:
		return true
	}
	return false
}
