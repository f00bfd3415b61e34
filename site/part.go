package site

import (
	"html/template"

	"hullfile/engine/finding"
)

// The small structs that several pages share. A page holds ready strings, lists and links; templates only range over
// them. An empty Link.Href prints the text alone.

// Link is a way to another place of the file. To names the target in print: a section number or a file.
type Link struct {
	Text string
	Href string
	To   string
}

// Figure is a number or a word that may not be there; Why says why in the words of a person.
type Figure struct {
	Text string
	Why  string
}

// Standing is the outcome of checks as a page shows it: word, shape and class, so that colour never says it alone.
type Standing struct {
	Word  string
	Lead  string // the word at the beginning of a sentence
	Class string
	Shape string
}

func standing(s finding.Standing) Standing {
	switch s {
	case finding.Met:
		return Standing{"met", "Met", "met", "●"}
	case finding.Short:
		return Standing{"short", "Short", "short", "▼"}
	}
	return Standing{"not shown", "Not shown", "open", "○"}
}

// idle is what stands in the place of an outcome where nothing is asked.
var idle = Standing{"does not apply", "Does not apply", "soft", "–"}

// Kind is a kind of finding as a page shows it.
type Kind struct {
	Word   string
	Plural string
	Class  string
	Shape  string
}

func kind(k finding.Kind) Kind {
	switch k {
	case finding.Contradiction:
		return Kind{"contradiction", "contradictions", "short", "≠"}
	case finding.Shortfall:
		return Kind{"shortfall", "shortfalls", "short", "▼"}
	case finding.Gap:
		return Kind{"gap", "gaps", "open", "○"}
	}
	return Kind{"doubt", "doubts", "soft", "?"}
}

// Count is how many findings of one kind there are.
type Count struct {
	Kind Kind
	N    int
	Href string
}

// Fact is one line of a list of facts.
type Fact struct {
	Key   string // record key, for a fact out of a record
	Name  string
	Value Figure
	Unit  string
	Note  string
	Place Link
	Link  Link   // where the value itself is a way to somewhere
	names string // the subject that the record names: "person tarrow"
}

// Drawing is a picture made by our own renderer, with its caption and the figures in it.
type Drawing struct {
	SVG   template.HTML
	Title string
	Says  string // what follows from it
	Note  string
	Head  []string
	Rows  [][]string
}
