package record

import "hullfile/engine/unit"

// HeelTest is an inclining test: weights are shifted across the boat and the heel is read.
type HeelTest struct {
	Entry
	Date       Val[Date]         `toml:"date" must:"yes" doc:"day of the test"`
	By         Val[string]       `toml:"by" ref:"person" doc:"who made it"`
	Instrument Val[string]       `toml:"instrument" ref:"instrument" doc:"what the heel was read with"`
	Mass       Val[unit.KG]      `toml:"mass_kg" above:"0" most:"200000" eg:"2150" doc:"mass of the boat during the test, weights and people included"`
	Density    Val[unit.KGPerM3] `toml:"water_density_kg_m3" least:"980" most:"1040" eg:"1012" doc:"density of the water"`
	Surface    Val[unit.MM]      `toml:"free_surface_mm" least:"0" most:"2000" eg:"12" doc:"rise of the centre of gravity by free surfaces on the day, where tanks were slack"`
	Aboard     Val[[]string]     `toml:"load_aboard" ref:"weight" doc:"load items that were on board"`
	Ashore     Val[[]string]     `toml:"ashore" ref:"weight" doc:"items of the light craft that were not on board"`
	Weights    Val[unit.KG]      `toml:"weights_kg" least:"0" most:"20000" eg:"160" doc:"test weights and people on board beside the breakdown"`
	WeightsX   Val[unit.M]       `toml:"weights_x_m" least:"-5" most:"30" eg:"2.6" doc:"their centre forward of the transom"`
	WeightsZ   Val[unit.M]       `toml:"weights_z_m" least:"-2" most:"15" eg:"0.9" doc:"their centre above the base line"`
	Allowed    Val[unit.MM]      `toml:"allowance_mm" above:"0" most:"1000" likely:"5..150" eg:"40" doc:"difference between measured and reckoned height of the centre that the yard accepts"`
	Shifts     []Shift           `toml:"shift" csv:"shifts" rows:"yes" doc:"shifts of weight, in their order, each measured from the first position"`
	Document   Val[string]       `toml:"document" ref:"document" doc:"the signed test sheet"`
	Note       Val[string]       `toml:"note" lines:"yes" doc:"wind, moorings, anything that matters"`
}

// Shift is one shift of weight with the heel that it gave. The heel is read from a pendulum or from an inclinometer.
type Shift struct {
	Entry
	Weight     Val[unit.KG]  `toml:"weight_kg" must:"yes" least:"0" most:"5000" eg:"40" doc:"mass that was shifted"`
	Distance   Val[unit.M]   `toml:"distance_m" must:"yes" least:"-10" most:"10" eg:"1.8" doc:"how far it was shifted, to starboard positive"`
	Pendulum   Val[unit.MM]  `toml:"pendulum_mm" above:"0" most:"10000" eg:"1500" doc:"length of the pendulum"`
	Deflection Val[unit.MM]  `toml:"deflection_mm" least:"-3000" most:"3000" eg:"51.5" doc:"how far the pendulum moved, to starboard positive"`
	Angle      Val[unit.Deg] `toml:"heel_deg" least:"-30" most:"30" eg:"1.97" doc:"heel by inclinometer, starboard down positive, instead of the pendulum"`
}

// FreeboardTest is freeboards measured afloat.
type FreeboardTest struct {
	Entry
	Date       Val[Date]         `toml:"date" must:"yes" doc:"day on which they were measured"`
	By         Val[string]       `toml:"by" ref:"person" doc:"who measured"`
	Instrument Val[string]       `toml:"instrument" ref:"instrument" doc:"what was measured with"`
	Density    Val[unit.KGPerM3] `toml:"water_density_kg_m3" must:"yes" least:"980" most:"1040" eg:"1018" doc:"density of the water, from a hydrometer"`
	Aboard     Val[[]string]     `toml:"load_aboard" ref:"weight" doc:"load items that were on board"`
	Ashore     Val[[]string]     `toml:"ashore" ref:"weight" doc:"items of the light craft that were not on board"`
	Allowed    Val[unit.Percent] `toml:"allowance_mass_percent" above:"0" most:"50" likely:"0.5..10" eg:"4" doc:"difference of mass that the yard accepts"`
	Points     []FreeboardPoint  `toml:"point" rows:"yes" doc:"where the freeboard was measured, at the sheer; both sides where one can"`
	Document   Val[string]       `toml:"document" ref:"document" doc:"the signed sheet"`
}

