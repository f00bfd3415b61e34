package record

import "hullfile/engine/unit"

// Acceleration is one run from rest with the throttle opened. What is not written is taken from the log, where one is named.
type Acceleration struct {
	Entry
	Log     Val[string]      `toml:"log" doc:"log of this trial that it is taken from"`
	From    Val[string]      `toml:"from" form:"clock" doc:"when the throttle was opened, UTC"`
	To      Val[string]      `toml:"to" form:"clock" doc:"when the speed no longer rose, UTC"`
	Speed   Val[unit.Knot]   `toml:"speed_kn" above:"0" most:"120" eg:"20" doc:"speed to which the time was taken"`
	Seconds Val[unit.Second] `toml:"duration_s" above:"0" most:"600" eg:"9.5" doc:"time from rest to that speed, taken by hand"`
	Plane   Val[unit.Second] `toml:"plane_s" above:"0" most:"600" eg:"5.5" doc:"time from rest until the boat was on the plane, taken by hand"`
	Trim    Val[unit.Deg]    `toml:"greatest_trim_deg" least:"-10" most:"45" eg:"7" doc:"greatest trim on the way, bow up"`
	Note    Val[string]      `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Turning is one turn through a full circle with the helm held.
type Turning struct {
	Entry
	Log      Val[string]      `toml:"log" doc:"log of this trial that it is taken from"`
	From     Val[string]      `toml:"from" form:"clock" doc:"when the helm was put over, UTC"`
	To       Val[string]      `toml:"to" form:"clock" doc:"when the circle was closed, UTC"`
	Side     Val[string]      `toml:"side" must:"yes" oneof:"port|starboard" doc:"to which side"`
	Speed    Val[unit.Knot]   `toml:"speed_kn" above:"0" most:"120" eg:"18" doc:"speed on the approach"`
	Helm     Val[unit.Deg]    `toml:"helm_deg" above:"0" most:"90" eg:"30" doc:"how far engine or rudder was put over"`
	Diameter Val[unit.M]      `toml:"diameter_m" above:"0" most:"2000" eg:"32" doc:"diameter of the circle, taken by hand"`
	Seconds  Val[unit.Second] `toml:"duration_s" above:"0" most:"1200" eg:"16" doc:"time through the full circle, taken by hand"`
	Note     Val[string]      `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Stopping is one stop from speed.
type Stopping struct {
	Entry
	Log      Val[string]      `toml:"log" doc:"log of this trial that it is taken from"`
	From     Val[string]      `toml:"from" form:"clock" doc:"when the throttle was closed, UTC"`
	To       Val[string]      `toml:"to" form:"clock" doc:"when the boat lay still, UTC"`
	How      Val[string]      `toml:"how" must:"yes" oneof:"throttle closed|astern" doc:"with the throttle closed only, or with the engine put astern"`
	Speed    Val[unit.Knot]   `toml:"speed_kn" above:"0" most:"120" eg:"28" doc:"speed before"`
	Distance Val[unit.M]      `toml:"distance_m" above:"0" most:"5000" eg:"45" doc:"distance until the boat lay still, taken by hand"`
	Seconds  Val[unit.Second] `toml:"duration_s" above:"0" most:"600" eg:"7" doc:"time until the boat lay still, taken by hand"`
	Note     Val[string]      `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Noise is one reading of a sound level meter.
type Noise struct {
	Entry
	Where      Val[string]    `toml:"where" must:"yes" doc:"where the meter was, e.g. helm, seated, at the ear"`
	Level      Val[unit.DB]   `toml:"level_db" must:"yes" above:"0" most:"140" likely:"50..110" eg:"82" doc:"A-weighted sound pressure level"`
	Setting    Val[string]    `toml:"setting" doc:"throttle setting, by its name in the runs"`
	Speed      Val[unit.Knot] `toml:"speed_kn" least:"0" most:"120" eg:"24" doc:"speed of the boat"`
	Instrument Val[string]    `toml:"instrument" ref:"instrument" doc:"the meter"`
	Note       Val[string]    `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Sight is what the helm can see ahead while the boat comes over the hump.
type Sight struct {
	Entry
	Position Val[string]      `toml:"position" must:"yes" oneof:"seated|standing" doc:"how the helm was placed"`
	From     Val[unit.Knot]   `toml:"hidden_from_kn" least:"0" most:"120" eg:"9" doc:"speed from which the bow hid the horizon ahead"`
	To       Val[unit.Knot]   `toml:"hidden_to_kn" least:"0" most:"120" eg:"13" doc:"speed up to which it did"`
	Seconds  Val[unit.Second] `toml:"hidden_s" least:"0" most:"600" eg:"3" doc:"for how long, with the throttle opened fully; 0 where the horizon stayed in sight"`
	Note     Val[string]      `toml:"note" lines:"yes" doc:"anything that matters"`
}
