package site

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// fields gives the values of one record as facts, in the order in which its struct declares them: the name is the key
// without its unit, the note what the record says it is. Values that nobody wrote are listed too, as not recorded.
// Keys in skip are left out.
func (l *leaf) fields(rec any, skip ...string) []Fact { return l.fieldsOf(rec, false, skip) }

// fieldsWritten gives those that somebody wrote.
func (l *leaf) fieldsWritten(rec any, skip ...string) []Fact { return l.fieldsOf(rec, true, skip) }

func (l *leaf) fieldsOf(rec any, written bool, skip []string) []Fact {
	v := reflect.Indirect(reflect.ValueOf(rec))
	names := l.press.fieldNames(v.Type())
	room := len(names)
	for i := range names {
		if written && !v.Field(names[i].index).Field(valueSet).Bool() {
			room--
		}
	}
	out := make([]Fact, 0, room)
	for i := range names {
		n := &names[i]
		val := v.Field(n.index)
		set := val.Field(valueSet).Bool()
		if written && !set || slices.Contains(skip, n.key) {
			continue
		}
		fact := Fact{Key: n.key, Name: n.name, Unit: n.sign, Note: n.note, Value: Figure{Why: "not recorded"}}
		if set {
			fact.Value = Figure{Text: wordsOf(val.Field(valueV), n.sign)}
			l.name(&fact, n.ref)
			fact.Place = l.place(val.Field(valueAt).Interface().(finding.Place))
		} else {
			fact.Unit = ""
		}
		if written && fact.Value.Text == "" {
			continue
		}
		out = append(out, fact)
	}
	return out
}

// fieldName is what a value of a record is called, the same in all records of its kind.
type fieldName struct {
	index           int // in the struct
	key, name, sign string
	note, ref       string
}

// fieldNames names the values of a kind of record, in the order of its struct.
func (p *press) fieldNames(t reflect.Type) []fieldName {
	names, _ := get(&p.cache, t, func() ([]fieldName, error) { // never fails
		var out []fieldName
		for i := range t.NumField() {
			f := t.Field(i)
			key := f.Tag.Get("toml")
			if key == "" || !isValue(f.Type) {
				continue
			}
			quantity, _ := unit.Of(f.Type.Field(valueV).Type.Name())
			name := label(key, quantity.Suffix)
			if slices.Contains(positions, key) {
				name, _, _ = strings.Cut(f.Tag.Get("doc"), ";") // measured from elsewhere in each kind of record
			}
			out = append(out, fieldName{i, key, name, quantity.Sign, f.Tag.Get("doc"), f.Tag.Get("ref")})
		}
		return out, nil
	})
	return names
}

// positions are keys of which only the record says from where they are measured.
var positions = []string{"x_m", "y_m", "z_m"}

// name puts the name of a person or an instrument in place of the key by which a record names it.
func (l *leaf) name(fact *Fact, kind string) {
	switch kind {
	case "person", "instrument", "document":
		fact.names = kind + " " + fact.Value.Text
		fact.Value.Text = l.nameOf(kind, fact.Value.Text)
	}
}

// The fields of record.Val, by their index; a test holds them to the type.
const (
	valueV = iota
	valueSet
	valueAt
)

// isValue reports whether a field of a record is a single value and not a table.
func isValue(t reflect.Type) bool {
	return t.Kind() == reflect.Struct && t.NumField() > valueAt && t.Field(valueSet).Name == "Set"
}

// onlyWritten leaves the the facts that somebody wrote.
func onlyWritten(all []Fact) []Fact {
	var out []Fact
	for _, f := range all {
		if f.Value.Text != "" {
			out = append(out, f)
		}
	}
	return out
}

