package record

import "hullfile/engine/unit"

// Trial is one day on the water with its runs.
type Trial struct {
	Entry
	Date       Val[Date]         `toml:"date" must:"yes" doc:"day of the trial"`
	Place      Val[string]       `toml:"place" doc:"where"`
	By         Val[string]       `toml:"by" ref:"person" doc:"who ran the trial"`
	Instrument Val[string]       `toml:"instrument" ref:"instrument" doc:"what speed was taken with"`
	Water      Val[string]       `toml:"water" oneof:"salt|fresh|brackish" doc:"kind of water"`
	Sea        Val[string]       `toml:"sea" doc:"state of the sea in words"`
	Wave       Val[unit.M]       `toml:"wave_height_m" least:"0" most:"10" eg:"0.2" doc:"significant wave height, estimated or measured"`
	Wind       Val[unit.Knot]    `toml:"wind_kn" least:"0" most:"80" eg:"8" doc:"wind speed"`
	WindWords  Val[string]       `toml:"wind_force" doc:"wind in words or as its Beaufort force, e.g. gentle breeze, force 3"`
	WindFrom   Val[unit.Deg]     `toml:"wind_from_deg" least:"0" most:"360" eg:"240" doc:"direction the wind came from"`
	Air        Val[unit.Celsius] `toml:"air_c" least:"-40" most:"60" eg:"14" doc:"air temperature"`
	Depth      Val[unit.M]       `toml:"depth_m" above:"0" most:"12000" eg:"12" doc:"depth of water on the course"`
	Mass       Val[unit.KG]      `toml:"mass_kg" above:"0" most:"200000" eg:"2600" doc:"mass of the boat during the trial, with people and fuel"`
	Load       Val[string]       `toml:"load" doc:"what was on board, in words"`
	Propeller  Val[string]       `toml:"propeller" doc:"propeller as fitted, in words"`
	Pitch      Val[unit.Inch]    `toml:"pitch_in" above:"0" most:"60" likely:"7..30" eg:"17" doc:"nominal pitch of the propeller"`
	Diameter   Val[unit.Inch]    `toml:"diameter_in" above:"0" most:"80" likely:"7..30" eg:"14.5" doc:"diameter of the propeller"`
	Gear       Val[unit.Ratio]   `toml:"gear_ratio" above:"0" most:"10" likely:"1..4" eg:"2.0" doc:"turns of the engine for one turn of the propeller"`
	Density    Val[unit.KGPerM3] `toml:"fuel_density_kg_m3" above:"0" most:"1200" likely:"700..900" eg:"740" doc:"density of the fuel"`
	Reserve    Val[unit.Percent] `toml:"reserve_percent" least:"0" most:"90" likely:"5..40" eg:"20" doc:"part of the usable fuel that is kept back when range is stated"`
	Runs       []Run             `toml:"run" csv:"runs" rows:"yes" entries:"20000" doc:"single runs, in the order in which they were made"`
	Logs       []Log             `toml:"log" doc:"what instruments wrote down by themselves"`
	Accelerate []Acceleration    `toml:"acceleration" doc:"runs from rest with the throttle opened"`
	Turnings   []Turning         `toml:"turning" doc:"turns through a full circle"`
	Stoppings  []Stopping        `toml:"stopping" doc:"stops from speed"`
	Noises     []Noise           `toml:"noise" doc:"readings of a sound level meter"`
	Sights     []Sight           `toml:"visibility" doc:"what the helm sees ahead through the hump"`
	Document   Val[string]       `toml:"document" ref:"document" doc:"the signed trial sheet"`
	Note       Val[string]       `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Run is one leg at one throttle setting on one heading. In runs.csv the column "trial" names the trial;
// without a column "id" the runs of a trial get the keys 1, 2, 3 in their order, as in a list of [[trial.T1.run]].
type Run struct {
	Entry
	Setting Val[string]      `toml:"setting" must:"yes" doc:"name of the throttle setting; runs with the same setting are taken together"`
	RPM     Val[unit.RPM]    `toml:"engine_rpm" above:"0" most:"20000" likely:"400..7000" eg:"4500" doc:"engine speed"`
	Heading Val[unit.Deg]    `toml:"heading_deg" least:"0" most:"360" eg:"35" doc:"heading of the run"`
	Speed   Val[unit.Knot]   `toml:"speed_kn" must:"yes" unless:"log" least:"0" most:"120" likely:"1..70" eg:"24.6" doc:"speed over ground"`
	Fuel    Val[unit.LPerH]  `toml:"fuel_l_h" least:"0" most:"2000" eg:"48" doc:"fuel flow of all engines together"`
	Trim    Val[unit.Deg]    `toml:"trim_deg" least:"-10" most:"30" eg:"4.5" doc:"running trim of the keel, bow up"`
	Seconds Val[unit.Second] `toml:"duration_s" above:"0" most:"36000" eg:"120" doc:"length of the run"`
	Log     Val[string]      `toml:"log" doc:"log of this trial in which the run lies; what is not written of the run is taken from it"`
	From    Val[string]      `toml:"from" form:"clock" doc:"when the run began, UTC, on the day of the trial if no day is written: 09:14:00"`
	To      Val[string]      `toml:"to" form:"clock" doc:"when the run ended, UTC"`
	Left    Val[string]      `toml:"left_out" doc:"why the run is shown but not used; not written for a run that is used"`
}
