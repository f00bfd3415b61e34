package record

import "hullfile/engine/unit"

// Log is what an instrument wrote down by itself during a trial.
type Log struct {
	Entry
	File       Val[string]      `toml:"file" must:"yes" form:"file" doc:"file name inside the folder logs beside the record, or inside documents; never outside the yard folder"`
	Kind       Val[string]      `toml:"kind" must:"yes" oneof:"gpx|nmea|csv" doc:"how the log is written"`
	Instrument Val[string]      `toml:"instrument" ref:"instrument" doc:"what wrote the log"`
	Offset     Val[unit.Hour]   `toml:"utc_offset_h" least:"-14" most:"14" eg:"1" doc:"hours by which the clock of the log is ahead of UTC; not needed where the log says its zone itself"`
	Begins     Val[string]      `toml:"begins" form:"moment" doc:"moment in UTC at which a log that counts seconds stands at nought, e.g. 2026-03-03T09:00:00"`
	Gap        Val[unit.Second] `toml:"gap_s" above:"0" most:"3600" eg:"5" doc:"longest time between two samples that is no gap; nothing is reckoned across a gap"`
	Columns    []Column         `toml:"column" rows:"yes" doc:"what the columns of a CSV log hold"`
	SHA256     Val[string]      `toml:"sha256" form:"hash" doc:"hash of the log when it was put on record, 64 hexadecimal digits"`
	Note       Val[string]      `toml:"note" lines:"yes" doc:"anything that matters about the log"`
}

// Column says what one column of a CSV log holds. Several columns may hold engine_rpm or fuel: engine speed is then their
// mean, fuel flow their sum.
type Column struct {
	Entry
	Head  Val[string] `toml:"head" must:"yes" doc:"head of the column as it stands in the log"`
	Holds Val[string] `toml:"holds" must:"yes" oneof:"time|latitude|longitude|speed|course|heading|engine_rpm|fuel|trim|acceleration_x|acceleration_y|acceleration_z" doc:"what the column holds"`
	Unit  Val[string] `toml:"unit" must:"yes" oneof:"utc|local|s|ms|deg|rad|kn|m/s|km/h|mph|rpm|100 rpm|rev/s|l/h|l/min|gal/h US|gal/h UK|g|m/s2" doc:"in what it is written; utc and local are moments such as 2026-03-03 09:14:00"`
}
