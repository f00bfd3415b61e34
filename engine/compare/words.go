package compare

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hullfile/engine/unit"
)

// mostWords is the length beyond which a text is cut in words; the JSON holds all of it.
const mostWords = 300

// Name says which file a side is, e.g. "HL74-012, issue 3 of 20 March 2026".
func (h Head) Name() string {
	switch {
	case h.Issue > 0 && h.Date != "":
		return fmt.Sprintf("%s, issue %d of %s", h.Hull, h.Issue, unit.Day(h.Date))
	case h.Issue > 0:
		return fmt.Sprintf("%s, issue %d", h.Hull, h.Issue)
	}
	return h.Hull
}

// Says counts what changed, in one sentence.
func (c *Comparison) Says() string {
	if !c.Counts.Any() {
		return "Nothing changed: records, results, standings, findings and documents are the same."
	}
	n := c.Counts
	var parts []string
	for _, p := range []struct {
		n         int
		one, many string
	}{{n.Records, "record", "records"}, {n.Results, "result", "results"}, {n.Standings, "standing", "standings"}, {n.Findings, "finding", "findings"}, {n.Documents, "document", "documents"}} {
		if p.n == 1 {
			parts = append(parts, "1 "+p.one)
		} else if p.n > 1 {
			parts = append(parts, strconv.Itoa(p.n)+" "+p.many)
		}
	}
	text := strings.Join(parts, ", ")
	if i := strings.LastIndex(text, ", "); i >= 0 {
		text = text[:i] + " and" + text[i+1:]
	}
	text += " changed"
	if c.Old.Standing != c.New.Standing {
		text += "; the file stood " + c.Old.Standing + " and stands " + c.New.Standing
	}
	return text + "."
}

// Words says what a change is: "8 to 6 mm, 25 % less".
func (c Change) Words() string {
	switch c.How {
	case Added:
		return "new: " + number(c.New, c.Unit)
	case Gone:
		return "gone: " + number(c.Old, c.Unit)
	}
	if c.Old == "" {
		return cut(c.New)
	}
	if c.By == nil {
		return "before: " + cut(c.Old) + "; now: " + cut(c.New)
	}
	text := shown(c.Old) + " to " + number(c.New, c.Unit)
	if c.Percent == nil || math.Abs(*c.Percent) < 0.05 {
		return text + ", by " + signed(*c.By)
	}
	if *c.Percent < 0 {
		return text + ", " + size(-*c.Percent) + " % less"
	}
	return text + ", " + size(*c.Percent) + " % more"
}

// size writes a percentage with two figures, or as a whole number.
func size(v float64) string {
	if v >= 10 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', 1, 64)
}

func signed(v float64) string {
	if v > 0 {
		return "+" + short(v)
	}
	return short(v)
}

func number(text, unit string) string {
	if text = shown(text); unit != "" {
		return text + " " + unit
	}
	return text
}

// shown rounds a number to six figures for reading.
func shown(text string) string {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Trim(text, "0123456789.+-e") != "" || math.Abs(v) >= 1e7 {
		return cut(text)
	}
	return strconv.FormatFloat(v, 'g', 6, 64)
}

func cut(text string) string {
	if runes := []rune(text); len(runes) > mostWords {
		return string(runes[:mostWords]) + " …"
	}
	return text
}

// Words says how a check came out before and now.
func (s Standing) Words() string {
	switch {
	case s.Old == "":
		return "new: " + s.New
	case s.New == "":
		return "asked no more, was " + s.Old
	}
	return s.Old + " to " + s.New
}

// Words says what became of a finding.
func (t Told) Words() string {
	switch t.How {
	case Added:
		return "new " + t.Kind + ": " + t.New
	case Gone:
		return t.Kind + " gone: " + t.Old
	}
	return t.Kind + " reads now: " + t.New
}

// Words says what became of a paper.
func (p Paper) Words() string {
	switch p.How {
	case Added:
		return "new: " + p.Says
	case Gone:
		return "gone: " + p.Says
	}
	return p.Says
}
