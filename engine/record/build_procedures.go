package record

import "hullfile/engine/unit"

// Procedures is what lies in the folder procedures: how the yard welds, and the tests behind that.
type Procedures struct {
	Procedures []Procedure     `toml:"procedure" csv:"procedures" doc:"welding procedure specifications with the fields of ISO 15609-1 that can be checked"`
	Tests      []ProcedureTest `toml:"procedure_test" csv:"procedure_tests" doc:"test pieces that procedures rest on"`
}

// Procedure is one revision of a welding procedure specification. Where several revisions are kept, each has its own
// key, and all have the same number.
type Procedure struct {
	Entry
	Number       Val[string]        `toml:"number" doc:"number of the specification without its revision; the key if not written"`
	Revision     Val[string]        `toml:"revision" doc:"revision, as welds name it"`
	Title        Val[string]        `toml:"title" doc:"what it is for in words"`
	Prepared     Val[string]        `toml:"prepared_by" ref:"person" doc:"who wrote it"`
	Approved     Val[string]        `toml:"approved_by" ref:"person" doc:"who approved it"`
	From         Val[Date]          `toml:"valid_from" doc:"first day on which it may be used"`
	Until        Val[Date]          `toml:"valid_until" after:"valid_from" doc:"last day on which it may be used; leave out while it is in use"`
	Tests        Val[[]string]      `toml:"tests" ref:"procedure_test" doc:"the test pieces that it rests on"`
	Test         Val[string]        `toml:"test" ref:"procedure_test" doc:"the test piece that it rests on, where there is only one"`
	Process      Val[string]        `toml:"process" must:"yes" oneof:"131|141|142|15|43" doc:"welding process by ISO 4063: 131 MIG, 141 TIG with filler, 142 TIG without, 15 plasma, 43 friction stir"`
	Mechanised   Val[string]        `toml:"mechanised" oneof:"manual|partly|fully|automatic" doc:"how far the process is mechanised"`
	Weld         Val[string]        `toml:"weld_type" must:"yes" oneof:"butt|fillet" doc:"butt or fillet weld"`
	Sides        Val[string]        `toml:"sides" oneof:"ss nb|ss mb|bs" doc:"single side without backing, single side with backing material, both sides"`
	Layers       Val[string]        `toml:"layers" oneof:"single run|several runs" doc:"whether the seam is made in one run"`
	Groups       Val[[]string]      `toml:"groups" oneof:"21|22.1|22.2|22.3|22.4|23.1|23.2|24.1|24.2|25|26" doc:"material groups by ISO/TR 15608: 22.4 for 5083, 23.1 for 6082"`
	ThickFrom    Val[unit.MM]       `toml:"thickness_from_mm" above:"0" most:"150" upto:"thickness_to_mm" eg:"3" doc:"thinnest plate that it is written for"`
	ThickTo      Val[unit.MM]       `toml:"thickness_to_mm" above:"0" most:"150" eg:"12" doc:"thickest plate that it is written for"`
	ThroatFrom   Val[unit.MM]       `toml:"throat_from_mm" above:"0" most:"50" upto:"throat_to_mm" eg:"3" doc:"smallest throat of fillets"`
	ThroatTo     Val[unit.MM]       `toml:"throat_to_mm" above:"0" most:"50" eg:"5" doc:"largest throat of fillets"`
	Positions    Val[[]string]      `toml:"positions" oneof:"PA|PB|PC|PD|PE|PF|PG|PH|PJ|H-L045|J-L045" doc:"welding positions by ISO 6947"`
	Preparation  Val[string]        `toml:"preparation" doc:"edges: angle, gap, root face"`
	Cleaning     Val[string]        `toml:"cleaning" doc:"how the joint is cleaned"`
	CleanFor     Val[unit.Hour]     `toml:"clean_within_h" above:"0" most:"1000" eg:"4" doc:"longest time between cleaning and welding"`
	Fillers      Val[[]string]      `toml:"fillers" doc:"classifications of filler that may be used: S Al 5183"`
	WireDiameter Val[unit.MM]       `toml:"wire_diameter_mm" above:"0" most:"10" eg:"1.2" doc:"diameter of the wire or rod"`
	Gas          Val[string]        `toml:"gas" oneof:"I1|I2|I3" doc:"shielding gas by ISO 14175: argon, helium, argon with helium"`
	GasFlow      Val[unit.LPerMin]  `toml:"gas_flow_l_min" above:"0" most:"100" eg:"18" doc:"flow of shielding gas"`
	Current      Val[string]        `toml:"current_type" oneof:"DC+|DC-|AC" doc:"kind of current and pole of the electrode"`
	Pulsed       Val[bool]          `toml:"pulsed" doc:"whether the machine shapes the current; volts times amperes is then no measure of its power"`
	AmpFrom      Val[unit.Ampere]   `toml:"current_from_amp" above:"0" most:"1000" upto:"current_to_amp" eg:"150" doc:"least current"`
	AmpTo        Val[unit.Ampere]   `toml:"current_to_amp" above:"0" most:"1000" eg:"190" doc:"greatest current"`
	VoltFrom     Val[unit.Volt]     `toml:"voltage_from_volt" above:"0" most:"100" upto:"voltage_to_volt" eg:"20" doc:"least arc voltage"`
	VoltTo       Val[unit.Volt]     `toml:"voltage_to_volt" above:"0" most:"100" eg:"24" doc:"greatest arc voltage"`
	SpeedFrom    Val[unit.MMPerMin] `toml:"speed_from_mm_min" above:"0" most:"5000" upto:"speed_to_mm_min" eg:"500" doc:"least travel speed"`
	SpeedTo      Val[unit.MMPerMin] `toml:"speed_to_mm_min" above:"0" most:"5000" eg:"700" doc:"greatest travel speed"`
	FeedFrom     Val[unit.MPerMin]  `toml:"wire_feed_from_m_min" above:"0" most:"40" upto:"wire_feed_to_m_min" eg:"7" doc:"least wire feed"`
	FeedTo       Val[unit.MPerMin]  `toml:"wire_feed_to_m_min" above:"0" most:"40" eg:"9.5" doc:"greatest wire feed"`
	Preheat      Val[unit.Celsius]  `toml:"preheat_most_c" least:"0" most:"400" likely:"10..120" eg:"60" doc:"highest preheat"`
	Interpass    Val[unit.Celsius]  `toml:"interpass_most_c" least:"0" most:"400" likely:"40..150" eg:"90" doc:"highest temperature between runs"`
	Level        Val[string]        `toml:"level" oneof:"B|C|D" doc:"quality level of ISO 10042 that it is meant to reach"`
	Note         Val[string]        `toml:"note" lines:"yes" doc:"anything that matters"`
}

