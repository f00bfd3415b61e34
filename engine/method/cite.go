package method

import "unicode"

// Cite names work and edition of a sheet, with a clause where there is one. A numbered standard and its year are written
// with a colon, as standards bodies write them ("ISO 12215-5:2008"); other works and editions with a comma, and a year
// that the name of the work already ends with is not said twice.
func (s *Sheet) Cite(clause string) string {
	text := s.Work
	switch {
	case s.Edition == "" || ends(s.Work, s.Edition):
	case numbered(s.Work) && year(s.Edition):
		text += ":" + s.Edition
	default:
		text += ", " + s.Edition
	}
	if clause != "" {
		text += ", " + clause
	}
	return text
}

func ends(work, edition string) bool {
	return len(work) > len(edition) && work[len(work)-len(edition):] == edition
}

func year(edition string) bool {
	for _, r := range edition {
		if !unicode.IsDigit(r) {
			return false
		}
	}
	return len(edition) == 4
}

// numbered reports whether a work is the number of a standard: capitals, a space, digits, with parts behind hyphens.
func numbered(work string) bool {
	letters, digits := 0, 0
	for _, r := range work {
		switch {
		case unicode.IsUpper(r) && digits == 0, r == '/' && digits == 0:
			letters++
		case unicode.IsDigit(r):
			digits++
		case r != ' ' && r != '-':
			return false
		}
	}
	return letters > 0 && digits > 0
}
