package results

import (
	"hullfile/engine/capacity"
	"hullfile/engine/method"
)

// capacityResults gives every limit, which of them governs, and the steps of the sheets.
func capacityResults(r *capacity.Result) object {
	limits := []object{}
	for i := range r.Limits {
		l := &r.Limits[i]
		o := object{{"name", l.Name}, {"binds", !l.Info}, {"why", l.Why}, {"basis", l.Basis}, {"source", l.Source}, {"governs_load", i == r.Load && l.HasLoad}, {"governs_persons", i == r.Persons && l.HasPersons}}
		if l.HasLoad {
			o.add("load_kg", full(l.Load))
		}
		if l.HasPersons {
			o.add("persons", l.Persons)
		}
		limits = append(limits, o)
	}
	out := object{{"limits", limits}}
	for key, w := range map[string]*method.Working{"masses": r.Figures, "us_loading": r.Loading, "us_power": r.Power, "us_flotation": r.Flotation, "fr_undecked": r.France} {
		if w != nil {
			out.add(key, stepResults(w.Steps))
		}
	}
	return out
}
