package record

import "hullfile/engine/unit"

// Part is one piece of the cut list.
type Part struct {
	Entry
	Name     Val[string]  `toml:"name" doc:"what it is, e.g. bottom plate port"`
	Panel    Val[string]  `toml:"panel" ref:"panel" doc:"panel, or one of the panels, that it makes"`
	Lot      Val[string]  `toml:"lot" doc:"lot that it was cut from, by its key in the stock records"`
	Alloy    Val[string]  `toml:"alloy" ref:"alloy" doc:"alloy and temper on the drawing"`
	Drawn    Val[unit.MM] `toml:"thickness_mm" above:"0" most:"100" likely:"1.5..25" eg:"6.0" doc:"thickness on the drawing"`
	Measured Val[unit.MM] `toml:"measured_mm" above:"0" most:"100" likely:"1.5..25" eg:"6.03" doc:"thickness as measured"`
	Length   Val[unit.M]  `toml:"length_m" above:"0" most:"40" eg:"3.86" doc:"length; for bar and extrusion the length cut"`
	Width    Val[unit.M]  `toml:"width_m" above:"0" most:"10" eg:"1.05" doc:"width"`
	Area     Val[unit.M2] `toml:"area_m2" above:"0" most:"200" eg:"3.9" doc:"area of one piece"`
	Mass     Val[unit.KG] `toml:"mass_kg" above:"0" most:"10000" eg:"62" doc:"mass of one piece"`
	Count    Val[int]     `toml:"count" least:"1" most:"500" eg:"2" doc:"how many equal pieces; one if not written"`
	Cut      Val[Date]    `toml:"cut" doc:"day on which it was cut"`
	CutBy    Val[string]  `toml:"cut_by" ref:"person" doc:"who cut it"`
	Marked   Val[bool]    `toml:"marked" doc:"whether the cast number was carried over to the part before the plate was cut"`
	Bend     Val[unit.MM] `toml:"bend_radius_mm" above:"0" most:"20000" eg:"18" doc:"smallest inside radius to which it was bent"`
	Drawing  Val[string]  `toml:"drawing" doc:"number of the drawing"`
	Where    Val[string]  `toml:"where" doc:"where to find it on board"`
	Note     Val[string]  `toml:"note" doc:"anything that matters"`
}

// Joint is one seam of the weld map, as drawn.
type Joint struct {
	Entry
	Part       Val[string]      `toml:"part" doc:"part on one side, by its key"`
	Other      Val[string]      `toml:"other_part" doc:"part on the other side, by its key"`
	Type       Val[string]      `toml:"type" must:"yes" oneof:"butt|fillet|lap|corner" doc:"how the parts meet; a tee is welded with fillets"`
	Thickness  Val[unit.MM]     `toml:"thickness_mm" above:"0" most:"100" eg:"6.0" doc:"thickness of the part on one side"`
	OtherThick Val[unit.MM]     `toml:"other_thickness_mm" above:"0" most:"100" eg:"5.0" doc:"thickness of the part on the other side"`
	Length     Val[unit.M]      `toml:"length_m" must:"yes" above:"0" most:"60" eg:"5.4" doc:"length of the joint; a joint welded from both sides counts once"`
	Throat     Val[unit.MM]     `toml:"throat_mm" above:"0" most:"50" eg:"3.5" doc:"throat of fillets as drawn"`
	Sides      Val[string]      `toml:"sides" oneof:"ss nb|ss mb|bs" doc:"single side without backing, single side with backing material, both sides"`
	Pattern    Val[string]      `toml:"pattern" oneof:"continuous|chain|staggered" doc:"whether the seam is whole or in beads; continuous if not written"`
	Bead       Val[unit.MM]     `toml:"bead_mm" above:"0" most:"2000" upto:"pitch_mm" eg:"75" doc:"length of one bead of an intermittent seam"`
	Pitch      Val[unit.MM]     `toml:"pitch_mm" above:"0" most:"5000" eg:"150" doc:"distance from bead to bead on one side"`
	Category   Val[string]      `toml:"category" must:"yes" oneof:"shell|watertight|slamming zone|primary|secondary" doc:"what depends on the seam; a shell seam in the slamming zone is written as slamming zone"`
	Shell      Val[bool]        `toml:"keeps_water_out" doc:"whether water stands on one side; true for shell and watertight if not written"`
	Connection Val[string]      `toml:"connection" doc:"what is joined, by its key in the tables of weld factors, e.g. watertight-boundary"`
	Across     Val[unit.NPerMM] `toml:"across_n_mm" least:"0" most:"100000" eg:"85" doc:"force across the joint on one millimetre of its length"`
	Along      Val[unit.NPerMM] `toml:"along_n_mm" least:"0" most:"100000" eg:"40" doc:"force along the joint on one millimetre of its length"`
	ForceFrom  Val[string]      `toml:"force_from" doc:"where these forces come from"`
	Position   Val[string]      `toml:"position" oneof:"PA|PB|PC|PD|PE|PF|PG|PH|PJ|H-L045|J-L045" doc:"position in which it is to be welded, by ISO 6947"`
	Procedure  Val[string]      `toml:"procedure" doc:"welding procedure specification, by its number"`
	Level      Val[string]      `toml:"level" oneof:"B|C|D" doc:"quality level of ISO 10042"`
	AftX       Val[unit.M]      `toml:"from_x_m" least:"-3" most:"30" eg:"0.0" doc:"aft end of the seam, forward of the transom"`
	AftGirth   Val[unit.M]      `toml:"from_girth_m" least:"-10" most:"10" eg:"0.9" doc:"aft end of the seam, along the skin from the keel, to port negative"`
	ForeX      Val[unit.M]      `toml:"to_x_m" least:"-3" most:"30" eg:"5.4" doc:"fore end of the seam, forward of the transom"`
	ForeGirth  Val[unit.M]      `toml:"to_girth_m" least:"-10" most:"10" eg:"0.7" doc:"fore end of the seam, along the skin from the keel, to port negative"`
	Where      Val[string]      `toml:"where" doc:"where to find it on board"`
	Proposed   Val[string]      `toml:"proposed" doc:"seam of the proposed weld map that it is, or is a stretch of, by its name; its place on the skin tells it if not written"`
	Note       Val[string]      `toml:"note" doc:"anything that matters"`
}

