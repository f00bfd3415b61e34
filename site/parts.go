package site

import (
	"bytes"
	"html"
	"path"
	"strconv"
	"strings"
)

// A browser takes a page of some hundred kilobytes at once and one of twenty megabytes not at all. So a page that comes out
// longer than longPage is written in parts, cut between rows of tables, items of lists and blocks. What a cut goes through, such
// as a section or a table with its caption and heads, begins again in the next part. A link from elsewhere leads to the first
// part; what lies in another is named there by its anchor, with the way to it, so that no link leads nowhere.
const (
	longPage = 2 << 20
	partful  = 1 << 20
)

// writePage writes a page, in parts where it is long.
func (f *folder) writePage(name string, text []byte) error {
	if len(text) <= longPage {
		return f.write(name, text)
	}
	all := inParts(name, text, partful)
	f.mu.Lock()
	if f.parts == nil {
		f.parts = map[string]int{}
	}
	f.parts[name] = len(all)
	f.mu.Unlock()
	for i, part := range all {
		if err := f.write(partName(name, i), part); err != nil {
			return err
		}
	}
	return nil
}

// partName is where a part lies. No other page has a plus in its name.
func partName(name string, i int) string {
	if i == 0 {
		return name
	}
	return strings.TrimSuffix(name, ".html") + "+" + strconv.Itoa(i+1) + ".html"
}

// inParts cuts a page after each so many bytes, at the next place where that can be done.
func inParts(name string, page []byte, most int) [][]byte {
	head, body, tail := aroundBody(page)
	c := cutter{most: most, ids: [][]string{nil}}
	eachTag(body, c.take)
	c.parts = append(c.parts, c.text)
	at := map[string]int{}
	for i, ids := range c.ids {
		for _, id := range ids {
			at[id] = i
		}
	}
	var out [][]byte
	for i, part := range c.parts {
		var b bytes.Buffer
		b.Grow(len(head) + len(part) + len(tail) + len(part)/8)
		headOfPart(&b, head, i, len(c.parts))
		partsList(&b, name, i, len(c.parts))
		linkedParts(&b, part, name, i, at)
		if i == 0 {
			elsewhere(&b, name, c.ids)
		}
		partsList(&b, name, i, len(c.parts))
		b.Write(tail)
		out = append(out, b.Bytes())
	}
	return out
}

// aroundBody takes apart a page: up to its heading, what stands on it, and what comes after.
func aroundBody(page []byte) (head, body, tail []byte) {
	end := bytes.LastIndex(page, []byte(`<nav class="turn"`))
	if end < 0 {
		end = bytes.LastIndex(page, []byte("</main>"))
	}
	begin := bytes.Index(page, []byte("</h1>")) + len("</h1>")
	return page[:begin], page[begin:end], page[end:]
}

func headOfPart(b *bytes.Buffer, head []byte, i, of int) {
	says := "part " + strconv.Itoa(i+1) + " of " + strconv.Itoa(of)
	title := bytes.Index(head, []byte("</title>"))
	b.Write(head[:title])
	b.WriteString(", " + says)
	b.Write(bytes.TrimSuffix(head[title:], []byte("</h1>")))
	b.WriteString(partsMark + " <small>" + says + "</small>" + partsEnd + "</h1>\n")
}

// partsList is the way to the other parts. Print editions leave it out by its marks.
func partsList(b *bytes.Buffer, name string, i, of int) {
	b.WriteString(partsMark + `<nav class="split" aria-label="Parts of this page"><p>This page is long and lies in parts; sorting and filters see one part.</p><ol>`)
	for k := range of {
		b.WriteString(`<li><a href="` + partHref(name, k) + `"`)
		if k == i {
			b.WriteString(` aria-current="page"`)
		}
		b.WriteString(">" + strconv.Itoa(k+1) + "</a></li>\n")
	}
	b.WriteString("</ol></nav>\n" + partsEnd)
}

const partsMark, partsEnd = "<!--parts-->", "<!--/parts-->"

func partHref(name string, i int) string {
	return html.EscapeString(escapePath(path.Base(partName(name, i))))
}

// elsewhere names what lies in the other parts.
func elsewhere(b *bytes.Buffer, name string, ids [][]string) {
	b.WriteString(partsMark + `<nav class="moved" aria-label="What lies in the other parts"><h2>In the other parts</h2><p>`)
	for i, some := range ids {
		for _, id := range some {
			if i > 0 {
				b.WriteString(`<a id="` + html.EscapeString(id) + `" href="` + partHref(name, i) + "#" + html.EscapeString(id) + `">` + html.EscapeString(id) + "</a>\n")
			}
		}
	}
	b.WriteString("</p></nav>\n" + partsEnd)
}

// linkedParts writes a part whose links within the page lead to the parts in which their anchors lie.
func linkedParts(b *bytes.Buffer, part []byte, name string, i int, at map[string]int) {
	eachTag(part, func(before, tag, _ []byte) {
		b.Write(before)
		id, within := strings.CutPrefix(attribute(tag, "href"), "#")
		if to, known := at[id]; !within || !known || to == i {
			b.Write(tag)
		} else {
			b.Write(bytes.Replace(tag, []byte(` href="#`), []byte(` href="`+partHref(name, to)+"#"), 1))
		}
	})
}

// readPage gives a page as it was written, with its parts put together again.
func (f *folder) readPage(name string) ([]byte, error) {
	page, err := f.read(name)
	if err != nil || f.parts[name] == 0 {
		return page, err
	}
	head, body, tail := aroundBody(page)
	all := append(bytes.Clone(head), body...)
	for i := 1; i < f.parts[name]; i++ {
		part, err := f.read(partName(name, i))
		if err != nil {
			return nil, err
		}
		_, body, _ := aroundBody(part)
		all = append(all, body...)
	}
	return append(unmarked(all), tail...), nil
}

// unmarked leaves out what a page in parts has beside what stands on it.
func unmarked(page []byte) []byte {
	var out []byte
	for {
		before, marked, found := bytes.Cut(page, []byte(partsMark))
		if out = append(out, before...); !found {
			return out
		}
		_, page, _ = bytes.Cut(marked, []byte(partsEnd))
	}
}
