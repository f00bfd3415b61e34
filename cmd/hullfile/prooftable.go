package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"hullfile/engine/finding"
	"hullfile/engine/proof"
)

// figuresWidth is what the columns of figures take of a line.
const figuresWidth = 36

// proofs prints the table, one part a set, with the source wherever it changes.
func (s *screen) proofs(sheet proof.Sheet) {
	set, source, why := "", "", ""
	for _, c := range sheet.Cases {
		if c.Set != set {
			set, source, why = c.Set, "", ""
			s.line("")
			s.head("%s", c.Title)
		}
		if c.Source != source {
			source = c.Source
			s.paragraph("  ", fmt.Sprintf("%s (%s)", c.Source, c.Basis))
			s.line("%-*s%8s %9s %8s", s.width-figuresWidth, "", "printed", "reckoned", "within ±")
		}
		s.proofCase(c)
		if c.Why != why && c.Why != "" {
			s.paragraph("          ", c.Why)
		}
		why = c.Why
	}
	s.line("")
	n := len(sheet.Failed())
	s.paragraph("", fmt.Sprintf("%s: %d reproduced, %d not (%s)", count(len(sheet.Cases), "check value", "check values"), len(sheet.Cases)-n, n, byBasis(sheet.Cases)))
	s.untouched(&sheet)
}

// byBasis counts the cases by how their value is known, because only a value read in print is an outside check.
func byBasis(cases []proof.Case) string {
	var parts []string
	for _, basis := range finding.Bases() {
		n := 0
		for _, c := range cases {
			if c.Basis == basis {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, basis))
		}
	}
	return strings.Join(parts, ", ")
}

// proofCase prints one line, more where the name is long, or where there is no number to show.
func (s *screen) proofCase(c proof.Case) {
	word := "same"
	if !c.Pass {
		word = "DIFFERS"
	}
	printed, called := c.Printed, c.Name
	if _, err := strconv.ParseFloat(printed, 64); err != nil {
		// The source prints a formula or a range; the column takes the number that it comes to.
		printed, called = strconv.FormatFloat(c.Want, 'g', 6, 64), c.Name+", printed "+c.Printed
	}
	figures := fmt.Sprintf("%8s %9s %8s  %s", printed, reckoned(c, printed), tolerance(c), c.Unit)
	room := s.width - 10 - max(figuresWidth, utf8.RuneCountInString(figures)+1) // for the name; a definition has many figures
	name := wrap(clean(called), room)
	for i, part := range name {
		first := "          "
		if i == 0 {
			first = fmt.Sprintf("  %-8s", word)
		}
		if i < len(name)-1 {
			s.line("%s%s", first, part)
			continue
		}
		gap := strings.Repeat(" ", max(0, room-utf8.RuneCountInString(part)))
		s.line("%s", strings.TrimRight(first+part+gap+figures, " "))
	}
	if c.Fails != "" {
		s.paragraph("          ", c.Fails)
	}
	if !c.Pass && c.Note != "" {
		s.paragraph("          ", c.Note)
	}
}

// reckoned gives the result to one place more than the source prints, so that a difference shows.
func reckoned(c proof.Case, printed string) string {
	if c.Fails != "" {
		return "none"
	}
	_, places, _ := strings.Cut(printed, ".")
	return strconv.FormatFloat(c.Got, 'f', len(places)+1, 64)
}

func tolerance(c proof.Case) string {
	if c.Tolerance == 0 {
		return "0"
	}
	return strconv.FormatFloat(c.Tolerance, 'g', 2+int(math.Max(0, math.Log10(c.Tolerance))), 64)
}

// untouched says how many formulas no published value has been held against, and why, by cause and by sheet with the
// symbols of each scope.
func (s *screen) untouched(sheet *proof.Sheet) {
	if len(sheet.Without) == 0 {
		return
	}
	s.line("")
	n := len(sheet.Without)
	s.paragraph("", fmt.Sprintf("%s no outside check, told once each they are %d; proof --json names them in words:",
		count(n, "formula has", "formulas have"), len(proof.Kinds(sheet.Without))))
	for _, t := range proof.TallyOf(sheet.Without) {
		s.paragraph("  ", fmt.Sprintf("%4d  %s", t.N, t.Cause))
	}
	for _, lack := range sheet.BySheet() {
		s.line("")
		s.paragraph("", fmt.Sprintf("%s, %d: %s", strings.TrimSuffix(lack.Method, ".toml"), len(lack.All), why(lack)))
		if lack.Reason.Closes != "" {
			s.paragraph("  ", "Would check them: "+lack.Reason.Closes)
		}
		s.symbolsWithout(lack.All)
	}
}

func why(lack proof.Lack) string {
	if lack.Reason.Says == "" {
		return "No reason is written."
	}
	return lack.Reason.Says
}

// symbolsWithout lists the symbols of one sheet, one paragraph a scope.
func (s *screen) symbolsWithout(all []proof.Untouched) {
	symbols := []string{}
	for i, u := range all {
		if !slices.Contains(symbols, u.Symbol) {
			symbols = append(symbols, u.Symbol)
		}
		if i+1 == len(all) || all[i+1].Scope != u.Scope {
			s.paragraph("  ", fmt.Sprintf("%s: %s", u.Scope, strings.Join(symbols, ", ")))
			symbols = nil
		}
	}
}
