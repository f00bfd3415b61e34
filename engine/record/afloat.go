package record

import "hullfile/engine/unit"

// Afloat is by what the boat is judged afloat: the water, the rules that are asked for, and limits that the yard read in
// its own copy of a rule. A limit written here takes the place of the recalled one of the method sheet.
type Afloat struct {
	Checks    Val[[]string]     `toml:"checks" ref:"sheet" doc:"method sheets by which stability is judged, by file name without .toml; all that fit the boat if not written"`
	Density   Val[unit.KGPerM3] `toml:"water_density_kg_m3" least:"980" most:"1040" eg:"1025" doc:"density of the water that the boat floats in; sea water of 1025 if not written"`
	Option    Val[int]          `toml:"option" least:"1" most:"6" eg:"2" doc:"option of ISO 12217 that the yard has chosen; taken from the decking if not written"`
	DownZ     Val[unit.M]       `toml:"least_downflooding_height_m" above:"0" most:"5" eg:"0.435" doc:"downflooding height that the yard's copy of the rule asks for"`
	DownAngle Val[unit.Deg]     `toml:"least_downflooding_angle_deg" above:"0" most:"120" eg:"25" doc:"downflooding angle that the yard's copy of the rule asks for"`
	Heeled    Val[unit.M]       `toml:"least_heeled_freeboard_m" above:"0" most:"3" eg:"0.30" doc:"freeboard with the crew to one side that the yard's copy of the rule asks for"`
	OffsetMax Val[unit.Deg]     `toml:"greatest_offset_heel_deg" above:"0" most:"45" eg:"17" doc:"heel with the crew to one side that the yard's copy of the rule permits"`
	CrewKG    Val[unit.KG]      `toml:"offset_person_mass_kg" above:"0" most:"200" eg:"85" doc:"mass of one person in the offset-load test by the yard's copy of the rule"`
	LimitsBy  Val[string]       `toml:"limits_from" doc:"work, edition and clauses of the copy in which the yard read these limits"`
	Windage   Val[unit.M2]      `toml:"windage_above_sheer_m2" least:"0" most:"100" eg:"4.2" doc:"area seen from the side of everything above the sheer: wheelhouse, screens, people"`
}

// Tank is one tank with what can be in it.
type Tank struct {
	Entry
	Name     Val[string]       `toml:"name" doc:"what it is called on board"`
	Contents Val[string]       `toml:"contents" must:"yes" oneof:"fuel|fresh water|waste|bait|ballast" doc:"what it holds"`
	Volume   Val[unit.Litre]   `toml:"volume_l" must:"yes" above:"0" most:"20000" eg:"200" doc:"volume when full"`
	Density  Val[unit.KGPerM3] `toml:"density_kg_m3" must:"yes" above:"0" most:"2000" likely:"680..1100" eg:"740" doc:"density of the contents"`
	X        Val[unit.M]       `toml:"x_m" must:"yes" least:"-5" most:"30" eg:"2.05" doc:"centre of the full tank forward of the transom"`
	Y        Val[unit.M]       `toml:"y_m" must:"yes" least:"-6" most:"6" eg:"0" doc:"centre to starboard of the centre line"`
	Z        Val[unit.M]       `toml:"z_m" must:"yes" least:"-2" most:"15" eg:"0.3" doc:"centre above the base line"`
	Length   Val[unit.M]       `toml:"surface_length_m" above:"0" most:"20" eg:"1.2" doc:"length of the free surface"`
	Breadth  Val[unit.M]       `toml:"surface_breadth_m" above:"0" most:"10" eg:"0.9" doc:"breadth of the free surface; that of one part where a baffle runs fore and aft"`
	Parts    Val[int]          `toml:"surface_parts" least:"1" most:"20" eg:"1" doc:"how many such surfaces lie side by side; one if not written"`
	Fixed    Val[bool]         `toml:"fixed" must:"yes" doc:"true for a tank that stays in the boat, false for one that is carried on board"`
	Weight   Val[string]       `toml:"weight" ref:"weight" doc:"load item of the weight breakdown that stands for the contents, so that they are not counted twice"`
	Plate    Val[unit.MM]      `toml:"plate_mm" above:"0" most:"60" likely:"1.5..10" eg:"4.0" doc:"thickness of its plating, where it is built of plate"`
	Alloy    Val[string]       `toml:"alloy" ref:"alloy" doc:"alloy and temper of its plating"`
	Baffles  Val[unit.MM]      `toml:"baffle_spacing_mm" above:"0" most:"5000" likely:"150..900" eg:"430" doc:"distance between baffles, or between what stiffens its sides; the whole length if not written"`
	Overflow Val[unit.M]       `toml:"overflow_z_m" least:"-2" most:"15" eg:"1.15" doc:"height of the overflow or vent above the base line, to which it can stand full; needed to judge its plating"`
}

