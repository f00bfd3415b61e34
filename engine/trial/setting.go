package trial

import (
	"cmp"
	"math"
	"slices"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// settings groups the runs of a trial by the name of their throttle setting and reduces each group. Inside a group the
// runs stay in the order of the record, which is the order in which they were made.
func settings(rec *record.Trial) []Setting {
	at := map[string]int{}
	var all []Setting
	for i := range rec.Runs {
		run := &rec.Runs[i]
		name := run.Setting.V
		if _, seen := at[name]; !seen {
			at[name] = len(all)
			all = append(all, Setting{Name: name})
		}
		s := &all[at[name]]
		s.Runs = append(s.Runs, taken(run))
	}
	for i := range all {
		all[i].average()
	}
	slices.SortStableFunc(all, func(a, b Setting) int { return cmp.Compare(a.order(), b.order()) })
	return all
}

// taken says whether a run takes part.
func taken(run *record.Run) Run {
	switch {
	case run.Left.V != "":
		return Run{Record: run, Why: run.Left.V}
	case !run.Speed.Set:
		return Run{Record: run, Why: "no speed written"}
	}
	return Run{Record: run, Used: true}
}

// average takes the means of the runs that take part.
func (s *Setting) average() {
	used := s.used()
	s.Used = len(used)
	speeds := gather(s, func(r *record.Run) record.Val[unit.Knot] { return r.Speed })
	s.RPM = plainMean(gather(s, func(r *record.Run) record.Val[unit.RPM] { return r.RPM }))
	s.Fuel = plainMean(gather(s, func(r *record.Run) record.Val[unit.LPerH] { return r.Fuel }))
	s.Trim = plainMean(gather(s, func(r *record.Run) record.Val[unit.Deg] { return r.Trim }))
	plain := plainMean(speeds)
	s.Simple = unit.Knot(plain.Value)
	s.Why = whyNotBothWays(s, used)
	s.OneWay = s.Why != "" && s.Used > 0
	if s.Why != "" {
		s.Interval.Why = s.Why
		return
	}
	mean, _ := MeanOfMeans(speeds)
	s.Speed = Mean{Value: mean, Spread: plain.Spread, N: plain.N, Has: true}
	s.Pairs = pairs(s, used)
	s.Interval = interval(doubleRuns(s.Pairs))
	s.stream()
}

// used gives the indices of the runs that take part.
func (s *Setting) used() []int {
	var used []int
	for i, r := range s.Runs {
		if r.Used {
			used = append(used, i)
		}
	}
	return used
}

// order is the speed by which settings are put in order; a setting without any comes last.
func (s *Setting) order() float64 {
	switch {
	case s.Speed.Has:
		return s.Speed.Value
	case s.Used > 0:
		return float64(s.Simple)
	}
	return math.Inf(1)
}

// gather collects one value of the runs that take part and have it.
func gather[T ~float64](s *Setting, of func(*record.Run) record.Val[T]) []float64 {
	var values []float64
	for _, r := range s.Runs {
		if v, ok := of(r.Record).Get(); ok && r.Used {
			values = append(values, float64(v))
		}
	}
	return values
}