// FreeboardPoint is one freeboard.
type FreeboardPoint struct {
	Entry
	X         Val[unit.M]  `toml:"x_m" must:"yes" least:"-3" most:"30" eg:"0.5" doc:"position forward of the transom"`
	Y         Val[unit.M]  `toml:"y_m" must:"yes" least:"-6" most:"6" eg:"1.15" doc:"half breadth, port negative"`
	Z         Val[unit.M]  `toml:"z_m" least:"-2" most:"10" eg:"0.95" doc:"height of the point measured from; that of the sheer if not written"`
	Freeboard Val[unit.MM] `toml:"freeboard_mm" must:"yes" least:"-2000" most:"5000" eg:"562" doc:"height of the point above the water"`
}

// OffsetTest is an offset-load test: people, or weights for them, to one side.
type OffsetTest struct {
	Entry
	Date       Val[Date]     `toml:"date" must:"yes" doc:"day of the test"`
	By         Val[string]   `toml:"by" ref:"person" doc:"who made it"`
	Instrument Val[string]   `toml:"instrument" ref:"instrument" doc:"what the heel was read with"`
	Side       Val[string]   `toml:"side" must:"yes" oneof:"starboard|port" doc:"side to which the weight was put"`
	Persons    Val[int]      `toml:"persons" must:"yes" least:"0" most:"200" eg:"6" doc:"people, or sets of weights for them"`
	Weight     Val[unit.KG]  `toml:"weight_kg" must:"yes" least:"0" most:"20000" eg:"510" doc:"mass of them together"`
	Arm        Val[unit.M]   `toml:"arm_m" must:"yes" least:"0" most:"6" eg:"0.75" doc:"their centre off the centre line"`
	Angle      Val[unit.Deg] `toml:"heel_deg" must:"yes" least:"0" most:"60" eg:"9.2" doc:"heel that was read"`
	Least      Val[unit.MM]  `toml:"least_freeboard_mm" least:"-500" most:"3000" eg:"410" doc:"least height above the water of any point where it can come in"`
	Allowed    Val[unit.Deg] `toml:"allowance_deg" above:"0" most:"10" likely:"0.2..3" eg:"1" doc:"difference between measured and reckoned heel that the yard accepts"`
	Document   Val[string]   `toml:"document" ref:"document" doc:"the signed sheet"`
}

// SwampTest is a test of the boat full of water.
type SwampTest struct {
	Entry
	Date      Val[Date]         `toml:"date" must:"yes" doc:"day of the test"`
	By        Val[string]       `toml:"by" ref:"person" doc:"who made it"`
	Kind      Val[string]       `toml:"kind" must:"yes" oneof:"level|basic" doc:"level flotation, or basic flotation"`
	Weights   Val[unit.KG]      `toml:"weights_kg" must:"yes" least:"0" most:"20000" eg:"240" doc:"mass for people and load on board during the test"`
	Side      Val[unit.KG]      `toml:"side_weights_kg" least:"0" most:"5000" eg:"60" doc:"mass at one side in the heel part of the test"`
	Afloat    Val[bool]         `toml:"afloat" must:"yes" doc:"whether the boat stayed afloat"`
	Minutes   Val[unit.Hour]    `toml:"afloat_h" above:"0" most:"200" eg:"0.1" doc:"how long it was watched"`
	Heel      Val[unit.Deg]     `toml:"heel_deg" least:"0" most:"180" eg:"18" doc:"greatest heel with the side weights on"`
	Periphery Val[unit.Percent] `toml:"periphery_above_percent" least:"0" most:"100" eg:"75" doc:"part of the gunwale that stayed above the water, level and loaded"`
	Document  Val[string]       `toml:"document" ref:"document" doc:"the signed sheet"`
}

// ListTest is a float-to-list test: weight is put along one side until water is about to come in.
type ListTest struct {
	Entry
	Date     Val[Date]    `toml:"date" must:"yes" doc:"day of the test"`
	By       Val[string]  `toml:"by" ref:"person" doc:"who made it"`
	Weight   Val[unit.KG] `toml:"weight_kg" must:"yes" above:"0" most:"20000" eg:"247" doc:"mass along one side when water was about to come in"`
	Arm      Val[unit.M]  `toml:"arm_m" above:"0" most:"6" eg:"0.8" doc:"its centre off the centre line"`
	Document Val[string]  `toml:"document" ref:"document" doc:"the signed sheet"`
}
