package record

import "hullfile/engine/unit"

// Bracket is a locking piece between two members, or one kind of it at many places.
type Bracket struct {
	Entry
	Joins      Val[string]   `toml:"joins" must:"yes" oneof:"frame to keel|frame to chine|frame to deck|frame to frame|stringer to frame|stringer to transom|girder to transom|stiffener to plate" doc:"what it joins"`
	Frames     Val[[]string] `toml:"frames" ref:"frame" doc:"frames at which it sits, by their keys; every frame that has such a joint if not written"`
	Member     Val[string]   `toml:"member" doc:"member whose end it holds, by its name, a listed one or one of the grid; those that the frames tell if not written"`
	Shape      Val[string]   `toml:"shape" oneof:"bracket|gusset|lap|collar" doc:"what it is: a plate in the corner, a plate over both members, an overlap, a collar round a stringer; a bracket if not written"`
	Arms       Val[unit.MM]  `toml:"arms_mm" must:"yes" above:"0" most:"2000" likely:"30..600" eg:"120" doc:"length of its arm along the member"`
	OtherArm   Val[unit.MM]  `toml:"other_arm_mm" above:"0" most:"2000" eg:"120" doc:"length of the other arm; the same if not written"`
	Thickness  Val[unit.MM]  `toml:"thickness_mm" must:"yes" above:"0" most:"60" likely:"2..20" eg:"5.0" doc:"thickness"`
	Alloy      Val[string]   `toml:"alloy" ref:"alloy" doc:"alloy and temper"`
	Flange     Val[unit.MM]  `toml:"flange_mm" least:"0" most:"300" eg:"30" doc:"breadth of the flange along its free edge; none if not written"`
	Throat     Val[unit.MM]  `toml:"throat_mm" must:"yes" above:"0" most:"30" likely:"2..12" eg:"3.5" doc:"throat of its fillets"`
	WeldLength Val[unit.MM]  `toml:"weld_length_mm" above:"0" most:"5000" eg:"120" doc:"length of the fillet along one member, on one side; the arm if not written"`
	Sides      Val[string]   `toml:"sides" oneof:"one|both" doc:"whether it is welded on one side or on both; both if not written"`
	Filler     Val[string]   `toml:"filler" doc:"filler metal, e.g. 5356"`
	Count      Val[int]      `toml:"count" least:"1" most:"500" eg:"2" doc:"how many equal ones this stands for, both sides together; what the frames tell if not written"`
	Note       Val[string]   `toml:"note" doc:"anything that matters"`
}

