package chart

import (
	"hullfile/engine/record"
	"hullfile/engine/trial"
)

// quantity is one thing measured on trial: how it looks and how to get at it.
type quantity struct {
	name  string
	line  Class
	right bool
	mean  func(trial.Setting) (float64, bool)
	run   func(*record.Run) (float64, bool) // nil where single runs say nothing
}

// take adds the means and the single runs of some quantities over one other.
func (s *Spec) take(t trial.Trial, alongMean func(trial.Setting) (float64, bool), alongRun func(*record.Run) (float64, bool), all ...quantity) {
	for _, q := range all {
		mean := Line{Name: q.name, Class: q.line, Right: q.right}
		oneWay := Dots{Name: q.name, Class: OneWay, Right: q.right}
		full := Dots{Name: q.name, Class: meanOf(q.line), Right: q.right}
		for _, set := range t.Settings {
			x, hasX := alongMean(set)
			y, hasY := q.mean(set)
			if !hasX || !hasY {
				continue
			}
			mean.X, mean.Y = append(mean.X, x), append(mean.Y, y)
			dots := &full
			if set.OneWay {
				dots = &oneWay
			}
			dots.X, dots.Y = append(dots.X, x), append(dots.Y, y)
		}
		s.Lines = append(s.Lines, mean)
		s.Dots = append(s.Dots, full, oneWay)
		s.takeRuns(t, alongRun, q)
	}
	s.drop()
}

// takeRuns adds the single runs of one quantity.
func (s *Spec) takeRuns(t trial.Trial, along func(*record.Run) (float64, bool), q quantity) {
	if q.run == nil {
		return
	}
	used := Dots{Name: q.name + ", single runs", Class: Raw, Right: q.right}
	left := Dots{Name: q.name + ", left out", Class: LeftOut, Right: q.right}
	for _, set := range t.Settings {
		for _, r := range set.Runs {
			if r.Record == nil {
				continue
			}
			x, hasX := along(r.Record)
			y, hasY := q.run(r.Record)
			if !hasX || !hasY {
				continue
			}
			dots := &used
			if !r.Used {
				dots = &left
			}
			dots.X, dots.Y = append(dots.X, x), append(dots.Y, y)
		}
	}
	s.Dots = append(s.Dots, used, left)
}

// drop leaves out series without a point: here that is no fault, the trial did not measure it.
func (s *Spec) drop() {
	lines, dots := s.Lines[:0], s.Dots[:0]
	for _, l := range s.Lines {
		if len(l.X) > 0 {
			lines = append(lines, l)
		}
	}
	for _, d := range s.Dots {
		if len(d.X) > 0 {
			dots = append(dots, d)
		}
	}
	s.Lines, s.Dots = lines, dots
}
