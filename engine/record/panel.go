package record

import "hullfile/engine/unit"

// Panel is one plate field between stiffeners, or a group of equal ones.
type Panel struct {
	Entry
	Zone      Val[string]   `toml:"zone" must:"yes" oneof:"bottom|side|transom|deck|superstructure|bulkhead|tank" doc:"part of the boat the panel belongs to"`
	Where     Val[string]   `toml:"where" doc:"where to find the panel on board, e.g. frames 9 to 10, keel to first stringer"`
	X         Val[unit.M]   `toml:"x_m" least:"-2" most:"30" eg:"2.4" doc:"centre of the panel forward of the aft end of the waterline"`
	Z         Val[unit.M]   `toml:"z_m" least:"-3" most:"10" eg:"0.35" doc:"centre of the panel above the loaded waterline; needed for sides and the transom"`
	HullTop   Val[unit.M]   `toml:"hull_top_m" above:"0" most:"10" eg:"0.9" doc:"height of the hull's edge above the loaded waterline at this panel; needed for sides and the transom"`
	Short     Val[unit.MM]  `toml:"short_side_mm" must:"yes" upto:"long_side_mm" above:"0" most:"5000" likely:"60..1500" eg:"300" doc:"shorter side, centre to centre of stiffeners"`
	Long      Val[unit.MM]  `toml:"long_side_mm" must:"yes" above:"0" most:"10000" likely:"100..3000" eg:"900" doc:"longer side, centre to centre of stiffeners"`
	Camber    Val[unit.MM]  `toml:"camber_mm" least:"0" most:"2000" eg:"12" doc:"rise of a curved panel over its short side; leave out for flat plate"`
	Deadrise  Val[unit.Deg] `toml:"deadrise_deg" least:"0" most:"80" likely:"0..60" eg:"18" doc:"deadrise of the bottom at the panel; that of the boat is not taken in its place"`
	Head      Val[unit.M]   `toml:"head_m" above:"0" most:"20" eg:"0.8" doc:"bulkhead or tank: head of water on the panel, up to the top of the bulkhead, or of the tank or its overflow"`
	Thickness Val[unit.MM]  `toml:"thickness_mm" must:"yes" above:"0" most:"60" likely:"2..16" eg:"6.0" doc:"plate thickness as ordered"`
	Alloy     Val[string]   `toml:"alloy" must:"yes" ref:"alloy" doc:"alloy and temper, e.g. 5083-H116"`
	Edges     Val[string]   `toml:"edges" must:"yes" oneof:"welded|not welded" doc:"whether weld or its heat lies in the edges of the panel"`
	Face      Val[string]   `toml:"face" oneof:"front|side|aft end|top|upper tier" doc:"for the superstructure: which face"`
	Walked    Val[bool]     `toml:"walked_on" doc:"for the superstructure: whether people walk on it"`
	Count     Val[int]      `toml:"count" least:"1" most:"500" eg:"2" doc:"how many equal panels this stands for, both sides together; one if not written"`
	Lot       Val[string]   `toml:"lot" doc:"plate lot the panel was cut from"`
	Replaces  Val[[]string] `toml:"replaces" doc:"panels of the grid in whose place this one stands, by their names"`
	Document  Val[string]   `toml:"document" ref:"document" doc:"document that shows the plate, e.g. its certificate"`
}
