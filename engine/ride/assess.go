package ride

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"sort"

	"hullfile/engine/fatigue"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Input is what the records are reduced with.
type Input struct {
	Hull   *record.Hull
	Root   *os.Root          // the yard folder
	Paths  map[string]string // documents that are there: path relative to the yard folder, by key
	Design float64           // design acceleration of the structure in g, 0 where there is none
	At     float64           // where the centre of gravity lies, m forward of the transom; NaN where not known
}

// Assess reduces every acceleration record of the hull. A log that cannot be used gives a gap and no figure.
func Assess(in Input) Result {
	var r Result
	for i := range in.Hull.Rides {
		one := in.reduce(&in.Hull.Rides[i])
		one.Design = in.Design
		r.Checks = append(r.Checks, one.check())
		r.Findings = append(r.Findings, in.findings(&one)...)
		if one.Why == "" && !one.Record.Filter.Set {
			r.Assumptions = append(r.Assumptions, finding.Assumption{Subject: one.subject(),
				Says:   fmt.Sprintf("the record is filtered at %s Hz, which leaves the motion of the boat and takes out that of the plate", unit.Plain(Standard().Filter)),
				Settle: "write ride." + one.Record.ID + ".filter_hz", Basis: finding.Recalled})
		}
		r.Rides = append(r.Rides, one)
	}
	return r
}

func (r *Ride) subject() string { return "ride " + r.Record.ID }

// reduce reads one log and finds its peaks.
func (in *Input) reduce(rec *record.Ride) Ride {
	r := Ride{Record: rec}
	log, err := in.read(rec)
	if err != nil {
		r.Why = err.Error()
		return r
	}
	rule := Standard()
	if rec.Filter.Set {
		rule.Filter = float64(rec.Filter.V)
	}
	peaks, work, err := find(Record{Rate: float64(rec.Rate.V), Values: log.Values}, rule)
	log.Values = nil
	r.Log = log
	if err != nil {
		r.Why = err.Error()
		return r
	}
	r.Peaks = peaks
	r.Third, r.Tenth, r.Hundredth = peaks.mean(3), peaks.mean(10), peaks.mean(100)
	if r.Tenth.Has {
		r.Error = Sampling(len(peaks.Sizes), 10)
		r.Departs, r.HasDeparts = peaks.Departure(10)
	}
	r.Cycles = counted(work)
	return r
}

// hundredthLeast is the fewest peaks of which a hundredth is one whole peak.
const hundredthLeast = 100

func (p Peaks) mean(n int) Mean {
	if n == 100 && len(p.Sizes) < hundredthLeast {
		return Mean{}
	}
	g, k, ok := p.Highest(n)
	return Mean{g, k, ok}
}

// read opens the log, which is one of the documents.
func (in *Input) read(rec *record.Ride) (Log, error) {
	path, ok := in.Paths[rec.Document.V]
	if !ok || in.Root == nil {
		return Log{}, fmt.Errorf("the log %s is not there", rec.Document.V)
	}
	f, err := in.Root.Open(path)
	if err != nil {
		var p *fs.PathError
		if errors.As(err, &p) {
			err = p.Err
		}
		return Log{}, fmt.Errorf("the log cannot be opened: %w", err)
	}
	defer f.Close()
	col := Column{Name: rec.Column.V, G: 1}
	if rec.Unit.V == "m/s2" {
		col.G = 1 / standardGravity
	}
	return ReadCSV(f, col)
}

// bin is the width in g into which ranges are gathered; each counts as the upper end of its bin.
const bin = 0.02

// counted counts the ranges of a history by rainflow and gathers them by size, smallest first. A range is taken as the
// upper end of its bin, so that the sum of damage is never less than that of the ranges themselves.
func counted(history []float64) []fatigue.Cycle {
	counts := map[int]float64{}
	c := fatigue.NewCounter(func(k fatigue.Cycle) { counts[int(math.Ceil(k.Range/bin-1e-9))] += k.Count })
	for _, v := range history {
		if c.Add(v) != nil {
			return nil
		}
	}
	c.End()
	out := make([]fatigue.Cycle, 0, len(counts))
	for n, count := range counts {
		out = append(out, fatigue.Cycle{Range: float64(n) * bin, Count: count})
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Range < out[j].Range })
	return out
}
