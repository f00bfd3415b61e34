package inspection

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// Result is what inspections and tests of tightness of one hull say.
type Result struct {
	Limits *Limits
	Judged []Judged // every imperfection, in the order of the record
	Leaks  []Leak   // every test of tightness, in the order of the record

	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Judged is one imperfection held against the level of its seam.
type Judged struct {
	Record  *record.Imperfection
	Look    *record.Inspection // nil where it names none that is on record
	Joint   *seam.Joint        // nil where it is on no map
	Level   string             // empty where none is on record
	Verdict Verdict
}

// Assess judges every imperfection and every test. pressure gives the design pressure of a panel in kN/m², where the
// structure was reckoned.
func Assess(m *seam.Map, limits *Limits, pressure func(panel string) (float64, bool)) Result {
	r := Result{Limits: limits}
	for i := range m.Hull.Imperfections {
		r.Judged = append(r.Judged, judge(m, limits, &m.Hull.Imperfections[i]))
	}
	for i := range m.Hull.LeakTests {
		leak := assessLeak(&m.Hull.LeakTests[i], pressure)
		r.Leaks = append(r.Leaks, leak)
		r.Checks = append(r.Checks, leak.checks()...)
		r.Assumptions = append(r.Assumptions, leak.assumes()...)
	}
	r.Findings = softLimits(r.Judged, limits)
	return r
}

func judge(m *seam.Map, limits *Limits, f *record.Imperfection) Judged {
	j := Judged{Record: f, Look: m.Inspections[f.Inspection.V]}
	flaw := Flaw{Imperfection: f.Number.V, Size: number(f.Size), Length: number(f.Length)}
	if f.Share.Set {
		flaw.Size = float64(f.Share.V)
	}
	if j.Look != nil {
		j.Joint, j.Level, flaw.Seen = m.JointOf(j.Look), j.Look.Level.V, seenBy(j.Look.Method.V)
	}
	dims := Weld{T: math.NaN(), S: math.NaN(), A: math.NaN(), B: number(f.Bead)}
	if j.Joint != nil {
		dims = weldOf(j.Joint.Record, dims.B)
		if j.Level == "" {
			j.Level = j.Joint.Record.Level.V
		}
	}
	if j.Level == "" {
		j.Verdict = Verdict{Standing: finding.NotShown, Allowed: math.NaN(), Says: "no quality level is on record for the inspection or the joint"}
		return j
	}
	j.Verdict = limits.Judge(flaw, j.Level, dims)
	return j
}

// weldOf gives the dimensions of a joint: t is the thinner plate; a butt weld goes through it.
func weldOf(j *record.Joint, bead float64) Weld {
	w := Weld{Fillet: j.Type.V != "butt", T: number(j.Thickness), S: math.NaN(), A: number(j.Throat), B: bead}
	if other := number(j.OtherThick); math.IsNaN(w.T) || other < w.T {
		w.T = other
	}
	if !w.Fillet {
		w.S = w.T
	}
	return w
}

func seenBy(method string) string {
	switch method {
	case "radiographic", "ultrasonic":
		return "inside"
	}
	return "surface"
}

func number[T ~float64](v record.Val[T]) float64 {
	if !v.Set {
		return math.NaN()
	}
	return float64(v.V)
}

// softLimits doubts in one sentence all judgements that rest on limits from memory.
func softLimits(all []Judged, limits *Limits) []finding.Finding {
	if limits == nil || limits.Held.Holds() {
		return nil
	}
	var places []finding.Place
	for _, j := range all {
		if j.Verdict.Row != nil && j.Verdict.Basis == finding.Recalled && len(places) < 3 {
			places = append(places, j.Record.At)
		}
	}
	if len(places) == 0 {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Doubt, Rule: "limits-recalled", Subject: "inspections", Places: places,
		Says:   "imperfections are judged by limits of " + limits.name() + " that nobody has held against the text of the standard",
		Settle: "hold the limits against the standard; sizes are kept as measured and are judged again",
	}}
}
