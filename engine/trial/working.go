package trial

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// mostTerms is how many runs a line of working writes out; more are named by their number.
const mostTerms = 8

// Where the lines of working come from.
const (
	meansSource   = "mean of means: Strasser et al. 2015 (abstract read); weights own derivation"
	studentSource = "Student's t: NIST TN 1297 Table B.1"
	pitchSource   = "definition of pitch, inch and nautical mile"
	plainSource   = "definition"
)

// working gives the lines that were reckoned for a setting, in the order in which they rest on each other.
func (s *Setting) working(t *Trial) []Line {
	var lines []Line
	if s.Speed.Has {
		lines = append(lines, s.speedLine(), s.streamLine())
	} else if s.Used > 1 {
		lines = append(lines, s.simpleLine())
	}
	if s.Interval.Has {
		lines = append(lines, s.intervalLine())
	}
	lines = append(lines, s.meanLines()...)
	if s.PerMile.Has {
		lines = append(lines, Line{
			Name:   "fuel per nautical mile",
			Text:   fmt.Sprintf("%s l/h / %s kn", unit.Text(s.Fuel.Value, 1), unit.Text(s.Speed.Value, 2)),
			Result: unit.Text(s.PerMile.Value, 2) + " l/NM",
			Source: plainSource, Basis: finding.Derived,
		})
	}
	if s.Range.Has {
		lines = append(lines, Line{
			Name:   "range with the reserve kept back",
			Text:   fmt.Sprintf("%s l × (1 − %s %%) / %s l/NM", unit.Text(t.Usable, 0), unit.Text(t.Reserve, 0), unit.Text(s.PerMile.Value, 2)),
			Result: unit.Text(s.Range.Value, 0) + " NM",
			Source: plainSource, Basis: finding.Derived,
		})
	}
	if s.Slip.Has {
		lines = append(lines, s.slipLines(t)...)
	}
	if s.Depth.Has {
		lines = append(lines, s.depthLine(t))
	}
	return lines
}

// speedLine writes the mean of means out.
func (s *Setting) speedLine() Line {
	speeds := gather(s, func(r *record.Run) record.Val[unit.Knot] { return r.Speed })
	text := fmt.Sprintf("%d runs with binomial weights", len(speeds))
	if len(speeds) <= mostTerms {
		text = weighted(speeds)
	}
	return Line{Name: "mean of means", Text: text, Result: unit.Text(s.Speed.Value, 2) + " kn", Source: meansSource, Basis: finding.Derived}
}

// weighted writes (31.2 + 2 × 29.1 + 30.6) / 4.
func weighted(speeds []float64) string {
	terms := make([]string, len(speeds))
	for i, times := range binomialNumbers(len(speeds)) {
		terms[i] = unit.Text(speeds[i], 1)
		if times > 1 {
			terms[i] = fmt.Sprintf("%d × %s", times, terms[i])
		}
	}
	return fmt.Sprintf("(%s) / %d", strings.Join(terms, " + "), 1<<(len(speeds)-1))
}

// binomialNumbers gives C(n-1,k) for small n.
func binomialNumbers(n int) []int {
	row := make([]int, n)
	row[0] = 1
	for k := 1; k < n; k++ {
		row[k] = row[k-1] * (n - k) / k
	}
	return row
}

// streamLine writes the stream that the pairs agree with.
func (s *Setting) streamLine() Line {
	halves := s.streams()
	return Line{
		Name:   "stream along the course",
		Text:   fmt.Sprintf("%s, setting towards %s", listed("mean of ", halves, 2), heading(s.SetsTo)),
		Result: unit.Text(s.Current, 2) + " kn",
		Source: "half the difference of successive legs", Basis: finding.Derived,
	}
}

// simpleLine is the only speed of a setting that was run one way.
func (s *Setting) simpleLine() Line {
	speeds := gather(s, func(r *record.Run) record.Val[unit.Knot] { return r.Speed })
	return Line{
		Name: "plain mean, stream not removed", Text: listed("mean of ", speeds, 1),
		Result: unit.Text(s.Simple, 2) + " kn", Source: plainSource, Basis: finding.Derived,
	}
}

func (s *Setting) intervalLine() Line {
	return Line{
		Name:   "95 % interval of the mean",
		Text:   fmt.Sprintf("t %s for %d double runs, of their means", unit.Text(s.Interval.T, 2), s.Interval.N),
		Result: "± " + unit.Text(s.Interval.Half, 2) + " kn",
		Source: studentSource, Basis: finding.Read,
	}
}

// meanLines writes the plain means of engine speed, fuel and trim.
func (s *Setting) meanLines() []Line {
	var lines []Line
	add := func(name string, m Mean, values []float64, decimals int, sign string) {
		if m.N < 2 {
			return
		}
		lines = append(lines, Line{
			Name: name, Text: listed("mean of ", values, decimals),
			Result: unit.Text(m.Value, decimals) + sign, Source: plainSource, Basis: finding.Derived,
		})
	}
	add("engine speed", s.RPM, gather(s, func(r *record.Run) record.Val[unit.RPM] { return r.RPM }), 0, " rpm")
	add("fuel flow", s.Fuel, gather(s, func(r *record.Run) record.Val[unit.LPerH] { return r.Fuel }), 1, " l/h")
	add("running trim", s.Trim, gather(s, func(r *record.Run) record.Val[unit.Deg] { return r.Trim }), 1, "°")
	return lines
}

// slipLines writes the speed of the thread and the slip.
func (s *Setting) slipLines(t *Trial) []Line {
	pitch, gear := t.Record.Pitch.V, t.Record.Gear.V
	thread, _ := Slip(s.RPM.Value, float64(pitch), float64(gear), s.Speed.Value)
	return []Line{{
		Name:   "speed of the propeller's thread",
		Text:   fmt.Sprintf("%s rpm × %s in / (%s × %s)", unit.Text(s.RPM.Value, 0), unit.Text(pitch, 1), unit.Text(gear, 2), unit.Text(inchesPerMinute, 1)),
		Result: unit.Text(thread, 2) + " kn", Source: pitchSource, Basis: finding.Derived,
	}, {
		Name:   "slip",
		Text:   fmt.Sprintf("1 − %s kn / %s kn", unit.Text(s.Speed.Value, 2), unit.Text(thread, 2)),
		Result: unit.Text(s.Slip.Value*100, 1) + " %", Source: pitchSource, Basis: finding.Derived,
	}}
}

// listed writes "mean of 57.0 and 58.0", or how many there are.
func listed(before string, values []float64, decimals int) string {
	if len(values) > mostTerms {
		return fmt.Sprintf("%s%d values", before, len(values))
	}
	words := make([]string, len(values))
	for i, v := range values {
		words[i] = unit.Text(v, decimals)
	}
	last := len(words) - 1
	if last < 1 {
		return before + strings.Join(words, "")
	}
	return before + strings.Join(words[:last], ", ") + " and " + words[last]
}