// ProcedureTest is one test piece with its record, from which a range of procedures follows.
type ProcedureTest struct {
	Entry
	Standard   Val[string]       `toml:"standard" must:"yes" doc:"standard by which it was tested, e.g. ISO 15614-2"`
	Edition    Val[string]       `toml:"edition" doc:"edition of that standard, e.g. 2005"`
	Date       Val[Date]         `toml:"date" must:"yes" doc:"day of welding"`
	Result     Val[string]       `toml:"result" must:"yes" oneof:"passed|failed" doc:"what the test came to"`
	Record     Val[string]       `toml:"record" doc:"number of the paper; the paper itself is a document of the hull with this number"`
	Workshop   Val[string]       `toml:"workshop" doc:"where it was welded; it holds for workshops under the same technical and quality control"`
	Examiner   Val[string]       `toml:"examiner" doc:"who witnessed and signed it"`
	Welder     Val[string]       `toml:"welder" doc:"who welded it"`
	Process    Val[string]       `toml:"process" must:"yes" oneof:"131|141|142|15|43" doc:"welding process by ISO 4063"`
	Mechanised Val[string]       `toml:"mechanised" oneof:"manual|partly|fully|automatic" doc:"how far the process was mechanised"`
	Weld       Val[string]       `toml:"weld_type" must:"yes" oneof:"butt|fillet" doc:"butt or fillet weld"`
	Sides      Val[string]       `toml:"sides" oneof:"ss nb|ss mb|bs" doc:"single side without backing, single side with backing material, both sides"`
	Layers     Val[string]       `toml:"layers" oneof:"single run|several runs" doc:"whether it was made in one run, or in one run from each side"`
	Thickness  Val[unit.MM]      `toml:"thickness_mm" must:"yes" above:"0" most:"150" eg:"6" doc:"thickness of the test piece; of the thinner plate where they differ"`
	Throat     Val[unit.MM]      `toml:"throat_mm" above:"0" most:"50" eg:"4" doc:"throat of a fillet test"`
	Position   Val[string]       `toml:"position" oneof:"PA|PB|PC|PD|PE|PF|PG|PH|PJ|H-L045|J-L045" doc:"position by ISO 6947"`
	Alloys     Val[string]       `toml:"alloys" doc:"alloys and tempers of the two plates"`
	Group      Val[string]       `toml:"group" oneof:"21|22.1|22.2|22.3|22.4|23.1|23.2|24.1|24.2|25|26" doc:"material group by ISO/TR 15608"`
	OtherGroup Val[string]       `toml:"other_group" oneof:"21|22.1|22.2|22.3|22.4|23.1|23.2|24.1|24.2|25|26" doc:"group of the second plate, where it is another"`
	Filler     Val[string]       `toml:"filler" doc:"classification of the filler, e.g. S Al 5183"`
	Gas        Val[string]       `toml:"gas" oneof:"I1|I2|I3" doc:"shielding gas by ISO 14175"`
	Current    Val[string]       `toml:"current_type" oneof:"DC+|DC-|AC" doc:"kind of current and pole of the electrode"`
	Heat       Val[unit.KJPerMM] `toml:"heat_kj_mm" above:"0" most:"10" likely:"0.05..3" eg:"0.30" doc:"greatest heat input or arc energy of the test"`
	HeatBasis  Val[string]       `toml:"heat_basis" oneof:"arc energy|heat input" doc:"whether the efficiency of the process is in that figure"`
	Preheat    Val[unit.Celsius] `toml:"preheat_c" least:"-30" most:"400" eg:"20" doc:"preheat of the test"`
	Interpass  Val[unit.Celsius] `toml:"interpass_c" least:"-30" most:"400" eg:"85" doc:"highest temperature between the runs of the test"`
	Tensile    Val[unit.MPa]     `toml:"tensile_n_mm2" above:"0" most:"700" eg:"287" doc:"lowest tensile strength across the seam"`
	Bend       Val[string]       `toml:"bend" oneof:"met|not met|not done" doc:"bend tests"`
	Macro      Val[string]       `toml:"macro" oneof:"met|not met|not done" doc:"looks at cut and etched sections"`
	Inside     Val[string]       `toml:"radiographic" oneof:"met|not met|not done" doc:"radiographs or ultrasonic testing"`
	Surface    Val[string]       `toml:"penetrant" oneof:"met|not met|not done" doc:"penetrant testing"`
	Note       Val[string]       `toml:"note" lines:"yes" doc:"anything that matters"`
}
