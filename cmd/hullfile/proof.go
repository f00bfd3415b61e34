package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/proof"
)

func proofCommand(d *desk) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "proof",
		Short: "Run the published check values through this calculator and print the table.",
		Long: `Runs published worked examples and tables through this calculator, on this machine, and prints what was printed, ` +
			`what came out and where the value stands in print. Ends with 1 where one is not reproduced.`,
		Example: `  hullfile proof         the table
  hullfile proof --json  the same for a machine`,
		Args: atMost(0),
		RunE: func(*cobra.Command, []string) error { return prove(d, asJSON) },
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON document")
	return cmd
}

func prove(d *desk, asJSON bool) error {
	ref, err := engine.NewReference(content.Files, nil)
	if err != nil {
		return err
	}
	if asJSON {
		err = d.json(ref.Proofs)
	} else {
		d.out.proofs(ref.Proofs)
	}
	if err == nil && failed(ref.Proofs.Cases) > 0 {
		return errFindings
	}
	return err
}

func failed(cases []proof.Case) int {
	n := 0
	for _, c := range cases {
		if !c.Pass {
			n++
		}
	}
	return n
}

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
