package chart

import (
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// picture is what a test sees of one <svg> of a figure, read back from the markup and not from how it was made.
type picture struct {
	width, height float64
	texts         []placedText
	places        []point            // corners and ends of everything drawn, centres of discs
	of            map[string][]point // places by class; of a disc or a rectangle its centre
	ids, classes  []string
	labelled      string
	links         []string
	faults        []string
}

type placedText struct {
	box  box
	body string
}

// known elements and attributes; anything else in a figure is a fault.
var (
	elements   = words("svg title desc line rect circle path text a")
	attributes = words("xmlns viewBox class font-family font-size role aria-labelledby id x y x1 y1 x2 y2 width height cx cy r d text-anchor transform href")
)

func words(list string) map[string]bool {
	known := map[string]bool{}
	for _, w := range strings.Fields(list) {
		known[w] = true
	}
	return known
}

// drawingsOf reads the markup of a figure as strict XML.
func drawingsOf(markup string) ([]*picture, error) {
	decoder := xml.NewDecoder(strings.NewReader("<all>" + markup + "</all>"))
	var all []*picture
	var now *picture
	var text *placedText
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, err
		}
		switch e := token.(type) {
		case xml.StartElement:
			if e.Name.Local == "svg" {
				now = &picture{of: map[string][]point{}}
				all = append(all, now)
			}
			if now != nil {
				now.element(e)
			}
			if e.Name.Local == "text" {
				now.texts = append(now.texts, placedText{})
				text = &now.texts[len(now.texts)-1]
				text.box = box{left: number(e, "x"), top: number(e, "y")}
				text.body = attr(e, "text-anchor") + "|" + attr(e, "transform") + "|"
			}
		case xml.CharData:
			if text != nil {
				text.body += string(e)
			}
		case xml.EndElement:
			if e.Name.Local == "text" {
				*text = measured(*text)
				text = nil
			}
		}
	}
}

var turnedAt = regexp.MustCompile(`^translate\(([0-9.-]+) ([0-9.-]+)\) rotate\(-90\)$`)

