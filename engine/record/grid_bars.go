package record

import "hullfile/engine/unit"

// Stringer is what runs fore and aft on the skin: a stringer, girder, keel bar or chine bar, or a set of equal ones.
// Between its ends it runs straight on the unrolled skin.
type Stringer struct {
	Entry
	Kind    Val[string]  `toml:"kind" oneof:"stringer|girder|engine girder|keel bar|chine bar|formed chine|gunwale bar" doc:"what it is; a stringer if not written"`
	Zone    Val[string]  `toml:"zone" must:"yes" oneof:"bottom|side|deck|sole" doc:"part of the skin that it lies on"`
	Edge    Val[string]  `toml:"measured_from" oneof:"keel|chine|sheer|centre line" doc:"edge from which its offset is measured; keel on a bottom, chine on a side, centre line on a deck or sole if not written"`
	Offset  Val[unit.M]  `toml:"offset_m" must:"yes" least:"0" most:"10" eg:"0.19" doc:"distance from that edge along the skin at its aft end; of the first one in a set"`
	ForeOff Val[unit.M]  `toml:"fore_offset_m" least:"0" most:"10" eg:"0.14" doc:"the same at its fore end; that of the aft end if not written"`
	Spacing Val[unit.MM] `toml:"spacing_mm" above:"0" most:"3000" likely:"80..800" eg:"190" doc:"distance from one to the next in a set, at the aft end"`
	ForeGap Val[unit.MM] `toml:"fore_spacing_mm" above:"0" most:"3000" eg:"140" doc:"the same at the fore end; that of the aft end if not written"`
	Number  Val[int]     `toml:"number" least:"1" most:"60" eg:"4" doc:"how many lie beside each other on one side; one if not written"`
	Aft     Val[unit.M]  `toml:"from_x_m" least:"-3" most:"30" upto:"to_x_m" eg:"0.0" doc:"aft end; the aft end of the hull if not written"`
	Fore    Val[unit.M]  `toml:"to_x_m" least:"-3" most:"30" eg:"6.0" doc:"fore end; the fore end of the hull if not written"`
	Sides   Val[string]  `toml:"sides" oneof:"both|port|starboard|middle" doc:"on which side; both if not written, middle for a keel bar"`
	Section Val[string]  `toml:"section" ref:"section" doc:"what it is made of, by the key of the section; a formed chine has none"`
	Z       Val[unit.M]  `toml:"z_m" least:"-2" most:"10" eg:"0.52" doc:"sole: height of the sole above the base line, where there are several"`
	Through Val[bool]    `toml:"through" doc:"true where it runs through the frames, false where it is cut between them; through if not written"`
	Ends    Val[string]  `toml:"ends" oneof:"fixed|simple" doc:"how its spans are held; fixed where it runs through, simple where it is cut, if not written"`
	Bend    Val[unit.MM] `toml:"bend_radius_mm" above:"0" most:"2000" eg:"18" doc:"formed chine: inside radius"`
	Lot     Val[string]  `toml:"lot" doc:"lot that it was cut from"`
	Note    Val[string]  `toml:"note" doc:"anything that matters"`
}

// Stiffener is what stands or lies on the transom, on a bulkhead or on the plating of a tank, or a set of equal ones.
type Stiffener struct {
	Entry
	On      Val[string]  `toml:"on" must:"yes" oneof:"transom|bulkhead" doc:"what it stiffens"`
	Frame   Val[string]  `toml:"frame" ref:"frame" doc:"bulkhead: which one, by the key of the frame; all of them if not written"`
	Runs    Val[string]  `toml:"runs" must:"yes" oneof:"upright|level" doc:"which way it runs"`
	Offset  Val[unit.M]  `toml:"offset_m" least:"0" most:"10" eg:"0.45" doc:"upright: distance from the centre line; level: height above the base line; of the first one in a set"`
	Spacing Val[unit.MM] `toml:"spacing_mm" above:"0" most:"3000" likely:"80..800" eg:"300" doc:"distance from one to the next in a set"`
	Number  Val[int]     `toml:"number" least:"1" most:"60" eg:"2" doc:"how many there are in the set; for upright ones on one side; one if not written"`
	Low     Val[unit.M]  `toml:"from_m" least:"-2" most:"10" upto:"to_m" eg:"0.10" doc:"upright: height of its foot above the base line; level: distance of its inner end from the centre line; the edge of the plate if not written"`
	High    Val[unit.M]  `toml:"to_m" least:"-2" most:"10" eg:"0.66" doc:"the other end, measured alike; the edge of the plate if not written"`
	Sides   Val[string]  `toml:"sides" oneof:"both|port|starboard|middle" doc:"on which side; both if not written"`
	Section Val[string]  `toml:"section" must:"yes" ref:"section" doc:"what it is made of, by the key of the section"`
	Role    Val[string]  `toml:"role" oneof:"secondary|primary" doc:"whether other stiffeners end on it; secondary if not written"`
	Ends    Val[string]  `toml:"ends" oneof:"fixed|simple" doc:"how it is held; simple if not written"`
	Note    Val[string]  `toml:"note" doc:"anything that matters"`
}

