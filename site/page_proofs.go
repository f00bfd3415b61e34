package site

import (
	"html/template"
	"math"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/proof"
	"hullfile/engine/unit"
)

// ProofsPage shows what the calculator gives for published values.
type ProofsPage struct {
	Cases   int
	Passed  int
	Read    int // printed by others and read in their texts
	Others  int // own arithmetic, practice and memory
	Failed  []CaseRow
	Sets    []ProofSet
	Lacks   int // formulas without an outside check
	Kinds   int // those that differ from each other
	Causes  []CauseRow
	BySheet []SheetLack
	Without []WithoutRow
	Caution template.HTML
}

// CauseRow counts the formulas that have no outside check for one cause.
type CauseRow struct {
	Cause string
	N     int
}

// SheetLack is a sheet with formulas that have no outside check: how many for which cause, why, and what would help.
type SheetLack struct {
	Method string
	N      int
	Causes []CauseRow
	Says   string
	Closes string
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
	Cause  string
}

func (l *leaf) proofsPage() (ProofsPage, error) {
	s := &l.dossier.Proofs
	p := ProofsPage{Cases: len(s.Cases), Caution: l.press.notes["proofs"]}
	ids := slugs{}
	at := map[string]int{}
	for i := range s.Cases {
		c := &s.Cases[i]
		row := caseRow(c)
		if c.Basis == finding.Read {
			p.Read++
		}
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
	p.Others = p.Cases - p.Read
	p.lacking(s)
	return p, nil
}

// lacking says what has no outside check: in one line by cause, by sheet with the reason, then formula by formula.
func (p *ProofsPage) lacking(s *proof.Sheet) {
	kinds := proof.Kinds(s.Without)
	p.Lacks, p.Kinds, p.Causes = len(s.Without), len(kinds), causeRows(s.Without)
	for _, lack := range s.BySheet() {
		p.BySheet = append(p.BySheet, SheetLack{strings.TrimSuffix(lack.Method, ".toml"), len(lack.All), causeRows(lack.All), lack.Reason.Says, lack.Reason.Closes})
	}
	for _, k := range kinds {
		p.Without = append(p.Without, WithoutRow{k.Method, strings.Join(k.Scopes, ", "), symbolMath(k.Symbol), k.Name, k.Clause, basis(k.Basis), string(k.Cause)})
	}
}

func causeRows(all []proof.Untouched) []CauseRow {
	var out []CauseRow
	for _, t := range proof.TallyOf(all) {
		out = append(out, CauseRow{string(t.Cause), t.N})
	}
	return out
}

func caseRow(c *proof.Case) CaseRow {
	return CaseRow{
		Set: c.Title, Name: c.Name, Inputs: inputsBeside(c.Name, c.Inputs), Unit: c.Unit, Printed: c.Printed, Got: has(c.Fails == "", gotText(c), c.Fails),
		Tolerance: tolerance(c.Tolerance), Why: c.Why, Pass: c.Pass, Note: c.Note,
	}
}

// gotText gives the reckoned value with one decimal more than the source prints, so that the difference can be seen; where it
// prints a formula, words or another unit, with one more than the value that they ask for, or than the tolerance where the
// difference uses it.
func gotText(c *proof.Case) string {
	if n, plain := decimalsOf(c.Printed); plain {
		return unit.Text(c.Got, min(n+1, 9))
	}
	n, _ := decimalsOf(strconv.FormatFloat(c.Want, 'f', -1, 64))
	fine := max(0, int(math.Ceil(-math.Log10(max(c.Tolerance, 1e-9))))+1)
	if n++; n > fine || math.Abs(c.Got-c.Want) > c.Tolerance/20 {
		n = fine
	}
	return unit.Text(c.Got, min(n, 9))
}

func tolerance(v float64) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		short = v
	}
	return "± " + strconv.FormatFloat(short, 'f', -1, 64)
}

var keysInWords = strings.NewReplacer(".", ", ", "_", " ")

// inputsBeside gives what went into a case, unless its name says the same.
func inputsBeside(name, inputs string) Prose {
	if keysInWords.Replace(inputs) == name {
		return ""
	}
	return Prose(inputs)
}
