package main

import (
	"strings"

	"hullfile/engine/record"
)

// tables lists all tables of the records, by the files in which they stand.
func (s *screen) tables(all []record.TableDoc) {
	file := ""
	for i, t := range all {
		if t.File != file {
			if i > 0 {
				s.line("")
			}
			s.head("%s", t.File)
			file = t.File
		}
		if t.Heading == "" {
			s.paragraph("  at the top: ", t.Doc)
			continue
		}
		s.line("  %s", t.Heading)
		s.paragraph("      ", joinedBy("; ", t.Doc, orCSV(t)))
	}
}

// table prints one table with all its keys.
func (s *screen) table(t record.TableDoc) {
	s.head("%s", whereIs(t))
	s.paragraph("", joinedBy("; ", t.Doc, orCSV(t)))
	for _, f := range t.Fields {
		s.key(f)
	}
	if t.CSV != "" {
		s.paragraph("", "Columns of "+t.CSV+": "+strings.Join(t.Columns, ", "))
	}
}

// whereIs names a table with its file.
func whereIs(t record.TableDoc) string {
	if t.Heading == "" {
		return "the top of " + t.File
	}
	return t.Heading + " of " + t.File
}

func orCSV(t record.TableDoc) string {
	if t.CSV == "" {
		return ""
	}
	return "may stand in " + t.CSV + " instead"
}

// key prints one key: what it means, then what it takes.
func (s *screen) key(f record.FieldDoc) {
	name := f.Key
	if f.Required {
		name += " (must be written)"
	}
	s.line("  %s", name)
	if f.Doc != "" {
		s.paragraph("      ", f.Doc)
	}
	s.paragraph("      ", joinedBy("; ", takenBy(f)...))
}

// takenBy says what may stand at a key.
func takenBy(f record.FieldDoc) []string {
	takes := f.Takes
	if f.InWords != "" {
		takes += ", " + f.InWords
	}
	return []string{takes, f.Range, worded("usually ", f.Usual), worded("one of ", strings.Join(f.Words, ", ")), worded("the name of one ", f.Names), worded("only in ", f.Only), worded("for instance ", f.Example)}
}

// keysAbout prints the keys of a table that speak of a word, and counts them.
func (s *screen) keysAbout(t record.TableDoc, word string) int {
	found := 0
	for _, f := range t.Fields {
		if !strings.Contains(strings.ToLower(f.Key+" "+f.Doc), word) {
			continue
		}
		if found == 0 {
			s.head("%s", whereIs(t))
		}
		s.key(f)
		found++
	}
	return found
}

// worded puts words before a text that is there.
func worded(before, text string) string {
	if text == "" {
		return ""
	}
	return before + text
}

// joinedBy puts together the texts that are not empty.
func joinedBy(between string, all ...string) string {
	var there []string
	for _, text := range all {
		if text != "" {
			there = append(there, text)
		}
	}
	return strings.Join(there, between)
}
