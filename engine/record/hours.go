package record

import "hullfile/engine/unit"

// Hours is one entry of the log of running hours. In hours.csv the rows need no key: they are 1, 2, 3 in their order.
type Hours struct {
	Entry
	Date  Val[Date]      `toml:"date" must:"yes" doc:"day on which the hours ended"`
	From  Val[unit.Hour] `toml:"from_h" must:"yes" least:"0" most:"100000" upto:"to_h" eg:"118.4" doc:"engine hours at the start"`
	To    Val[unit.Hour] `toml:"to_h" must:"yes" least:"0" most:"100000" eg:"124.9" doc:"engine hours at the end"`
	Load  Val[unit.KG]   `toml:"load_kg" least:"0" most:"100000" eg:"420" doc:"people, fuel and cargo on board beyond the light craft"`
	Wave  Val[unit.M]    `toml:"wave_height_m" least:"0" most:"10" eg:"0.4" doc:"significant wave height, estimated or measured"`
	Speed Val[unit.Knot] `toml:"speed_kn" least:"0" most:"120" eg:"22" doc:"mean speed while under way"`
	Tenth Val[unit.G]    `toml:"highest_tenth_g" least:"0" most:"20" eg:"1.8" doc:"mean of the highest tenth of impacts, where it was measured"`
	By    Val[string]    `toml:"by" ref:"person" doc:"who ran the boat"`
	Note  Val[string]    `toml:"note" doc:"anything that matters"`
}

