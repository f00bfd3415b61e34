package record

import "hullfile/engine/unit"

// Inspection is one look at a joint, or at one weld of it, after welding.
type Inspection struct {
	Entry
	Joint      Val[string]       `toml:"joint" doc:"joint that was inspected, by its key"`
	Weld       Val[string]       `toml:"weld" doc:"weld that was inspected, by its key, where it is not the whole joint"`
	Date       Val[Date]         `toml:"date" doc:"day of the inspection"`
	Begin      Val[string]       `toml:"begin" form:"clock" doc:"when it began: 14:20:00"`
	Method     Val[string]       `toml:"method" must:"yes" oneof:"visual|penetrant|radiographic|ultrasonic" doc:"how it was inspected"`
	Stage      Val[string]       `toml:"stage" oneof:"in process|final|after repair" doc:"when in the work; final if not written"`
	By         Val[string]       `toml:"by" ref:"inspector" doc:"inspector, by the key in yard.toml"`
	Instrument Val[string]       `toml:"instrument" ref:"instrument" doc:"gauge or lamp used"`
	Seen       Val[unit.M]       `toml:"seen_m" above:"0" most:"60" eg:"5.4" doc:"length of seam that was seen; the whole joint if not written"`
	Level      Val[string]       `toml:"level" oneof:"B|C|D" doc:"quality level of ISO 10042 that it was held against"`
	Result     Val[string]       `toml:"result" oneof:"accepted|rejected" doc:"what was decided; leave out while nothing is"`
	Surface    Val[string]       `toml:"surface" oneof:"as welded|cleaned|painted" doc:"state of the surface"`
	Throat     Val[unit.MM]      `toml:"throat_mm" above:"0" most:"50" eg:"3.5" doc:"smallest throat that was measured"`
	Surfaced   Val[unit.Celsius] `toml:"surface_c" least:"-40" most:"600" eg:"20" doc:"temperature of the seam"`
	Document   Val[string]       `toml:"document" ref:"document" doc:"the report"`
	Note       Val[string]       `toml:"note" doc:"anything that matters"`
}

// Imperfection is one thing found at an inspection, with its number by ISO 6520-1. The size is kept as measured, so that
// it can be judged again when a limit changes.
type Imperfection struct {
	Entry
	Inspection Val[string]       `toml:"inspection" must:"yes" ref:"inspection" doc:"inspection at which it was found"`
	Number     Val[string]       `toml:"iso_6520" must:"yes" doc:"number by ISO 6520-1: 100 crack, 2017 surface pore, 5012 undercut"`
	Size       Val[unit.MM]      `toml:"size_mm" least:"0" most:"10000" eg:"0.4" doc:"the measure that its limit speaks of: depth, height, diameter"`
	Length     Val[unit.MM]      `toml:"length_mm" least:"0" most:"10000" eg:"12" doc:"length along the seam"`
	Share      Val[unit.Percent] `toml:"share_percent" least:"0" most:"100" eg:"0.8" doc:"projected area of porosity"`
	Bead       Val[unit.MM]      `toml:"bead_width_mm" above:"0" most:"100" eg:"9" doc:"width of the bead there, where the limit depends on it"`
	Position   Val[unit.M]       `toml:"position_m" least:"0" most:"60" eg:"1.35" doc:"where along the joint"`
	Judged     Val[string]       `toml:"judged" oneof:"within|beyond" doc:"what the inspector said of it"`
	Photo      Val[string]       `toml:"photo" ref:"document" doc:"photograph"`
	Note       Val[string]       `toml:"note" doc:"anything that matters"`
}

