package site

import (
	"context"
	"fmt"
	"path/filepath"

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
	Records         []CompareRow
	Results         []CompareRow
	Standings       []CompareRow
	Findings        []CompareRow
	Documents       []CompareRow
}

// CompareRow is one change.
type CompareRow struct {
	What, Words, Says string
	At                string
	Now               Standing // of a check
}

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
		for _, r := range g.Records {
			row.Records = append(row.Records, CompareRow{What: r.What, Words: r.Words(), At: r.At})
		}
		for _, r := range g.Results {
			row.Results = append(row.Results, CompareRow{What: r.What, Words: r.Words()})
		}
		for _, s := range g.Standings {
			one := CompareRow{What: s.Subject + ": " + s.Rule, Words: s.Words(), Says: s.Says}
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
