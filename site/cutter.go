package site

import (
	"bytes"
	"slices"
	"strconv"
)

// cutter goes through what stands on a page, tag by tag, and cuts it where a part is full. It relies on what our templates
// write: every element that is not empty by its nature is closed.
type cutter struct {
	most    int
	parts   [][]byte
	ids     [][]string // anchors of each part, without those inside drawings
	text    []byte     // of the part that is being filled
	within  []through
	whole   int  // depth inside an element that is not cut
	drawing bool // inside a drawing or a formula
	keep    *[]byte
	bound   bool // what passed last, such as a heading, stays with what follows
	binds   bool // the element that is not cut does so
}

// through is an element that a cut may go through.
type through struct {
	name   string
	again  []byte // its tag where it begins again, without what may stand only once
	head   []byte // what is said again at the head of a table, or of what can be folded
	asking []byte // in the body of a table: the row with what the rows after it ask alike
	items  int    // of a list
}

var (
	goesThrough = setOf("section", "article", "div", "table", "tbody", "ul", "ol", "dl", "figure", "details")
	cutBefore   = setOf("section", "article", "div", "tr", "li", "h2", "h3", "p", "dl", "ul", "ol", "figure", "details")
	saidAgain   = setOf("caption", "colgroup", "thead", "summary")
	headings    = setOf("h2", "h3", "h4")
	voids       = setOf("br", "hr", "img", "input", "wbr", "col", "use", "link", "meta")
	drawings    = setOf("svg", "math")
)

func setOf(all ...string) map[string]bool {
	out := map[string]bool{}
	for _, name := range all {
		out[name] = true
	}
	return out
}

// take takes the next tag with what stands before it.
func (c *cutter) take(before, tag, _ []byte) {
	c.pass(before)
	if len(tag) == 0 {
		return
	}
	name := tagName(tag)
	switch {
	case name[0] == '/':
		c.pass(tag)
		c.ends(name[1:])
	case c.whole > 0 || voids[name] || name[0] == '!' || bytes.HasSuffix(tag, []byte("/>")):
		c.begins(name, tag)
	default:
		c.mayCut(name, tag)
		c.opens(name, tag)
	}
}

func (c *cutter) pass(text []byte) {
	c.text = append(c.text, text...)
	if c.keep != nil {
		*c.keep = append(*c.keep, text...)
	}
}

// begins passes a tag inside an element that is not cut, or of an element that holds nothing.
func (c *cutter) begins(name string, tag []byte) {
	c.drawing = c.drawing || drawings[name]
	c.noted(tag)
	c.pass(tag)
	if c.whole > 0 && !voids[name] && name[0] != '!' && !bytes.HasSuffix(tag, []byte("/>")) {
		c.whole++
	}
}

func (c *cutter) noted(tag []byte) {
	if !c.drawing && bytes.Contains(tag, []byte(` id="`)) {
		last := len(c.ids) - 1
		c.ids[last] = append(c.ids[last], attribute(tag, "id"))
	}
}

// opens passes the tag of an element that a cut may go through, or of one that stays whole.
func (c *cutter) opens(name string, tag []byte) {
	c.noted(tag)
	in := c.innermost()
	if name == "li" && in != nil {
		in.items++
	}
	asks := attribute(tag, "class") == "asking"
	switch {
	case goesThrough[name]:
		c.within = append(c.within, through{name: name, again: again(tag)})
		c.bound = false
	case in != nil && saidAgain[name]:
		c.whole, c.keep, c.binds = 1, &in.head, true
	case in != nil && asks:
		in.asking = nil
		c.whole, c.keep, c.binds = 1, &in.asking, true
	default:
		c.whole, c.binds = 1, headings[name]
		c.drawing = drawings[name]
	}
	c.pass(tag)
}

func (c *cutter) ends(name string) {
	if drawings[name] {
		c.drawing = false
	}
	if c.whole == 0 {
		c.within, c.bound = c.within[:max(0, len(c.within)-1)], false
		return
	}
	if c.whole--; c.whole == 0 {
		c.keep, c.bound = nil, c.binds
	}
}

func (c *cutter) innermost() *through {
	if len(c.within) == 0 {
		return nil
	}
	return &c.within[len(c.within)-1]
}

// mayCut cuts before an element, where the part is full and the element is one that may begin a part.
func (c *cutter) mayCut(name string, tag []byte) {
	in := c.innermost()
	if len(c.text) < c.most || c.bound || !cutBefore[name] || in != nil && in.name == "table" {
		return
	}
	for _, w := range slices.Backward(c.within) {
		c.text = append(c.text, "</"+w.name+">\n"...)
	}
	c.parts, c.ids, c.text = append(c.parts, c.text), append(c.ids, nil), nil
	for _, w := range c.within {
		c.text = append(c.text, w.again...)
		if w.name == "ol" {
			c.text = append(bytes.TrimSuffix(c.text, []byte(">")), ` start="`+strconv.Itoa(w.items+1)+`">`...)
		}
		c.text = append(c.text, w.head...)
	}
	if in != nil && attribute(tag, "class") != "asking" {
		c.text = append(c.text, in.asking...)
	}
}

// again is a tag without its anchor and without the names of others on its page.
func again(tag []byte) []byte {
	out := bytes.Clone(tag)
	for _, key := range []string{` id="`, ` aria-labelledby="`} {
		if at := bytes.Index(out, []byte(key)); at >= 0 {
			end := bytes.IndexByte(out[at+len(key):], '"')
			out = slices.Delete(out, at, at+len(key)+end+1)
		}
	}
	return out
}