// Nonconformity is something that is not as it was specified, and what was decided about it.
type Nonconformity struct {
	Entry
	About        Val[string] `toml:"about" must:"yes" doc:"what is not as specified"`
	Raised       Val[Date]   `toml:"raised" doc:"day on which it was raised"`
	By           Val[string] `toml:"by" ref:"person" doc:"who raised it"`
	Joint        Val[string] `toml:"joint" doc:"joint it belongs to, by its key"`
	Part         Val[string] `toml:"part" doc:"part it belongs to, by its key"`
	Lot          Val[string] `toml:"lot" doc:"lot it belongs to, by its key"`
	Imperfection Val[string] `toml:"imperfection" ref:"imperfection" doc:"imperfection that it is about"`
	Inspection   Val[string] `toml:"inspection" ref:"inspection" doc:"inspection that it came out of"`
	Cause        Val[string] `toml:"cause" doc:"why it came about"`
	Disposition  Val[string] `toml:"disposition" oneof:"repair|use as it is|replace|scrap" doc:"what was decided"`
	Approved     Val[string] `toml:"approved_by" ref:"person" doc:"who approved that"`
	Closed       Val[Date]   `toml:"closed" after:"raised" doc:"day on which it was closed"`
	Document     Val[string] `toml:"document" ref:"document" doc:"the paper"`
	Note         Val[string] `toml:"note" lines:"yes" doc:"anything that matters"`
}

// Repair is one repair of a seam.
type Repair struct {
	Entry
	Nonconformity Val[string]  `toml:"nonconformity" ref:"nonconformity" doc:"nonconformity that it settles"`
	After         Val[string]  `toml:"after_repair" ref:"repair" doc:"earlier repair at the same spot"`
	Joint         Val[string]  `toml:"joint" doc:"joint that was repaired, by its key"`
	Date          Val[Date]    `toml:"date" doc:"day of the repair"`
	Procedure     Val[string]  `toml:"procedure" doc:"welding procedure specification, by its number"`
	Revision      Val[string]  `toml:"revision" doc:"revision of it that was used"`
	Welder        Val[string]  `toml:"welder" doc:"stamp of the welder"`
	Filler        Val[string]  `toml:"filler" doc:"lot of filler, by its key in the stock records"`
	Length        Val[unit.MM] `toml:"length_mm" above:"0" most:"60000" eg:"60" doc:"length that was taken out and welded again"`
	Position      Val[unit.M]  `toml:"position_m" least:"0" most:"60" eg:"1.35" doc:"where along the joint it begins"`
	Removed       Val[string]  `toml:"removed_by" doc:"how the old metal was taken out"`
	Inspection    Val[string]  `toml:"inspection" ref:"inspection" doc:"inspection after the repair"`
	Note          Val[string]  `toml:"note" doc:"anything that matters"`
}

// HoldPoint is a point of the inspection and test plan at which work waits, or somebody may watch.
type HoldPoint struct {
	Entry
	What      Val[string]   `toml:"what" must:"yes" doc:"what is held, watched or looked through"`
	Kind      Val[string]   `toml:"kind" must:"yes" oneof:"hold|witness|review" doc:"hold: work waits; witness: may be watched; review: papers are looked through"`
	Stage     Val[string]   `toml:"stage" ref:"stage" doc:"build stage that must not begin before the release"`
	Joints    Val[[]string] `toml:"joints" doc:"joints whose inspection it waits for, by their keys"`
	LeakTests Val[[]string] `toml:"leak_tests" ref:"leak_test" doc:"leak tests that it waits for"`
	Released  Val[Date]     `toml:"released" doc:"day of the release"`
	By        Val[string]   `toml:"by" ref:"person" doc:"who released it"`
	Witness   Val[string]   `toml:"witness" doc:"who watched, from outside the yard"`
	Next      Val[string]   `toml:"next_work" oneof:"paint|close|deck|foam|launch|other" doc:"work that follows the release"`
	NextBegan Val[Date]     `toml:"next_began" doc:"day on which that work began"`
	Document  Val[string]   `toml:"document" ref:"document" doc:"the signed sheet"`
	Note      Val[string]   `toml:"note" doc:"anything that matters"`
}

