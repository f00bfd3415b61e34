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
func (l *leaf) fields(rec any, skip ...string) []Fact {
	v := reflect.Indirect(reflect.ValueOf(rec))
	var out []Fact
	for i := range v.NumField() {
		tag := v.Type().Field(i).Tag
		key := tag.Get("toml")
		val := v.Field(i)
		if key == "" || slices.Contains(skip, key) || !isValue(val) {
			continue
		}
		quantity, _ := unit.Of(val.Field(valueV).Type().Name())
		fact := Fact{Key: key, Name: label(key, quantity.Suffix), Unit: quantity.Sign, Note: tag.Get("doc"), Value: Figure{Why: "not recorded"}}
		if val.Field(valueSet).Bool() {
			fact.Value = Figure{Text: wordsOf(val.Field(valueV), quantity.Sign)}
			fact.Place = l.place(val.Field(valueAt).Interface().(finding.Place))
		} else {
			fact.Unit = ""
		}
		out = append(out, fact)
	}
	return out
}

// The fields of record.Val, by their index; a test holds them to the type.
const (
	valueV = iota
	valueSet
	valueAt
)

// isValue reports whether a field of a record is a single value and not a table.
func isValue(v reflect.Value) bool {
	return v.Kind() == reflect.Struct && v.NumField() > valueAt && v.Type().Field(valueSet).Name == "Set"
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
	"hin": "hull identification number", "x_m": "centre, forward of the aft end of the waterline", "z_m": "centre, above the loaded waterline",
	"hull_top_m": "edge of the hull above the loaded waterline", "by": "by", "reason": "why this issue was made", "number": "number of the issue",
	"date": "date", "load_aboard": "load on board", "ashore": "not on board", "structure": "method sheet for the structure", "maker_code": "maker's code",
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
		return d.Long()
	}
	return ""
}

// word gives a recorded text as a figure.
func word(v record.Val[string]) Figure { return has(v.V != "", v.V, "not recorded") }

// day gives a recorded date as a figure.
func day(v record.Val[record.Date]) Figure { return has(v.Set, v.V.Long(), "not recorded") }

// measured gives a recorded quantity as a figure, as it was written.
func measured[T ~float64](v record.Val[T], sign string) Figure {
	return has(v.Set, written(float64(v.V), sign), "not recorded")
}
