package record

import "hullfile/engine/unit"

// Lines is what the stations do not say about the shape of the hull.
type Lines struct {
	Camber Val[unit.MM]  `toml:"deck_camber_mm" least:"0" most:"500" eg:"40" doc:"rise of the deck on the centre line above the sheer"`
	Rake   Val[unit.Deg] `toml:"transom_rake_deg" least:"0" most:"45" eg:"12" doc:"rake of the transom from the vertical, top aft"`
	Sides  Val[string]   `toml:"decked" oneof:"fully decked|partly decked|open" doc:"how far the hull is closed at the sheer"`
}

// Station is one section of the hull: keel, chine, where there is one a flat (outer chine) and a knuckle, and sheer.
// Positions as in Weight: x forward of the transom at the bottom centre line, y to starboard, z above the base line. The
// hull is the same to port; between stations every edge runs straight.
type Station struct {
	Entry
	X        Val[unit.M]  `toml:"x_m" must:"yes" least:"-3" most:"30" eg:"1.5" doc:"position of the station"`
	KeelZ    Val[unit.M]  `toml:"keel_z_m" must:"yes" least:"-2" most:"10" eg:"0.0" doc:"height of the bottom plate on the centre line"`
	ChineY   Val[unit.M]  `toml:"chine_y_m" must:"yes" least:"0" most:"6" eg:"1.02" doc:"half breadth at the chine"`
	ChineZ   Val[unit.M]  `toml:"chine_z_m" must:"yes" least:"-2" most:"10" eg:"0.33" doc:"height of the chine"`
	OuterY   Val[unit.M]  `toml:"outer_chine_y_m" least:"0" most:"6" eg:"1.10" doc:"half breadth at the outer edge of a chine flat"`
	OuterZ   Val[unit.M]  `toml:"outer_chine_z_m" least:"-2" most:"10" eg:"0.32" doc:"height of the outer edge of a chine flat"`
	KnuckleY Val[unit.M]  `toml:"knuckle_y_m" least:"0" most:"6" eg:"1.18" doc:"half breadth at a knuckle in the side"`
	KnuckleZ Val[unit.M]  `toml:"knuckle_z_m" least:"-2" most:"10" eg:"0.70" doc:"height of a knuckle in the side"`
	SheerY   Val[unit.M]  `toml:"sheer_y_m" must:"yes" least:"0" most:"6" eg:"1.22" doc:"half breadth at the sheer"`
	SheerZ   Val[unit.M]  `toml:"sheer_z_m" must:"yes" least:"-2" most:"10" eg:"0.95" doc:"height of the sheer"`
	Round    Val[unit.MM] `toml:"bottom_camber_mm" least:"-300" most:"300" eg:"10" doc:"how far the bottom between keel and chine bulges out from straight, hollow negative"`
}