// LeakTest is one test of the tightness of a boundary.
type LeakTest struct {
	Entry
	Boundary   Val[string]          `toml:"boundary" must:"yes" doc:"what was tested, e.g. fuel tank, aft buoyancy chamber, shell below the deck"`
	Method     Val[string]          `toml:"method" must:"yes" oneof:"air and soap|hose|water head|vacuum box|chalk and oil|ultrasonic" doc:"how it was tested"`
	Date       Val[Date]            `toml:"date" doc:"day of the test"`
	By         Val[string]          `toml:"by" ref:"person" doc:"who tested"`
	Instrument Val[string]          `toml:"instrument" ref:"instrument" doc:"gauge or U-tube"`
	Joints     Val[[]string]        `toml:"joints" doc:"joints of the boundary, by their keys"`
	Panel      Val[string]          `toml:"panel" ref:"panel" doc:"weakest panel of the boundary"`
	Highest    Val[unit.KiloPascal] `toml:"highest_kpa" least:"0" most:"1000" likely:"0..30" eg:"3" doc:"highest pressure above that of the air around"`
	Start      Val[unit.KiloPascal] `toml:"start_kpa" least:"0" most:"1000" likely:"0..30" eg:"2.50" doc:"pressure above that of the air around when holding began"`
	End        Val[unit.KiloPascal] `toml:"end_kpa" least:"0" most:"1000" likely:"0..30" eg:"2.46" doc:"pressure above that of the air around when holding ended"`
	Hold       Val[unit.Minute]     `toml:"hold_min" above:"0" most:"10000" eg:"15" doc:"how long it was held"`
	StartTemp  Val[unit.Celsius]    `toml:"start_c" least:"-40" most:"60" eg:"16.5" doc:"temperature when holding began"`
	EndTemp    Val[unit.Celsius]    `toml:"end_c" least:"-40" most:"60" eg:"16.1" doc:"temperature when holding ended"`
	Relief     Val[bool]            `toml:"relief_valve" doc:"whether a relief valve or a U-tube kept the pressure from rising further"`
	Nozzle     Val[unit.KiloPascal] `toml:"nozzle_kpa" least:"0" most:"2000" eg:"220" doc:"pressure at the nozzle of a hose test"`
	Bore       Val[unit.MM]         `toml:"nozzle_mm" above:"0" most:"200" eg:"12" doc:"inside diameter of that nozzle"`
	Distance   Val[unit.M]          `toml:"nozzle_from_m" above:"0" most:"50" eg:"1.2" doc:"greatest distance of the nozzle from the seam"`
	Head       Val[unit.M]          `toml:"head_m" above:"0" most:"20" eg:"1.5" doc:"head of water above the highest point of the boundary"`
	Leaks      Val[int]             `toml:"leaks" least:"0" most:"10000" eg:"0" doc:"number of leaks found"`
	Result     Val[string]          `toml:"result" oneof:"tight|leaking" doc:"what was decided"`
	Again      Val[string]          `toml:"again_after" ref:"leak_test" doc:"earlier test of the same boundary that this one repeats"`
	Witness    Val[string]          `toml:"witness" doc:"who watched, from outside the yard"`
	Document   Val[string]          `toml:"document" ref:"document" doc:"the test sheet"`
	Note       Val[string]          `toml:"note" doc:"anything that matters"`
}

// Stage is one stage of the build with its hours.
type Stage struct {
	Entry
	Name    Val[string]    `toml:"name" must:"yes" doc:"what is done in it"`
	Order   Val[int]       `toml:"order" least:"1" most:"999" eg:"7" doc:"place in the order of building"`
	Kind    Val[string]    `toml:"kind" oneof:"cutting|fitting|welding|testing|painting|fitting out|trial|other" doc:"kind of work"`
	Planned Val[unit.Hour] `toml:"planned_h" least:"0" most:"100000" eg:"46" doc:"hours planned"`
	Booked  Val[unit.Hour] `toml:"booked_h" least:"0" most:"100000" eg:"51.5" doc:"hours booked so far"`
	From    Val[Date]      `toml:"from" doc:"first day"`
	To      Val[Date]      `toml:"to" after:"from" doc:"last day"`
	Note    Val[string]    `toml:"note" doc:"anything that matters"`
}