// CrewArea is a place where people can be.
type CrewArea struct {
	Entry
	Name    Val[string] `toml:"name" doc:"what the place is called"`
	X       Val[unit.M] `toml:"x_m" must:"yes" least:"-5" most:"30" eg:"1.9" doc:"middle of the place forward of the transom"`
	Y       Val[unit.M] `toml:"edge_y_m" must:"yes" above:"0" most:"6" eg:"0.95" doc:"half breadth to the outer edge of where people can be"`
	Z       Val[unit.M] `toml:"z_m" must:"yes" least:"-2" most:"15" eg:"0.5" doc:"height of the seat, or of the sole where people stand"`
	Posture Val[string] `toml:"posture" must:"yes" oneof:"standing|sitting" doc:"how people are there"`
	Persons Val[int]    `toml:"persons" must:"yes" least:"0" most:"200" eg:"4" doc:"how many people find room there"`
}

// Condition is one state of loading.
type Condition struct {
	Entry
	Title   Val[string]       `toml:"title" must:"yes" doc:"what the condition is called"`
	Kind    Val[string]       `toml:"kind" must:"yes" oneof:"light craft|minimum operating|loaded ready|arrival|maximum load|trailer|other" doc:"which of the usual conditions it is; it takes the place of the derived one"`
	Persons Val[int]          `toml:"persons" must:"yes" least:"0" most:"200" eg:"6" doc:"people on board"`
	Person  Val[unit.KG]      `toml:"person_mass_kg" above:"0" most:"200" likely:"60..120" eg:"75" doc:"mass of one person; 75 if not written"`
	Tanks   Val[unit.Percent] `toml:"tank_percent" must:"yes" least:"0" most:"100" eg:"95" doc:"how full the tanks are"`
	Stores  Val[unit.Percent] `toml:"stores_percent" must:"yes" least:"0" most:"100" eg:"100" doc:"part of the stores and of other load that is on board"`
	Extra   Val[unit.KG]      `toml:"extra_mass_kg" least:"-2000" most:"20000" eg:"120" doc:"mass on board beside the breakdown"`
	X       Val[unit.M]       `toml:"extra_x_m" least:"-5" most:"30" eg:"2.4" doc:"centre of the extra mass forward of the transom"`
	Y       Val[unit.M]       `toml:"extra_y_m" least:"-6" most:"6" eg:"0" doc:"centre of the extra mass to starboard"`
	Z       Val[unit.M]       `toml:"extra_z_m" least:"-2" most:"15" eg:"0.8" doc:"centre of the extra mass above the base line"`
}

// Buoyancy is foam or a closed air chamber that keeps a swamped boat up.
type Buoyancy struct {
	Entry
	Name     Val[string]       `toml:"name" doc:"what it is called"`
	Kind     Val[string]       `toml:"kind" must:"yes" oneof:"foam|chamber" doc:"foam, or a closed air chamber"`
	Volume   Val[unit.Litre]   `toml:"volume_l" must:"yes" above:"0" most:"20000" eg:"180" doc:"volume"`
	X        Val[unit.M]       `toml:"x_m" must:"yes" least:"-5" most:"30" eg:"1.4" doc:"centre forward of the transom"`
	Y        Val[unit.M]       `toml:"y_m" must:"yes" least:"-6" most:"6" eg:"0.8" doc:"centre to starboard; of the one to starboard where both_sides is true"`
	Z        Val[unit.M]       `toml:"z_m" must:"yes" least:"-2" most:"15" eg:"0.6" doc:"centre above the base line"`
	Height   Val[unit.M]       `toml:"height_m" above:"0" most:"5" eg:"0.3" doc:"height from bottom to top; that of a cube if not written"`
	Both     Val[bool]         `toml:"both_sides" doc:"true where the same piece is on the other side too; volume is that of one"`
	Density  Val[unit.KGPerM3] `toml:"density_kg_m3" least:"0" most:"600" likely:"15..200" eg:"35" doc:"density of foam"`
	Tested   Val[bool]         `toml:"tested" doc:"true where a chamber was tested for tightness"`
	Document Val[string]       `toml:"document" ref:"document" doc:"maker's sheet or test sheet"`
}
