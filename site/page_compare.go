package site

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"hullfile/engine/compare"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// ComparePage shows what changed between two files, by what a surveyor must look at again.
type ComparePage struct {
	Old, New string
	Says     string
	Groups   []CompareGroup
}

// CompareGroup is one part of the file.
type CompareGroup struct {
	ID, Name, Again string
	Met             string // what was met before, or not asked, and is not met now
	Outcomes        int
	Counted         string // things of the records by table
	Long            bool   // more rows of records than are read through
	Records         []CompareRow
	Results         []CompareRow
	Standings       []CompareRow
	Findings        []CompareRow
	Documents       []CompareRow
}

// CompareRow is one change.
type CompareRow struct {
	What, Words, Says string
	At, Of            string
	Now               Standing // of a check
}

// fewRows is how many rows of a table a reader goes through line by line; more are folded.
const fewRows = 12

// comparePage is the name of the page.
const comparePage = "compare.html"

// Compared writes a comparison as a page into a folder of its own, and gives the path of the page.
// An error is one of writing.
func Compared(ctx context.Context, c *compare.Comparison, out, version string) (string, error) {
	press, err := newPress(Job{Yard: &record.Yard{}, Version: version})
	if err != nil {
		return "", err
	}
	f, err := newFolder(ctx, out)
	if err != nil {
		return "", fmt.Errorf("the comparison could not be written: %w", err)
	}
	defer f.close()
	r := &register{press: press, folder: f, block: Block{Builder: c.New.Builder, Invented: c.New.Invented || c.Old.Invented}}
	if err := press.assets(f, c.New.Name(), "against "+c.Old.Name()); err != nil {
		return "", fmt.Errorf("the comparison could not be written; choose an empty folder: %w", err)
	}
	title := c.Old.Name() + " and " + c.New.Name()
	if err := r.print("compare", comparePage, Frame{Title: title, Heading: "What changed", Version: version}, compareBody(c)); err != nil {
		return "", err
	}
	return filepath.Join(out, comparePage), nil
}

func compareBody(c *compare.Comparison) ComparePage {
	p := ComparePage{Old: c.Old.Name(), New: c.New.Name(), Says: c.Says()}
	for i := range c.Groups {
		g := &c.Groups[i]
		row := CompareGroup{ID: g.Key, Name: g.Name, Again: capital(g.Again) + "."}
		row.Met, row.Outcomes, row.Counted = g.Met(), len(g.Standings), g.Counted()
		for _, t := range g.Things() {
			what := t.What
			if len(t.Changes) == 1 {
				what = t.Changes[0].What
			}
			row.Records = append(row.Records, CompareRow{What: what, Words: t.Words(), At: t.Changes[0].At})
		}
		row.Long = len(row.Records) > fewRows
		for _, r := range g.Results {
			row.Results = append(row.Results, CompareRow{What: r.What, Words: r.Words()})
		}
		for _, s := range g.Outcomes() {
			one := CompareRow{What: s.Rule, Words: s.Words(), Says: s.Says, Of: strings.Join(s.Subjects, ", ")}
			if len(s.Subjects) > 1 {
				one.Says = plural(len(s.Subjects), "check", "checks") + "; the first: " + s.Says
			}
			if s.New != "" {
				one.Now = standing(finding.Standing(s.New))
			}
			row.Standings = append(row.Standings, one)
		}
		for _, t := range g.Findings {
			row.Findings = append(row.Findings, CompareRow{What: t.Subject, Words: t.Words()})
		}
		for _, d := range g.Documents {
			row.Documents = append(row.Documents, CompareRow{What: d.Title, Words: d.Words(), Says: d.Key})
		}
		p.Groups = append(p.Groups, row)
	}
	return p
}