// labels names the keys whose words alone would not be understood.
var labels = map[string]string{
	"length_overall_m": "length over all", "length_hull_m": "length of hull", "length_waterline_m": "length of waterline", "beam_hull_m": "beam of hull",
	"beam_chine_m": "beam between chines", "fuel_usable_l": "fuel that can be used", "fuel_tank_l": "fuel tanks",
	"hin":        "hull identification number",
	"hull_top_m": "edge of the hull above the loaded waterline", "by": "by", "reason": "why this issue was made", "number": "number of the issue",
	"date": "date", "load_aboard": "load on board", "ashore": "not on board", "structure": "method sheet for the structure", "maker_code": "maker's code",

	"thickness_from_mm": "thinnest plate", "thickness_to_mm": "thickest plate", "throat_from_mm": "smallest throat", "throat_to_mm": "largest throat",
	"current_from_amp": "least current", "current_to_amp": "greatest current", "voltage_from_volt": "least arc voltage", "voltage_to_volt": "greatest arc voltage",
	"speed_from_mm_min": "least travel speed", "speed_to_mm_min": "greatest travel speed", "wire_feed_from_m_min": "least wire feed", "wire_feed_to_m_min": "greatest wire feed",
	"preheat_most_c": "highest preheat", "interpass_most_c": "highest temperature between runs", "clean_within_h": "welded at most, after cleaning",
	"groups": "material groups", "weld_type": "kind of weld", "current_type": "kind of current", "layers": "runs", "remnant_m2": "still in store",
	"elongation_on": "elongation over", "mass_loss_edition": "edition of ASTM G67", "mass_loss_acid": "acid of that test, mass per cent",
	"exfoliation_edition": "edition of ASTM G66", "open_life_days": "days that an opened pack may be used",
	"smallest_mm": "smallest crack that would be found", "cleaned": "paint, dirt and grease taken off", "wave_by": "wave height known by",
	"gap_s": "longest time without a sample", "rate_hz": "samples a second", "filter_hz": "filter laid over it", "utc_offset_h": "clock ahead of UTC",
	"weights_kg": "test weights and people", "weights_x_m": "their centre, forward of the transom", "weights_z_m": "their centre, above the base line",
	"from_x_m": "aft end, forward of the transom", "from_girth_m": "aft end, along the skin from the keel", "to_x_m": "fore end, forward of the transom",
	"to_girth_m": "fore end, along the skin from the keel", "other_thickness_mm": "thickness of the other part",
	"highest_kpa": "highest pressure", "start_kpa": "pressure at the start", "end_kpa": "pressure at the end", "hold_min": "held for", "start_c": "air at the start",
	"end_c": "air at the end", "nozzle_kpa": "pressure at the nozzle", "nozzle_mm": "bore of the nozzle", "nozzle_from_m": "nozzle held at",
	"reserve_percent": "part of the fuel kept back",
}

// label turns a record key into words: short_side_mm is "short side".
func label(key, suffix string) string {
	if words, named := labels[key]; named {
		return words
	}
	if suffix != "" {
		key = strings.TrimSuffix(key, "_"+suffix)
	}
	return strings.ReplaceAll(key, "_", " ")
}

// wordsOf gives one recorded value as text.
func wordsOf(v reflect.Value, sign string) string {
	switch v.Kind() {
	case reflect.Float64:
		return written(v.Float(), sign)
	case reflect.Int:
		return strconv.FormatInt(v.Int(), 10)
	case reflect.Bool:
		if v.Bool() {
			return "yes"
		}
		return "no"
	case reflect.String:
		return v.String()
	case reflect.Slice:
		parts := make([]string, v.Len())
		for i := range parts {
			parts[i] = wordsOf(v.Index(i), sign)
		}
		return strings.Join(parts, ", ")
	}
	if d, ok := v.Interface().(record.Date); ok {
		return d.String()
	}
	return ""
}

// word gives a recorded text as a figure.
func word(v record.Val[string]) Figure { return has(v.V != "", v.V, "not recorded") }

// day gives a recorded date as a sentence or a fact says it.
func day(v record.Val[record.Date]) Figure { return has(v.Set, v.V.String(), "not recorded") }

// measured gives a recorded quantity as a figure, as it was written.
func measured[T ~float64](v record.Val[T], sign string) Figure {
	return has(v.Set, written(float64(v.V), sign), "not recorded")
}
