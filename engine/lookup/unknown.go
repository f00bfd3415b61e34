package lookup

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// tables are the records whose keys a sheet may ask for under the name of the table. "spot" is a fitting as the scope that
// judges it calls it.
func tables() map[string]any {
	return map[string]any{
		"boat": &record.Boat{}, "panel": &record.Panel{}, "member": &record.Member{}, "bracket": &record.Bracket{}, "spot": &record.Fitting{},
		"afloat": &record.Afloat{}, "capacity": &record.Capacity{}, "lines": &record.Lines{}, "plate": &record.Plate{}, "prediction": &record.Prediction{},
	}
}

// reckoned are names that look like keys of these tables and are worked out before a sheet is lookup.
var reckoned = map[string]bool{"boat.decking": true, "bracket.moment": true, "bracket.force": true}

// Unknown finds inputs that ask for what no record can have: a value under such a name would be missing for ever, and the
// page would tell the builder to write a key that is then refused. What is reckoned or comes out of a table of metal, such as
// "section.modulus_cm3", is not looked at here.
func Unknown(sheets []*method.Sheet) finding.Faults {
	var faults finding.Faults
	known := tables()
	for _, s := range sheets {
		for _, sc := range s.Scopes {
			for _, in := range sc.Inputs {
				kind, key, _ := strings.Cut(in.From, ".")
				entry, isTable := known[kind]
				if !isTable || reckoned[in.From] {
					continue
				}
				if _, has := record.Lookup(entry, key); !has {
					faults = append(faults, fault(sc, in, kind, key))
				}
			}
		}
	}
	return faults
}

func fault(sc *method.Scope, in *method.Input, kind, key string) finding.Fault {
	f := finding.Fault{Place: in.At, Key: sc.Name + "." + in.Symbol + ".from", Says: "no record has " + in.From}
	table := kind
	if kind == "spot" {
		table = "fitting"
	}
	for _, t := range record.Reference() {
		if t.Key != table {
			continue
		}
		if near, ok := nearest(key, t.Fields); ok {
			f.Hint = "did you mean " + kind + "." + near + "?"
			return f
		}
	}
	f.Hint = "`hullfile keys " + table + "` lists what there is"
	return f
}

// nearest is the key that was most likely meant: one that is longer by the unit or more words, or one that is mistyped.
func nearest(key string, fields []record.FieldDoc) (string, bool) {
	keys := make([]string, len(fields))
	for i := range fields {
		if keys[i] = fields[i].Key; strings.HasPrefix(keys[i], key+"_") {
			return keys[i], true
		}
	}
	return finding.Nearest(key, keys)
}
