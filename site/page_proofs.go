package site

import (
	"html/template"
	"strconv"
	"strings"

	"hullfile/engine/proof"
	"hullfile/engine/unit"
)

// ProofsPage shows what the calculator gives for published values.
type ProofsPage struct {
	Cases   int
	Passed  int
	Failed  []CaseRow
	Sets    []ProofSet
	Without []WithoutRow
	Caution template.HTML
}

// ProofSet is the cases of one source.
type ProofSet struct {
	ID     string
	Title  string
	Source string
	Basis  Basis
	Rows   []CaseRow
}

// CaseRow is one published value and what came out.
type CaseRow struct {
	Set       string
	Name      string
	Inputs    Prose
	Unit      string
	Printed   string
	Got       Figure
	Tolerance string
	Why       string
	Pass      bool
	Note      string
}

// WithoutRow is a formula that no published value touches.
type WithoutRow struct {
	Method string
	Scope  string
	Symbol template.HTML
	Name   string
	Clause string
	Basis  Basis
}

func (l *leaf) proofsPage() (ProofsPage, error) {
	s := &l.dossier.Proofs
	p := ProofsPage{Cases: len(s.Cases), Caution: l.press.notes["proofs"]}
	ids := slugs{}
	at := map[string]int{}
	for i := range s.Cases {
		c := &s.Cases[i]
		row := caseRow(c)
		if c.Pass {
			p.Passed++
		} else {
			p.Failed = append(p.Failed, row)
		}
		key := c.Set + "\x00" + c.Source
		n, known := at[key]
		if !known {
			n = len(p.Sets)
			at[key] = n
			p.Sets = append(p.Sets, ProofSet{ID: ids.take("set-" + c.Set), Title: c.Title, Source: c.Source, Basis: basis(c.Basis)})
		}
		p.Sets[n].Rows = append(p.Sets[n].Rows, row)
	}
	for _, u := range s.Without {
		p.Without = append(p.Without, WithoutRow{u.Method, u.Scope, symbolMath(u.Symbol), u.Name, u.Clause, basis(u.Basis)})
	}
	return p, nil
}

func caseRow(c *proof.Case) CaseRow {
	return CaseRow{
		Set: c.Title, Name: c.Name, Inputs: inputsBeside(c.Name, c.Inputs), Unit: c.Unit, Printed: c.Printed, Got: has(c.Fails == "", gotText(c), c.Fails),
		Tolerance: tolerance(c.Tolerance), Why: c.Why, Pass: c.Pass, Note: c.Note,
	}
}

// gotText gives the reckoned value with one decimal more than the source prints, so that the difference can be seen.
func gotText(c *proof.Case) string {
	_, part, has := strings.Cut(c.Printed, ".")
	n := 0
	for has && n < len(part) && part[n] >= '0' && part[n] <= '9' {
		n++
	}
	return unit.Text(c.Got, min(n+1, 9))
}

func tolerance(v float64) string { return "± " + strconv.FormatFloat(v, 'g', 3, 64) }

var keysInWords = strings.NewReplacer(".", ", ", "_", " ")

// inputsBeside gives what went into a case, unless its name says the same.
func inputsBeside(name, inputs string) Prose {
	if keysInWords.Replace(inputs) == name {
		return ""
	}
	return Prose(inputs)
}
