package record

import "hullfile/engine/unit"

// Section is a bar, extrusion or bent plate that members are made of, by its key: dimensions over all as ordered. A
// dimension that the shape does not have is left out.
type Section struct {
	Entry
	Shape           Val[string]   `toml:"shape" must:"yes" oneof:"flat bar|angle|tee|bulb flat|top hat|box|pipe|built up" doc:"what shape it is"`
	Height          Val[unit.MM]  `toml:"height_mm" above:"0" most:"1000" likely:"15..400" eg:"60" doc:"height from the foot to the free edge, over all"`
	Web             Val[unit.MM]  `toml:"web_mm" above:"0" most:"60" likely:"2..20" eg:"6.0" doc:"thickness of the web; of each of the two webs of a top hat or box"`
	Flange          Val[unit.MM]  `toml:"flange_mm" above:"0" most:"600" likely:"15..200" eg:"40" doc:"breadth of the flange over all; of the crown of a top hat; of a box"`
	FlangeThickness Val[unit.MM]  `toml:"flange_thickness_mm" above:"0" most:"60" likely:"2..20" eg:"5.0" doc:"thickness of the flange, of the crown of a top hat, of top and bottom of a box"`
	Foot            Val[unit.MM]  `toml:"foot_mm" above:"0" most:"300" eg:"25" doc:"top hat: breadth of each foot outside the webs; left out where the webs are welded to the plate"`
	FootThickness   Val[unit.MM]  `toml:"foot_thickness_mm" above:"0" most:"60" eg:"4.0" doc:"top hat with feet: thickness of the feet"`
	Base            Val[unit.MM]  `toml:"base_mm" above:"0" most:"600" eg:"90" doc:"top hat: breadth over the webs at the plate; left out where the webs stand upright"`
	Diameter        Val[unit.MM]  `toml:"diameter_mm" above:"0" most:"600" likely:"15..200" eg:"60" doc:"pipe: outside diameter"`
	Wall            Val[unit.MM]  `toml:"wall_mm" above:"0" most:"60" likely:"1.5..15" eg:"4.0" doc:"pipe: thickness of the wall"`
	Area            Val[unit.MM2] `toml:"area_mm2" above:"0" most:"50000" eg:"465" doc:"bulb flat: area by its maker's table"`
	Centroid        Val[unit.MM]  `toml:"centroid_mm" above:"0" most:"1000" eg:"48" doc:"bulb flat: height of the centroid above the foot, by its maker's table"`
	Joined          Val[bool]     `toml:"joined" doc:"true where web and flange are pieces welded together; rolled, bent or extruded as one if not written"`
	Alloy           Val[string]   `toml:"alloy" must:"yes" ref:"alloy" doc:"alloy and temper, e.g. 6082-T6"`
	Stock           Val[bool]     `toml:"in_stock" doc:"true for what the yard keeps on the rack, from which a lighter bar may be proposed"`
	Pieces          []Piece       `toml:"piece" doc:"built up: the rectangles that it is made of"`
	Note            Val[string]   `toml:"note" doc:"anything that matters, e.g. the maker's number of an extrusion"`
}

// Piece is one rectangle of a built-up section.
type Piece struct {
	Entry
	Role    Val[string]  `toml:"role" must:"yes" oneof:"web|flange|foot" doc:"what the piece does; shear is carried by webs"`
	Left    Val[unit.MM] `toml:"left_mm" must:"yes" least:"-600" most:"600" eg:"-3" doc:"its left side, across from the middle of the section; to the left negative"`
	Foot    Val[unit.MM] `toml:"foot_mm" must:"yes" least:"0" most:"1000" eg:"0" doc:"its lower side above the foot of the section"`
	Breadth Val[unit.MM] `toml:"breadth_mm" must:"yes" above:"0" most:"600" eg:"6" doc:"its breadth, across"`
	Height  Val[unit.MM] `toml:"height_mm" must:"yes" above:"0" most:"1000" eg:"120" doc:"its height"`
}

// Plating is one plate of the skin: which zone it covers, and from where to where. A zone that is plated with one
// thickness throughout needs no more than its thickness.
type Plating struct {
	Entry
	Zone      Val[string]  `toml:"zone" must:"yes" oneof:"bottom|chine flat|side|transom|deck|sole" doc:"part of the skin that it covers"`
	Aft       Val[unit.M]  `toml:"from_x_m" least:"-3" most:"30" upto:"to_x_m" eg:"0.0" doc:"aft end; the aft end of the hull if not written"`
	Fore      Val[unit.M]  `toml:"to_x_m" least:"-3" most:"30" eg:"5.4" doc:"fore end; the fore end of the hull if not written"`
	Inner     Val[unit.M]  `toml:"inner_m" least:"0" most:"10" upto:"outer_m" eg:"0.0" doc:"inner or lower edge along the skin, where a zone has two plates side by side: from the keel on a bottom, from the chine on a side, from the centre line on a deck, sole or transom"`
	Outer     Val[unit.M]  `toml:"outer_m" above:"0" most:"10" eg:"0.55" doc:"outer or upper edge, measured alike; the edge of the zone if not written"`
	Z         Val[unit.M]  `toml:"z_m" least:"-2" most:"10" eg:"0.52" doc:"sole: its height above the base line; that of the recess it lies in if not written"`
	Thickness Val[unit.MM] `toml:"thickness_mm" must:"yes" above:"0" most:"60" likely:"2..16" eg:"6.0" doc:"thickness as ordered"`
	Alloy     Val[string]  `toml:"alloy" must:"yes" ref:"alloy" doc:"alloy and temper, e.g. 5083-H116"`
	Edges     Val[string]  `toml:"edges" oneof:"welded|not welded" doc:"whether weld or its heat lies in the edges of its panels; welded if not written"`
	Lot       Val[string]  `toml:"lot" doc:"plate lot that it was cut from"`
	Document  Val[string]  `toml:"document" ref:"document" doc:"document that shows the plate, e.g. its certificate"`
	Note      Val[string]  `toml:"note" doc:"anything that matters"`
}

// Gauging is one reading of the thickness of a plate of a boat that has been used.
type Gauging struct {
	Entry
	Panel      Val[string]  `toml:"panel" doc:"panel by its name, a listed one or one of the grid; the place tells it if not written"`
	Zone       Val[string]  `toml:"zone" oneof:"bottom|side|transom|deck|superstructure|bulkhead|tank" doc:"part of the boat"`
	X          Val[unit.M]  `toml:"x_m" least:"-3" most:"30" eg:"1.75" doc:"where it was read, forward of the transom"`
	Girth      Val[unit.M]  `toml:"girth_m" least:"-10" most:"10" eg:"-0.45" doc:"where it was read, along the skin from the keel, or from the centre line on a deck or transom; to port negative"`
	Measured   Val[unit.MM] `toml:"measured_mm" must:"yes" above:"0" most:"60" likely:"1.5..16" eg:"5.8" doc:"thickness as read, without paint"`
	Date       Val[Date]    `toml:"date" must:"yes" doc:"day of the reading"`
	Instrument Val[string]  `toml:"instrument" ref:"instrument" doc:"what was read with"`
	By         Val[string]  `toml:"by" ref:"person" doc:"who read it"`
	Note       Val[string]  `toml:"note" doc:"anything that matters, e.g. pitting beside it"`
}
