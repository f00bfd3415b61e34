package record

import "strings"

// otherWords are words of the trade and of other papers for what a key means here. Several keys stand in the order in which they are looked
// for, because not every table has each.
var otherWords = map[string]string{
	"wps": "procedure", "pwps": "procedure", "pqr": "tests", "wpqr": "tests", "wpar": "tests",
	"heat": "cast lot", "heat_number": "cast lot", "heat_no": "cast lot", "melt": "cast lot", "charge": "cast lot", "batch": "batch lot", "lot_no": "lot",
	"mtc": "certificate", "cert": "certificate", "mill_certificate": "certificate", "certificate_no": "certificate number",
	"grade": "alloy", "material": "alloy", "temper": "alloy", "wire": "filler", "electrode": "filler", "rod": "filler", "shielding_gas": "gas",
	"operator": "welder", "stamp": "welder", "inspector": "by", "examiner": "by", "ndt": "method", "seam": "joint", "weld_no": "joint", "weld_number": "joint",
	"qty": "count pieces", "quantity": "count pieces", "pcs": "count pieces", "off": "count pieces", "description": "name title where", "remarks": "note", "comment": "note",
	"loa": "length_overall_m", "lwl": "length_waterline_m", "boa": "beam_hull_m", "draft": "draught_m", "displacement": "loaded_mass_kg", "passengers": "persons", "crew": "persons",
	"weight": "mass_kg", "lcg": "x_m", "vcg": "z_m", "kg": "z_m", "tcg": "y_m", "rpm": "engine_rpm", "course": "heading_deg", "sog": "speed_kn",
}

// otherWord finds the field that a word of the trade means in this table, nil where there is none.
func (t *table) otherWord(name string) *field {
	low := strings.NewReplacer(" ", "_", "-", "_", ".", "").Replace(strings.ToLower(strings.TrimSpace(name)))
	for key := range strings.FieldsSeq(otherWords[low]) {
		if f := t.byKey[key]; f != nil {
			return f
		}
	}
	return nil
}