// Look is one look at the seams at known running hours. What was looked at, how, and the smallest crack that the look
// would have found decide what a clean result is worth.
type Look struct {
	Entry
	Date        Val[Date]         `toml:"date" must:"yes" doc:"day of the look"`
	Meter       Val[unit.Hour]    `toml:"at_h" must:"yes" least:"0" most:"100000" eg:"200" doc:"engine hours on that day"`
	By          Val[string]       `toml:"by" ref:"person" doc:"who looked"`
	Method      Val[string]       `toml:"method" must:"yes" oneof:"visual|dye penetrant|eddy current|ultrasonic|radiographic" doc:"how the places were looked at"`
	Light       Val[string]       `toml:"light" doc:"by what light"`
	Access      Val[string]       `toml:"access" doc:"how the places were reached, and what was taken out"`
	Cleaned     Val[bool]         `toml:"cleaned" doc:"whether paint, dirt and grease had been taken off"`
	Share       Val[unit.Percent] `toml:"share_percent" above:"0" most:"100" eg:"100" doc:"part of the seam length at these places that was seen"`
	Smallest    Val[unit.MM]      `toml:"smallest_mm" above:"0" most:"1000" likely:"0.5..100" eg:"10" doc:"length of the smallest crack that this look would have found"`
	Places      Val[[]string]     `toml:"places" must:"yes" doc:"what was looked at: joints, panels or places in words"`
	Indications []Indication      `toml:"indication" csv:"indications" rows:"yes" doc:"what was found; none written means nothing found"`
	Document    Val[string]       `toml:"document" ref:"document" doc:"the report"`
	Note        Val[string]       `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Indication is one thing found at a look.
type Indication struct {
	Entry
	Place  Val[string]  `toml:"place" must:"yes" doc:"where, in the words of the look's list of places"`
	Size   Val[unit.MM] `toml:"size_mm" above:"0" most:"10000" eg:"14" doc:"its length"`
	Is     Val[string]  `toml:"is" must:"yes" oneof:"crack|no crack|not settled" doc:"what it turned out to be; what is not settled counts as a crack"`
	Action Val[string]  `toml:"action" must:"yes" doc:"what was done"`
}

// Ride is one record of vertical accelerations under way.
type Ride struct {
	Entry
	Date       Val[Date]       `toml:"date" must:"yes" doc:"day of the record"`
	Document   Val[string]     `toml:"document" must:"yes" ref:"document" doc:"the log: a CSV file among the documents, one sample a row"`
	Column     Val[string]     `toml:"column" doc:"head of the column with the acceleration; the only column needs no name"`
	Unit       Val[string]     `toml:"unit" oneof:"g|m/s2" doc:"unit of the column; g if not written"`
	Rate       Val[unit.Hertz] `toml:"rate_hz" must:"yes" above:"0" most:"100000" eg:"500" doc:"samples a second"`
	Filter     Val[unit.Hertz] `toml:"filter_hz" above:"0" most:"1000" likely:"5..40" eg:"10" doc:"corner of the low-pass filter to be laid over the record; 10 Hz if not written"`
	Range      Val[unit.G]     `toml:"sensor_range_g" above:"0" most:"1000" eg:"16" doc:"greatest acceleration that the sensor can show"`
	Place      Val[string]     `toml:"place" oneof:"centre of gravity|helm|deck forward|deck aft" doc:"where the sensor was fixed; its centre of gravity if not written"`
	X          Val[unit.M]     `toml:"x_m" least:"-3" most:"30" eg:"2.6" doc:"where the sensor was fixed, forward of the transom"`
	Speed      Val[unit.Knot]  `toml:"speed_kn" must:"yes" least:"0" most:"120" eg:"24" doc:"mean speed"`
	Wave       Val[unit.M]     `toml:"wave_height_m" must:"yes" least:"0" most:"10" eg:"0.5" doc:"significant wave height"`
	WaveBy     Val[string]     `toml:"wave_by" doc:"how the wave height is known"`
	Mass       Val[unit.KG]    `toml:"mass_kg" above:"0" most:"200000" eg:"2600" doc:"mass of the boat"`
	Meter      Val[unit.Hour]  `toml:"at_h" least:"0" most:"100000" eg:"212" doc:"engine hours on that day"`
	By         Val[string]     `toml:"by" ref:"person" doc:"who made the record"`
	Instrument Val[string]     `toml:"instrument" ref:"instrument" doc:"what it was made with"`
	Note       Val[string]     `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Warranty is what the yard promises for one part of the boat.
type Warranty struct {
	Entry
	Part   Val[string]     `toml:"part" must:"yes" doc:"what it covers, e.g. the welded structure"`
	Years  Val[unit.Ratio] `toml:"years" must:"yes" above:"0" most:"50" eg:"5" doc:"how many years"`
	Yearly Val[unit.Hour]  `toml:"yearly_h" above:"0" most:"9000" likely:"20..4000" eg:"100" doc:"running hours that are expected in a year"`
	Note   Val[string]     `toml:"note" doc:"conditions in short"`

	Of         Val[string]    `toml:"of" oneof:"structure|paint|fittings|engines|other" doc:"what kind of part it is; only hours of the structure are held against a warranty; structure if not written"`
	By         Val[string]    `toml:"by" doc:"who promises: the yard if not written, else the maker of the part"`
	From       Val[Date]      `toml:"from" doc:"first day; the day of the handover if not written"`
	Hours      Val[unit.Hour] `toml:"hours_h" above:"0" most:"100000" eg:"500" doc:"running hours at which it ends, if that comes first"`
	Conditions Val[string]    `toml:"conditions" lines:"yes" doc:"on what it depends, and what it leaves out"`
	Document   Val[string]    `toml:"document" ref:"document" doc:"the paper that promises it"`
}

// Service is how the boat is expected to be used, against which the hours of a trial are held.
type Service struct {
	Wave  Val[unit.M]    `toml:"wave_height_m" least:"0" most:"10" eg:"0.3" doc:"significant wave height in which the boat will mostly run"`
	Speed Val[unit.Knot] `toml:"speed_kn" above:"0" most:"120" eg:"20" doc:"speed at which it will mostly run there"`
	Note  Val[string]    `toml:"note" doc:"whose expectation this is"`
}

// Comfort is the impact level that the yard takes as the most for the people on board.
type Comfort struct {
	Level Val[unit.G] `toml:"level_g" above:"0" most:"10" likely:"0.5..6" eg:"1.5" doc:"mean of the highest tenth of impacts that the people on board are to bear"`
	Who   Val[string] `toml:"who" doc:"for whom and for how long"`
	Note  Val[string] `toml:"note" doc:"why this level"`
}

// Prediction is what a prediction of resistance and power needs beside the principal data.
type Prediction struct {
	LCG       Val[unit.M]       `toml:"lcg_m" above:"0" most:"30" eg:"2.2" doc:"centre of gravity forward of the transom on trial; that of the weight breakdown if not written"`
	VCG       Val[unit.M]       `toml:"vcg_m" least:"0" most:"10" eg:"0.85" doc:"centre of gravity above the keel on trial; that of the weight breakdown if not written"`
	ShaftZ    Val[unit.M]       `toml:"thrust_z_m" least:"-3" most:"5" eg:"-0.15" doc:"height of the propeller shaft above the keel at the transom"`
	ShaftTilt Val[unit.Deg]     `toml:"thrust_deg" least:"-20" most:"30" eg:"0" doc:"angle of the thrust to the keel, upwards positive"`
	Front     Val[unit.M2]      `toml:"frontal_area_m2" least:"0" most:"100" eg:"3.6" doc:"area of hull and house above water seen from ahead"`
	AirDrag   Val[unit.Ratio]   `toml:"air_drag_coefficient" least:"0" most:"2" likely:"0.3..1.2" eg:"0.7" doc:"air drag over dynamic pressure and frontal area"`
	Appendage Val[unit.Percent] `toml:"appendage_percent" least:"0" most:"100" eg:"8" doc:"drag of legs, brackets and other appendages as a part of the bare hull's"`
	Spray     Val[bool]         `toml:"whisker_spray" doc:"true adds the drag of the whisker spray"`
}

// Spot is a welded detail whose fatigue is held against that of others.
type Spot struct {
	Entry
	Place    Val[string]       `toml:"place" must:"yes" doc:"where it is"`
	Detail   Val[string]       `toml:"detail" must:"yes" doc:"detail class by its key in the shipped tables, e.g. stiffener-end-150"`
	Transfer Val[unit.MPaPerG] `toml:"transfer_n_mm2_g" must:"yes" above:"0" most:"1000" eg:"8" doc:"stress range there for one g of acceleration range"`
	From     Val[string]       `toml:"from" must:"yes" doc:"where the transfer comes from: strain gauge, panel working, guess"`
}