// Fitting is a place where a load comes into the structure at one point: what hangs there, and what holds it.
type Fitting struct {
	Entry
	Kind         Val[string]   `toml:"kind" must:"yes" oneof:"outboard transom|outboard bracket|lifting point|towing eye|towing post|cleat|mooring bollard|trailer bunk|keel roller|beaching|other" doc:"what it is"`
	Where        Val[string]   `toml:"where" doc:"where to find it on board"`
	X            Val[unit.M]   `toml:"x_m" must:"yes" least:"-5" most:"30" eg:"0.0" doc:"where it sits, forward of the transom"`
	Y            Val[unit.M]   `toml:"y_m" least:"-6" most:"6" eg:"0.35" doc:"to starboard of the centre line"`
	Z            Val[unit.M]   `toml:"z_m" least:"-2" most:"10" eg:"0.62" doc:"above the base line"`
	Both         Val[bool]     `toml:"both_sides" doc:"true where the same one is on the other side too"`
	Mass         Val[unit.KG]  `toml:"mass_kg" above:"0" most:"50000" eg:"183" doc:"mass that hangs on it, e.g. of one outboard, or of the boat as it is lifted"`
	Share        Val[int]      `toml:"shared_by" least:"1" most:"20" eg:"4" doc:"how many such places carry that mass together; one if not written"`
	Power        Val[unit.KW]  `toml:"power_kw" above:"0" most:"3000" eg:"85" doc:"outboard: rated power of one engine"`
	Engines      Val[int]      `toml:"engines" least:"1" most:"6" eg:"1" doc:"outboard: how many engines hang on it"`
	WorkingLoad  Val[unit.KG]  `toml:"working_load_kg" above:"0" most:"100000" eg:"1500" doc:"load for which it is meant, as a mass"`
	Angle        Val[unit.Deg] `toml:"angle_deg" least:"0" most:"90" eg:"45" doc:"greatest angle of the pull from the vertical for a lifting point, from straight ahead for others"`
	Arm          Val[unit.MM]  `toml:"arm_mm" above:"0" most:"5000" eg:"450" doc:"lever: from the structure to where the load acts; for an outboard from the transom to its centre of gravity"`
	Drop         Val[unit.MM]  `toml:"shaft_depth_mm" above:"0" most:"2000" likely:"350..900" eg:"640" doc:"outboard: propeller shaft under the top of the transom"`
	Length       Val[unit.MM]  `toml:"length_mm" above:"0" most:"10000" eg:"300" doc:"length of what bears: foot of a fitting, trailer bunk, clamp of an outboard"`
	Breadth      Val[unit.MM]  `toml:"breadth_mm" above:"0" most:"5000" eg:"120" doc:"breadth of what bears"`
	Height       Val[unit.MM]  `toml:"height_mm" above:"0" most:"5000" eg:"400" doc:"outboard bracket: height of its fixing on the transom"`
	Bounce       Val[unit.G]   `toml:"bounce_g" above:"0" most:"20" likely:"1..6" eg:"3" doc:"on the trailer or at sea: acceleration that is taken for what hangs on it"`
	Plate        Val[unit.MM]  `toml:"plate_mm" above:"0" most:"60" eg:"8.0" doc:"thickness of the plate under it"`
	Doubler      Val[unit.MM]  `toml:"doubler_mm" above:"0" most:"60" eg:"8.0" doc:"thickness of a doubler or insert there"`
	Alloy        Val[string]   `toml:"alloy" ref:"alloy" doc:"alloy and temper of the plate"`
	Section      Val[string]   `toml:"section" ref:"section" doc:"member under it, by the key of the section"`
	Span         Val[unit.MM]  `toml:"span_mm" above:"0" most:"10000" eg:"500" doc:"unsupported length of that member"`
	Eye          Val[unit.MM]  `toml:"eye_thickness_mm" above:"0" most:"100" eg:"15" doc:"eye or pad: thickness"`
	EyeBreadth   Val[unit.MM]  `toml:"eye_breadth_mm" above:"0" most:"500" eg:"70" doc:"eye or pad: breadth across the hole"`
	Hole         Val[unit.MM]  `toml:"hole_mm" above:"0" most:"300" eg:"26" doc:"eye or pad: diameter of the hole"`
	EyeAlloy     Val[string]   `toml:"eye_alloy" ref:"alloy" doc:"eye or pad: alloy and temper"`
	Throat       Val[unit.MM]  `toml:"throat_mm" above:"0" most:"30" eg:"4.0" doc:"throat of the fillets that hold it"`
	WeldLength   Val[unit.MM]  `toml:"weld_length_mm" above:"0" most:"10000" eg:"320" doc:"length of these fillets together"`
	WeldSides    Val[string]   `toml:"sides" oneof:"one|both" doc:"whether the fillets lie on one side or on both"`
	Filler       Val[string]   `toml:"filler" doc:"filler metal, e.g. 5356"`
	Bolts        Val[int]      `toml:"bolts" least:"0" most:"100" eg:"4" doc:"bolts that hold it"`
	BoltDiameter Val[unit.MM]  `toml:"bolt_mm" above:"0" most:"60" eg:"12" doc:"diameter of the bolts"`
	BoltSpacing  Val[unit.MM]  `toml:"bolt_spacing_mm" above:"0" most:"3000" eg:"220" doc:"outboard: upright distance between upper and lower bolts"`
	Basis        Val[string]   `toml:"basis" doc:"from where the load is known: maker's sheet, the yard's own choice"`
	Note         Val[string]   `toml:"note" doc:"anything that matters"`
}

// RuleValue is a value that a method sheet asks for as rules.KEY and that has no key of its own here.
type RuleValue struct {
	Entry
	Number Val[unit.Ratio] `toml:"number" eg:"1.2" doc:"the value, where it is a number, in the unit that the sheet asks for"`
	Word   Val[string]     `toml:"word" doc:"the value, where it is a word"`
	From   Val[string]     `toml:"from" must:"yes" doc:"work, edition and clause in which the yard read it, or that it is the yard's own choice"`
}
