// Package lookup stands between the records and the method sheets: a sheet asks for a value by a name such as
// "boat.loaded_mass_kg" or "panel.short_side_mm", and the records have it under that key, or have no such key at all.
package lookup

import (
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Of gives what one table of a record, which is a pointer to its struct, has under a key, with its unit and its line, e.g.
// Of(&hull.Boat, "loaded_mass_kg"). ok is false when nobody wrote it, and when the table has no such key.
func Of(entry any, key string) (q method.Quantity, ok bool) {
	return Written(record.Lookup(entry, key))
}

// Written takes a value of a record over; ok is false when the record has no such key or nobody wrote it.
func Written(f record.Field, known bool) (q method.Quantity, ok bool) {
	if !known || !f.Set {
		return method.Quantity{}, false
	}
	return method.Quantity{Number: f.Number, Word: f.Word, IsWord: f.IsWord, Unit: f.Unit, Place: f.At}, true
}
