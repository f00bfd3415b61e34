package proof

import (
	"reflect"

	"hullfile/engine/method"
)

// quick reads a file that is sound, as those that come with the program are; false where it meets anything that it does not
// know, and then nothing of s counts.
func quick(text string, s *set) bool {
	rows, ok := method.Rows([]byte(text))
	if ok = ok && fill(rows, reflect.ValueOf(s).Elem()); !ok {
		*s = set{}
	}
	return ok
}

// fill puts rows into the fields of a struct that bear their keys; false where a key has no field, or a value does not fit.
func fill(rows map[string]any, to reflect.Value) bool {
	left := len(rows)
	for i := range to.NumField() {
		key := to.Type().Field(i).Tag.Get("toml")
		v, written := rows[key]
		if key == "" || !written {
			continue
		}
		if left--; !assign(v, to.Field(i)) {
			return false
		}
	}
	return left == 0
}

func assign(v any, to reflect.Value) bool {
	switch v := v.(type) {
	case string:
		if to.Kind() != reflect.String {
			return false
		}
		to.SetString(v)
	case int64:
		return assign(float64(v), to)
	case float64:
		if to.Kind() == reflect.Pointer {
			to.Set(reflect.ValueOf(&v))
			return to.Type().Elem().Kind() == reflect.Float64
		}
		if to.Kind() != reflect.Float64 {
			return false
		}
		to.SetFloat(v)
	case map[string]any:
		if to.Type() != reflect.TypeOf(v) {
			return false
		}
		to.Set(reflect.ValueOf(v))
	case []any:
		if to.Type() != reflect.TypeFor[[]string]() {
			return false
		}
		for _, one := range v {
			word, ok := one.(string)
			if !ok {
				return false
			}
			to.Set(reflect.Append(to, reflect.ValueOf(word)))
		}
	case []map[string]any:
		if to.Kind() != reflect.Slice || to.Type().Elem().Kind() != reflect.Struct {
			return false
		}
		to.Set(reflect.MakeSlice(to.Type(), len(v), len(v)))
		for i, rows := range v {
			if !fill(rows, to.Index(i)) {
				return false
			}
		}
	default:
		return false
	}
	return true
}
