package main

import (
	"slices"

	"hullfile/engine/finding"
)

// told is one finding as the terminal tells it: with how many checks say the same.
type told struct {
	finding.Finding
	times int
}

// toldOnce takes findings together that say the same of the same thing, at the place of the first: a builder mends it once.
// The places are those of all, and the longest advice stands for the others.
func toldOnce(all []finding.Finding) []told {
	type about struct{ subject, says string }
	at := map[about]int{}
	var out []told
	for _, f := range all {
		key := about{f.Subject, f.Says}
		i, before := at[key]
		if !before {
			at[key] = len(out)
			f.Places = slices.Clone(f.Places)
			out = append(out, told{f, 1})
			continue
		}
		out[i].times++
		for _, p := range f.Places {
			if !slices.Contains(out[i].Places, p) {
				out[i].Places = append(out[i].Places, p)
			}
		}
		if len(f.Settle) > len(out[i].Settle) {
			out[i].Settle = f.Settle
		}
	}
	return out
}
