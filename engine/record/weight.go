package record

import "hullfile/engine/unit"

// Weight is one item of the weight breakdown. Its mass is written, or reckoned from a plate area or a profile length.
// Positions: x forward of the transom at the bottom centre line, y to starboard, z above the base line.
type Weight struct {
	Entry
	Name      Val[string]       `toml:"name" must:"yes" doc:"what it is"`
	Group     Val[string]       `toml:"group" must:"yes" oneof:"plating|framing|superstructure|fittings|outfit|machinery|electrical|systems|paint and weld|people|stores|fuel and water" doc:"group of the breakdown"`
	Basis     Val[string]       `toml:"basis" must:"yes" oneof:"weighed|reckoned|maker's|estimated" doc:"how the mass is known"`
	Load      Val[bool]         `toml:"load" doc:"true for what is carried and is not part of the light craft: people, fuel, stores"`
	Mass      Val[unit.KG]      `toml:"mass_kg" least:"-2000" most:"50000" eg:"180" doc:"mass of one; negative only for something taken out"`
	Count     Val[int]          `toml:"count" least:"1" most:"500" eg:"2" doc:"how many; one if not written. x, y, z are the centre of all together"`
	Area      Val[unit.M2]      `toml:"area_m2" above:"0" most:"500" eg:"8.4" doc:"plate: area of one"`
	AreaFrom  Val[string]       `toml:"area_from" oneof:"bottom|chine flat|side|transom|deck" doc:"plate: zone of the lines that gives the area, both sides together, and the centre where none is written; an area that is written is used instead and held against it"`
	Thickness Val[unit.MM]      `toml:"thickness_mm" above:"0" most:"60" likely:"1..16" eg:"5.0" doc:"plate: thickness"`
	Length    Val[unit.M]       `toml:"length_m" above:"0" most:"5000" eg:"22" doc:"profile: length of one"`
	LenFrom   Val[string]       `toml:"length_from" oneof:"seams" doc:"profile or weld metal: seams takes the length of the seams along the edges of the lines, and their centre where none is written; a length that is written is used instead and held against it"`
	Section   Val[unit.MM2]     `toml:"section_mm2" above:"0" most:"50000" eg:"610" doc:"profile: area of the section"`
	LineMass  Val[unit.KGPerM]  `toml:"line_mass_kg_m" above:"0" most:"500" eg:"1.65" doc:"profile or pipe: mass of one metre, instead of the section"`
	Alloy     Val[string]       `toml:"alloy" ref:"alloy" doc:"alloy that gives the density"`
	Density   Val[unit.KGPerM3] `toml:"density_kg_m3" above:"0" most:"20000" likely:"20..12000" eg:"2660" doc:"density, where there is no alloy"`
	X         Val[unit.M]       `toml:"x_m" least:"-5" most:"30" eg:"1.2" doc:"centre forward of the transom"`
	Y         Val[unit.M]       `toml:"y_m" least:"-6" most:"6" eg:"0.0" doc:"centre to starboard of the centre line"`
	Z         Val[unit.M]       `toml:"z_m" least:"-2" most:"15" eg:"0.6" doc:"centre above the base line"`
	Margin    Val[unit.Percent] `toml:"margin_percent" least:"0" most:"100" eg:"10" doc:"added to the mass because it is not known better"`
	Document  Val[string]       `toml:"document" ref:"document" doc:"document that shows the mass"`
}

// Weighing is one weighing of the boat at two or more points.
type Weighing struct {
	Entry
	Date          Val[Date]         `toml:"date" must:"yes" doc:"day of the weighing"`
	By            Val[string]       `toml:"by" ref:"person" doc:"who weighed"`
	Instrument    Val[string]       `toml:"instrument" ref:"instrument" doc:"what was weighed with"`
	Aboard        Val[[]string]     `toml:"load_aboard" ref:"weight" doc:"load items that were on board during the weighing"`
	Ashore        Val[[]string]     `toml:"ashore" ref:"weight" doc:"items of the light craft that were not on board during the weighing"`
	Points        []WeighPoint      `toml:"point" rows:"yes" doc:"points at which the boat stood or hung"`
	AllowedMass   Val[unit.Percent] `toml:"allowance_mass_percent" above:"0" most:"50" likely:"0.5..10" eg:"3" doc:"difference of mass that the yard accepts"`
	AllowedCentre Val[unit.MM]      `toml:"allowance_centre_mm" above:"0" most:"2000" likely:"10..300" eg:"75" doc:"difference of the centre fore and aft that the yard accepts"`
	Document      Val[string]       `toml:"document" ref:"document" doc:"the weighing sheet"`
	Note          Val[string]       `toml:"note" lines:"yes" doc:"how it was done"`
}

// WeighPoint is one load cell or scale.
type WeighPoint struct {
	Entry
	X       Val[unit.M]  `toml:"x_m" must:"yes" least:"-5" most:"30" eg:"1.2" doc:"position forward of the transom"`
	Y       Val[unit.M]  `toml:"y_m" least:"-6" most:"6" eg:"0.0" doc:"position to starboard of the centre line"`
	Reading Val[unit.KG] `toml:"reading_kg" must:"yes" least:"0" most:"100000" eg:"640" doc:"reading"`
	Tare    Val[unit.KG] `toml:"tare_kg" least:"0" most:"20000" eg:"12" doc:"slings, cradle and blocks in the reading"`
}
