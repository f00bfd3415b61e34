package main

import (
	"fmt"
	"strings"

	"hullfile/engine/proof"
)

// proofs prints the table, one part a set.
func (s *screen) proofs(sheet proof.Sheet) {
	set := ""
	for _, c := range sheet.Cases {
		if c.Set != set {
			set = c.Set
			s.head("%s", c.Title)
		}
		s.proofCase(c)
	}
	s.line("")
	n := failed(sheet.Cases)
	s.paragraph("", fmt.Sprintf("%s: %d reproduced, %d not", count(len(sheet.Cases), "published value", "published values"), len(sheet.Cases)-n, n))
	s.untouched(sheet.Without)
}

func (s *screen) proofCase(c proof.Case) {
	word := "same"
	if !c.Pass {
		word = "DIFFERS"
	}
	got := strings.TrimSpace(fmt.Sprintf("%.6g %s", c.Got, c.Unit))
	if c.Fails != "" {
		got = c.Fails
	}
	s.paragraph(fmt.Sprintf("  %-8s", word), fmt.Sprintf("%s: printed %s, reckoned %s, allowed ± %.3g", c.Name, c.Printed, got, c.Tolerance))
}

// untouched names the formulas that no published value has been held against.
func (s *screen) untouched(all []proof.Untouched) {
	if len(all) == 0 {
		return
	}
	s.line("")
	s.head("%s no outside check:", count(len(all), "formula has", "formulas have"))
	for _, u := range all {
		s.paragraph("  ", fmt.Sprintf("%s, %s %s: %s (%s)", u.Method, u.Scope, u.Symbol, u.Name, u.Basis))
	}
}