// measured works out the room of a text from its attributes.
func measured(t placedText) placedText {
	parts := strings.SplitN(t.body, "|", 3)
	at, transform, body := anchor(parts[0]), parts[1], parts[2]
	if at == "" {
		at = start
	}
	if m := turnedAt.FindStringSubmatch(transform); m != nil {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		half := advance(body) / 2
		return placedText{box{x - ascent, y - half, x + descent, y + half}, body}
	}
	return placedText{textBox(t.box.left, t.box.top, at, body), body}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func number(e xml.StartElement, name string) float64 {
	v, _ := strconv.ParseFloat(attr(e, name), 64)
	return v
}

var numbers = regexp.MustCompile(`-?[0-9.]+`)

// element notes one element of the drawing.
func (d *picture) element(e xml.StartElement) {
	if !elements[e.Name.Local] {
		d.faults = append(d.faults, "element "+e.Name.Local)
	}
	for _, a := range e.Attr {
		if !attributes[a.Name.Local] {
			d.faults = append(d.faults, "attribute "+a.Name.Local)
		}
		switch a.Name.Local {
		case "id":
			d.ids = append(d.ids, a.Value)
		case "class":
			d.classes = append(d.classes, strings.Fields(a.Value)...)
		case "href":
			d.links = append(d.links, a.Value)
		case "aria-labelledby":
			d.labelled = a.Value
		}
	}
	class := attr(e, "class")
	put := func(x, y float64) { d.places = append(d.places, point{x, y}) }
	name := func(x, y float64) { d.of[class] = append(d.of[class], point{x, y}) }
	switch e.Name.Local {
	case "svg":
		fmt.Sscanf(attr(e, "viewBox"), "0 0 %f %f", &d.width, &d.height)
	case "line":
		for _, end := range []string{"1", "2"} {
			put(number(e, "x"+end), number(e, "y"+end))
			name(number(e, "x"+end), number(e, "y"+end))
		}
	case "circle":
		put(number(e, "cx"), number(e, "cy"))
		name(number(e, "cx"), number(e, "cy"))
	case "rect":
		x, y, w, h := number(e, "x"), number(e, "y"), number(e, "width"), number(e, "height")
		put(x, y)
		put(x+w, y+h)
		name(x+w/2, y+h/2)
	case "path":
		found := numbers.FindAllString(attr(e, "d"), -1)
		for i := 0; i+1 < len(found); i += 2 {
			x, _ := strconv.ParseFloat(found[i], 64)
			y, _ := strconv.ParseFloat(found[i+1], 64)
			put(x, y)
			name(x, y)
		}
	}
}

// styled is every class that the style sheet has a rule for.
var styled = sync.OnceValue(func() map[string]bool {
	sheet, err := os.ReadFile("../../templates/chart.css")
	if err != nil {
		return nil // every class is then without a rule
	}
	rules := map[string]bool{}
	for _, m := range regexp.MustCompile(`\.(g-[a-z-]+)`).FindAllStringSubmatch(string(sheet), -1) {
		rules[m[1]] = true
	}
	return rules
})

// unstyled are classes that need no rule: plain text, and names in the colour of plain text.
var unstyled = words("g-text g-a-name g-key")

// look gives everything that is wrong with a figure: markup, identifiers, classes, size, text outside or over other text.
func look(f Figure) []string {
	all, err := drawingsOf(f.SVG)
	if err != nil {
		return []string{"not well formed: " + err.Error()}
	}
	rules := styled()
	var faults []string
	if len(all) != 2 || all[0].width != wide || all[1].width != narrow {
		faults = append(faults, "not one wide and one narrow drawing")
	}
	if len(f.SVG) > 400<<10 {
		faults = append(faults, fmt.Sprintf("%d bytes", len(f.SVG)))
	}
	seen := map[string]bool{}
	for _, d := range all {
		faults = append(faults, d.faults...)
		faults = append(faults, d.outside()...)
		faults = append(faults, d.overlaps()...)
		faults = append(faults, d.named(seen)...)
		for _, c := range d.classes {
			if !rules[c] && !unstyled[c] {
				faults = append(faults, "class without a rule: "+c)
			}
		}
	}
	return faults
}

// outside lists what leaves the drawing. Half a unit is the rounding of coordinates and widths.
func (d *picture) outside() []string {
	var faults []string
	if d.height < 40 || d.height > 1200 {
		faults = append(faults, fmt.Sprintf("height %.1f", d.height))
	}
	page := box{-0.5, -0.5, d.width + 0.5, d.height + 0.5}
	for _, t := range d.texts {
		if !t.box.within(page) {
			faults = append(faults, fmt.Sprintf("text outside %vx%v: %q at %v", d.width, d.height, t.body, t.box))
		}
	}
	for _, p := range d.places {
		if !(box{p.x, p.y, p.x, p.y}).within(page) {
			faults = append(faults, fmt.Sprintf("place outside %vx%v: %v", d.width, d.height, p))
		}
	}
	return faults
}

// overlaps lists texts that stand in each other.
func (d *picture) overlaps() []string {
	var faults []string
	for i, a := range d.texts {
		for _, b := range d.texts[i+1:] {
			if a.box.grown(-0.3).meets(b.box) {
				faults = append(faults, fmt.Sprintf("at width %v %q %v stands in %q %v", d.width, a.body, a.box, b.body, b.box))
			}
		}
	}
	return faults
}

// named checks that identifiers are single and that the drawing is named by its own.
func (d *picture) named(seen map[string]bool) []string {
	var faults []string
	for _, id := range d.ids {
		if seen[id] {
			faults = append(faults, "identifier twice: "+id)
		}
		seen[id] = true
	}
	for _, id := range strings.Fields(d.labelled) {
		if !seen[id] {
			faults = append(faults, "no such identifier: "+id)
		}
	}
	if len(strings.Fields(d.labelled)) != 2 {
		faults = append(faults, "not named by title and description: "+d.labelled)
	}
	return faults
}

// sound fails the test for everything that is wrong with a figure.
func sound(t testing.TB, name string, f Figure) {
	t.Helper()
	for i, fault := range look(f) {
		if i == 5 {
			t.Errorf("%s: and more", name)
			return
		}
		t.Errorf("%s: %s", name, fault)
	}
}