// Support holds a deck or sole up from below: a pillar, or a plate that runs fore and aft.
type Support struct {
	Entry
	Under   Val[string] `toml:"under" must:"yes" oneof:"deck|sole" doc:"what it holds up"`
	Kind    Val[string] `toml:"kind" must:"yes" oneof:"pillar|plate" doc:"what it is; a plate runs fore and aft from from_x_m to to_x_m"`
	X       Val[unit.M] `toml:"x_m" least:"-3" most:"30" eg:"3.00" doc:"pillar: position"`
	Aft     Val[unit.M] `toml:"from_x_m" least:"-3" most:"30" upto:"to_x_m" eg:"0.60" doc:"plate: aft end"`
	Fore    Val[unit.M] `toml:"to_x_m" least:"-3" most:"30" eg:"2.80" doc:"plate: fore end"`
	Y       Val[unit.M] `toml:"y_m" must:"yes" least:"0" most:"6" eg:"0.45" doc:"distance from the centre line; the same on the other side unless it is nought"`
	Section Val[string] `toml:"section" ref:"section" doc:"pillar: what it is made of, by the key of the section"`
	Z       Val[unit.M] `toml:"z_m" least:"-2" most:"10" eg:"0.52" doc:"sole: height of the sole above the base line, where there are several"`
	Note    Val[string] `toml:"note" doc:"anything that matters"`
}

// Member is one member listed by hand, or a group of equal ones.
type Member struct {
	Entry
	Kind          Val[string]   `toml:"kind" must:"yes" oneof:"bottom stringer|side stringer|deck stringer|bottom frame|side frame|deck beam|floor|web frame|girder|engine girder|keel bar|chine bar|gunwale bar|bulkhead stiffener|transom stiffener|tank stiffener|superstructure stiffener|pillar|other" doc:"what it is"`
	Role          Val[string]   `toml:"role" must:"yes" oneof:"secondary|primary" doc:"secondary carries plate alone; primary also carries other members"`
	Zone          Val[string]   `toml:"zone" must:"yes" oneof:"bottom|side|transom|deck|superstructure|bulkhead|tank" doc:"part of the boat that loads it"`
	Where         Val[string]   `toml:"where" doc:"where to find it on board, e.g. frames 9 to 10, first stringer from the keel"`
	X             Val[unit.M]   `toml:"x_m" least:"-2" most:"30" eg:"2.4" doc:"middle of the span forward of the aft end of the waterline"`
	Z             Val[unit.M]   `toml:"z_m" least:"-3" most:"10" eg:"0.35" doc:"middle of the span above the loaded waterline"`
	HullTop       Val[unit.M]   `toml:"hull_top_m" above:"0" most:"10" eg:"0.9" doc:"height of the hull's edge above the loaded waterline at this place"`
	Span          Val[unit.MM]  `toml:"span_mm" must:"yes" above:"0" most:"10000" likely:"100..3000" eg:"500" doc:"unsupported length"`
	Spacing       Val[unit.MM]  `toml:"spacing_mm" must:"yes" above:"0" most:"5000" likely:"60..1500" eg:"215" doc:"breadth of plate that it carries"`
	Curve         Val[unit.MM]  `toml:"curve_mm" least:"0" most:"2000" eg:"12" doc:"rise of a curved member over its length; nought for a straight one"`
	Ends          Val[string]   `toml:"ends" must:"yes" oneof:"fixed|simple" doc:"how its ends are held"`
	Deadrise      Val[unit.Deg] `toml:"deadrise_deg" least:"0" most:"80" likely:"0..60" eg:"18" doc:"deadrise of the bottom there"`
	Head          Val[unit.M]   `toml:"head_m" above:"0" most:"20" eg:"0.8" doc:"bulkhead or tank: head of water on the middle of the span"`
	Section       Val[string]   `toml:"section" must:"yes" ref:"section" doc:"what it is made of, by the key of the section"`
	Attached      Val[unit.MM]  `toml:"attached_mm" least:"0" most:"60" eg:"6.0" doc:"thickness of the plate that it is welded to; nought where it stands on stringers and not on plate"`
	AttachedAlloy Val[string]   `toml:"attached_alloy" ref:"alloy" doc:"alloy and temper of that plate"`
	Edges         Val[string]   `toml:"edges" oneof:"welded|not welded" doc:"whether weld or its heat lies where it is stressed most; welded if not written"`
	Count         Val[int]      `toml:"count" least:"1" most:"500" eg:"2" doc:"how many equal ones this stands for, both sides together; one if not written"`
	Replaces      Val[[]string] `toml:"replaces" doc:"members of the grid in whose place this one stands, by their names"`
	Note          Val[string]   `toml:"note" doc:"anything that matters"`
}