// Frame is a frame or bulkhead, by its position.
type Frame struct {
	Entry
	X       Val[unit.M]  `toml:"x_m" must:"yes" least:"-3" most:"30" eg:"1.5" doc:"position of the frame; of the first where the entry stands for a row of equal frames"`
	To      Val[unit.M]  `toml:"to_x_m" least:"-3" most:"30" eg:"6.0" doc:"row of equal frames: position of the last"`
	Spacing Val[unit.MM] `toml:"spacing_mm" above:"0" most:"3000" likely:"150..1500" eg:"500" doc:"row of equal frames: distance from one to the next; frames are then numbered on from the key"`
	Kind    Val[string]  `toml:"kind" oneof:"frame|web frame|bulkhead" doc:"what stands there; a frame if not written"`

	Bottom     Val[string]  `toml:"bottom" ref:"section" doc:"section of the bottom frame, keel to chine"`
	Side       Val[string]  `toml:"side" ref:"section" doc:"section of the side frame, chine to sheer"`
	Deck       Val[string]  `toml:"deck" ref:"section" doc:"section of the deck beam"`
	Sole       Val[string]  `toml:"sole" ref:"section" doc:"section of the beam under a sole"`
	Floor      Val[string]  `toml:"floor" ref:"section" doc:"section of the floor across the keel, where one stands in place of the bottom frame"`
	FloorOut   Val[unit.M]  `toml:"floor_half_breadth_m" above:"0" most:"6" eg:"0.60" doc:"half breadth to which the floor reaches; to the chine if not written"`
	BottomTo   Val[unit.M]  `toml:"bottom_to_m" above:"0" most:"10" eg:"0.80" doc:"distance from the keel along the skin at which the bottom frame stops, where it does not reach the chine"`
	SideTo     Val[unit.M]  `toml:"side_to_m" above:"0" most:"10" eg:"0.60" doc:"distance from the chine along the skin at which the side frame stops, where it does not reach the sheer"`
	Keel       Val[string]  `toml:"keel_joint" oneof:"fixed|pinned" doc:"joint of the bottom frame at the keel"`
	Chine      Val[string]  `toml:"chine_joint" oneof:"fixed|pinned" doc:"joint of bottom and side frame at the chine"`
	Sheer      Val[string]  `toml:"sheer_joint" oneof:"fixed|pinned" doc:"joint of side frame and deck beam at the sheer"`
	On         Val[bool]    `toml:"on_stringers" doc:"true where the frame stands on the stringers and is not welded to the plate"`
	Plate      Val[unit.MM] `toml:"plate_mm" above:"0" most:"60" likely:"2..12" eg:"4.0" doc:"bulkhead: thickness of its plate"`
	Alloy      Val[string]  `toml:"alloy" ref:"alloy" doc:"bulkhead: alloy and temper of its plate"`
	Stiffener  Val[string]  `toml:"stiffener" ref:"section" doc:"bulkhead: section of its upright stiffeners"`
	StiffenGap Val[unit.MM] `toml:"stiffener_spacing_mm" above:"0" most:"3000" likely:"80..800" eg:"300" doc:"bulkhead: distance from one stiffener to the next, the first one half of it from the centre line"`
	Top        Val[unit.M]  `toml:"top_z_m" least:"-2" most:"10" eg:"1.20" doc:"bulkhead: height of its top above the base line; the deck if not written"`
	Tight      Val[bool]    `toml:"watertight" doc:"bulkhead: whether it keeps water out; true if not written"`
}

// Recess is a cockpit or well that water can enter: it is open at the top.
type Recess struct {
	Entry
	Kind   Val[string]   `toml:"kind" must:"yes" oneof:"cockpit|outboard well|locker|other" doc:"what it is"`
	Aft    Val[unit.M]   `toml:"from_x_m" must:"yes" least:"-3" most:"30" eg:"0.4" doc:"aft end"`
	Fore   Val[unit.M]   `toml:"to_x_m" must:"yes" least:"-3" most:"30" eg:"3.6" doc:"fore end"`
	Half   Val[unit.M]   `toml:"half_breadth_m" must:"yes" above:"0" most:"6" eg:"0.95" doc:"half breadth"`
	Sole   Val[unit.M]   `toml:"sole_z_m" must:"yes" least:"-2" most:"10" eg:"0.45" doc:"height of the sole"`
	Drains Val[bool]     `toml:"quick_draining" must:"yes" doc:"whether it empties itself quickly enough to count as dry"`
	Area   Val[unit.MM2] `toml:"drain_area_mm2" least:"0" most:"1000000" eg:"7800" doc:"clear area of all drains together"`
}

// Opening is a way for water into the hull.
type Opening struct {
	Entry
	Name   Val[string]   `toml:"name" must:"yes" doc:"what it is"`
	X      Val[unit.M]   `toml:"x_m" must:"yes" least:"-3" most:"30" eg:"2.1" doc:"position of its lowest point"`
	Y      Val[unit.M]   `toml:"y_m" must:"yes" least:"-6" most:"6" eg:"0.6" doc:"position of its lowest point; one on each side if written as both_sides"`
	Z      Val[unit.M]   `toml:"z_m" must:"yes" least:"-2" most:"10" eg:"1.05" doc:"height of its lowest point"`
	Area   Val[unit.MM2] `toml:"area_mm2" least:"0" most:"10000000" eg:"20000" doc:"clear area"`
	Both   Val[bool]     `toml:"both_sides" doc:"true where the same opening is on the other side too"`
	Closes Val[string]   `toml:"closes" must:"yes" oneof:"watertight|weathertight|not" doc:"how it can be closed; one that closes watertight or weathertight is taken as shut"`
}