// Weld is one record of welding: a seam, or a stretch or a run of it, by one welder on one day.
type Weld struct {
	Entry
	Joint     Val[string]        `toml:"joint" must:"yes" doc:"joint of the weld map, by its key"`
	Date      Val[Date]          `toml:"date" doc:"day of welding"`
	Begin     Val[string]        `toml:"begin" form:"clock" doc:"when welding began: 09:14:00"`
	End       Val[string]        `toml:"end" form:"clock" doc:"when welding ended: 10:02:00"`
	Procedure Val[string]        `toml:"procedure" doc:"welding procedure specification, by its number"`
	Revision  Val[string]        `toml:"revision" doc:"revision of it that was used"`
	Welder    Val[string]        `toml:"welder" doc:"stamp of the welder"`
	Filler    Val[string]        `toml:"filler" doc:"lot of filler, by its key in the stock records"`
	Gas       Val[string]        `toml:"gas" doc:"lot of gas, by its key in the stock records"`
	Position  Val[string]        `toml:"position" oneof:"PA|PB|PC|PD|PE|PF|PG|PH|PJ|H-L045|J-L045" doc:"position in which it was welded"`
	Runs      Val[int]           `toml:"runs" least:"1" most:"200" eg:"1" doc:"number of runs"`
	From      Val[unit.M]        `toml:"from_m" least:"0" most:"60" upto:"to_m" eg:"0" doc:"where the welded stretch begins along the joint"`
	To        Val[unit.M]        `toml:"to_m" above:"0" most:"60" eg:"2.7" doc:"where it ends; the whole joint if neither is written"`
	Volts     Val[unit.Volt]     `toml:"arc_volt" above:"0" most:"100" likely:"8..40" eg:"22.4" doc:"arc voltage, mean"`
	Amperes   Val[unit.Ampere]   `toml:"arc_amp" above:"0" most:"1000" likely:"40..400" eg:"172" doc:"current, mean"`
	Speed     Val[unit.MMPerMin] `toml:"speed_mm_min" above:"0" most:"5000" likely:"50..1500" eg:"590" doc:"travel speed, mean"`
	Feed      Val[unit.MPerMin]  `toml:"wire_feed_m_min" above:"0" most:"40" likely:"2..25" eg:"8.1" doc:"wire feed"`
	Throat    Val[unit.MM]       `toml:"throat_mm" above:"0" most:"50" eg:"3.6" doc:"throat as measured"`
	Ambient   Val[unit.Celsius]  `toml:"ambient_c" least:"-40" most:"60" likely:"0..40" eg:"17" doc:"temperature of the shop"`
	Humidity  Val[unit.Percent]  `toml:"humidity_percent" least:"0" most:"100" eg:"55" doc:"relative humidity of the shop"`
	Preheat   Val[unit.Celsius]  `toml:"preheat_c" least:"-40" most:"400" likely:"0..120" eg:"20" doc:"temperature of the plate before welding"`
	Interpass Val[unit.Celsius]  `toml:"interpass_c" least:"-40" most:"600" likely:"0..150" eg:"70" doc:"highest temperature between runs"`
	Machine   Val[string]        `toml:"machine" ref:"instrument" doc:"welding machine, where it is on record as an instrument"`
	Photo     Val[string]        `toml:"photo" ref:"document" doc:"photograph of the seam"`
	Note      Val[string]        `toml:"note" doc:"anything that matters"`
}
