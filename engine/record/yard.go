// Package record reads a yard folder: TOML records and CSV tables per design and hull, with the file, line and column
// of every value. The structs in this package are the one field table of the project: their tags drive the reader, its
// checks, the JSON Schema, the reference of records and the heads of CSV columns.
//
// Tags of a field:
//
//	toml     the key, with the unit at its end where the value has one
//	must     "yes": required once a hull has been laid over its design
//	unless   key beside it which, where it is written, makes this one not required
//	above    the value must be greater than this
//	least    the value must not be less than this
//	most     the value must not be greater than this
//	likely   "2..20": outside it the value is possible but a doubt (a finding, not a fault)
//	oneof    "a|b|c": the words that are allowed
//	ref      what the word must name: alloy, sheet, person, instrument, design, document, weight, panel, welder, inspector,
//	         procedure_test, inspection, imperfection, nonconformity, repair, stage, leak_test, care, warranty, list, evidence. What a weld or a part names in
//	         the stock, on the weld map or among the stamps is held against those records, not refused: it is evidence.
//	csv      file name (without .csv) in which the rows of a keyed table may stand instead
//	rows     "yes": entries are known by their order, so [[trial.T1.run]] without a key is allowed; the keys are 1, 2, 3
//	after    key beside it whose date must not be later than this one; several with a comma
//	upto     key beside it whose number must not be less than this one
//	form     "file": a path inside the documents folder; "hash": 64 hexadecimal digits; "moment": 2026-03-03T09:14:00; "clock": 09:14:00 or a moment
//	lines    "yes": text that may run over several lines
//	in       "hull" or "design": the key belongs in that record only
//	eg       a number that could stand there, for hints and the reference
//	doc      what it is, in words a builder uses
//
// A field of struct type is a table; a slice of structs that embed Entry is a keyed table ([panel.B3]). In a record that
// is laid over another, "absent = true" as the only line of a keyed table takes that entry away; Hull.Absent names it.
package record

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Yard is all records of one yard folder, read and laid over each other, without faults.
type Yard struct {
	Builder Builder
	Stock   Stock         // of all files in the folder stock
	Welding Procedures    // of all files in the folder procedures
	Hulls   []*Hull       // in order of their number
	Designs []DesignName  // in order of their name
	Doubts  []YardDoubt   // values that are possible but unlikely
	Sheets  []SheetSource // the yard's own method sheets, in order of name
	Lists   []List        // the yard's own lists of requirements, in order of name
	Files   []File        // every record file read, with the method sheets, byte for byte, in order of name

	Chapters []SheetSource // the yard's own chapters of the owner's book, in order of name
	Limits   []SheetSource // the yard's own tables of limits, in order of name

	Elsewhere []StockedPlate // plate that the yard has beside Stock, where one of its files is made again without the rest

	gathered *gathered // nil until it is settled
}

// DesignName names a design and what it is laid over.
type DesignName struct {
	Name    string
	BasedOn string
	At      finding.Place
}

// YardDoubt is an unlikely value, with the hull it belongs to; Hull is empty for the yard's own records.
type YardDoubt struct {
	Hull    string
	Finding finding.Finding
}

// Within reports whether the value stands in one of the files that are asked for.
func (d *YardDoubt) Within(file func(name string) bool) bool {
	return slices.ContainsFunc(d.Finding.Places, func(p finding.Place) bool { return file(p.File) })
}

// SheetSource is the text of a method sheet of the yard's own.
type SheetSource struct {
	Name string // file name, e.g. iso-12215-5-2008.toml
	Path string // relative to the yard folder
	Text []byte
}

// File is one record file as it was read.
type File struct {
	Path string // relative to the yard folder, forward slashes
	Text []byte
}

// Builder is yard.toml: who builds, who is who, and what they measure with.
type Builder struct {
	Name        Val[string]   `toml:"name" must:"yes" doc:"name of the yard as it stands on the builder's plate"`
	Address     Val[string]   `toml:"address" lines:"yes" doc:"postal address"`
	Contact     Val[string]   `toml:"contact" doc:"telephone or mail address for owners"`
	Code        Val[string]   `toml:"maker_code" doc:"manufacturer's identification code used in hull identification numbers"`
	Invented    Val[bool]     `toml:"invented" doc:"true marks every page as invented for demonstration"`
	Lists       Val[[]string] `toml:"requirements" ref:"list" doc:"lists of requirements that its boats must answer, by file name without .toml"`
	People      []Person      `toml:"person" csv:"people" doc:"people who build, weigh, measure, inspect and sign"`
	Instruments []Instrument  `toml:"instrument" csv:"instruments" doc:"what is measured with"`

	Welders        []Welder        `toml:"welder" csv:"welders" doc:"people who weld, with their stamps"`
	Qualifications []Qualification `toml:"qualification" csv:"qualifications" doc:"certificates of welders"`
	Inspectors     []Inspector     `toml:"inspector" csv:"inspectors" doc:"people who judge seams, one entry a method"`
}

// Person is somebody who did something that the file relies on.
type Person struct {
	Entry
	Name  Val[string] `toml:"name" must:"yes" doc:"name in full"`
	Role  Val[string] `toml:"role" must:"yes" doc:"what the person answers for in the yard"`
	Since Val[Date]   `toml:"since" doc:"first day in this role"`
	Until Val[Date]   `toml:"until" after:"since" doc:"last day in this role"`
}

// Instrument is something that measures.
type Instrument struct {
	Entry
	Name       Val[string] `toml:"name" must:"yes" doc:"what it is"`
	Serial     Val[string] `toml:"serial" doc:"serial number"`
	Calibrated Val[Date]   `toml:"calibrated" doc:"day of the last calibration"`
	Due        Val[Date]   `toml:"due" after:"calibrated" doc:"day on which the calibration ends"`
	Document   Val[string] `toml:"certificate" doc:"number of the calibration certificate"`
}

// Hull is one boat, laid over its design.
type Hull struct {
	Number string // folder name, or the number key of a lone hull.toml
	Design Val[string]
	Folder string   // folder of the hull relative to the yard folder; empty for a lone hull.toml
	Over   []string // record files it is made of, design first, relative to the yard folder
	Absent []Absent // entries of the design that this hull does not have, in the order in which they were taken away
	// Replaced are the values of the design that this hull has otherwise, in the order in which they were written over.
	Replaced []Replaced
	HullFile
}

// Replaced is a value that a hull, or a design it is laid over, has otherwise than the record below it.
type Replaced struct {
	Key      string // "plating.bottom.thickness_mm"
	Old, New string // as they were written
	At       finding.Place
	Was      finding.Place
}

// Absent is an entry that a hull, or a design it is laid over, takes away from the record below it.
type Absent struct {
	Subject string        // "panel B3"
	At      finding.Place // where it was taken away
	Was     finding.Place // where it had been written
}

// HullFile is what may stand in hull.toml and in design.toml.
type HullFile struct {
	Design      Val[string]     `toml:"design" ref:"design" in:"hull" doc:"name of the design folder that this hull is laid over"`
	BasedOn     Val[string]     `toml:"based_on" ref:"design" in:"design" doc:"name of the design that this design is a variant of"`
	NumberKey   Val[string]     `toml:"number" in:"hull" doc:"the yard's own hull number; must agree with the folder name"`
	Title       Val[string]     `toml:"title" doc:"what the boat is called in words, e.g. harbour launch"`
	Identity    Identity        `toml:"identity" doc:"what makes this boat this boat"`
	Issue       Issue           `toml:"issue" doc:"which issue of the technical file this is"`
	Boat        Boat            `toml:"boat" doc:"principal data of the boat"`
	Rules       Rules           `toml:"rules" doc:"by which method sheets the boat is reckoned"`
	Panels      []Panel         `toml:"panel" csv:"panels" doc:"plate panels between stiffeners"`
	Weights     []Weight        `toml:"weight" csv:"weights" doc:"items of the weight breakdown"`
	Weighings   []Weighing      `toml:"weighing" entries:"100" doc:"weighings of the boat"`
	Trials      []Trial         `toml:"trial" entries:"100" doc:"sea trials"`
	Lines       Lines           `toml:"lines" doc:"what the stations do not say about the shape of the hull"`
	Stations    []Station       `toml:"station" csv:"lines" entries:"200" doc:"shape of the hull as tables of its edges, from aft to forward"`
	Frames      []Frame         `toml:"frame" csv:"frames" entries:"300" doc:"frames and bulkheads by their position, from aft to forward"`
	Sections    []Section       `toml:"section" csv:"sections" doc:"bars and extrusions that members are made of"`
	Platings    []Plating       `toml:"plating" csv:"plating" entries:"300" doc:"plates of the skin: what covers which zone from where to where"`
	Stringers   []Stringer      `toml:"stringer" csv:"stringers" entries:"300" doc:"what runs fore and aft: stringers, girders, keel bar, chine bars"`
	Stiffeners  []Stiffener     `toml:"stiffener" csv:"stiffeners" entries:"500" doc:"what stands or lies on the transom and on bulkheads"`
	Supports    []Support       `toml:"support" csv:"supports" entries:"300" doc:"what holds decks and soles up"`
	Members     []Member        `toml:"member" csv:"members" doc:"stiffeners, frames and girders listed by hand"`
	Brackets    []Bracket       `toml:"bracket" csv:"brackets" entries:"500" doc:"locking pieces between members"`
	Fittings    []Fitting       `toml:"fitting" csv:"fittings" doc:"places where a load comes in at one point: engines, lifting, towing, mooring, trailer"`
	Gaugings    []Gauging       `toml:"gauging" csv:"gaugings" doc:"thickness readings of a boat that has been used"`
	Recesses    []Recess        `toml:"recess" entries:"100" doc:"cockpits and wells that water can enter"`
	Openings    []Opening       `toml:"opening" csv:"openings" entries:"300" doc:"ways for water into the hull"`
	Afloat      Afloat          `toml:"afloat" doc:"by what the boat is judged afloat"`
	Tanks       []Tank          `toml:"tank" csv:"tanks" doc:"tanks with their contents"`
	CrewAreas   []CrewArea      `toml:"crew_area" csv:"crew_areas" entries:"200" doc:"places where people can be"`
	Conditions  []Condition     `toml:"condition" entries:"50" doc:"states of loading; the usual ones are derived if not written"`
	Buoyancy    []Buoyancy      `toml:"buoyancy" csv:"buoyancy" doc:"foam and air chambers that keep a swamped boat up"`
	HeelTests   []HeelTest      `toml:"heel_test" entries:"50" doc:"inclining tests"`
	Freeboards  []FreeboardTest `toml:"freeboard" entries:"50" doc:"freeboards measured afloat"`
	OffsetTests []OffsetTest    `toml:"offset_test" entries:"50" doc:"tests with people to one side"`
	SwampTests  []SwampTest     `toml:"swamp_test" entries:"50" doc:"tests of the boat full of water"`
	ListTests   []ListTest      `toml:"list_test" entries:"50" doc:"float-to-list tests"`
	Plate       Plate           `toml:"plate" doc:"what stands on the builder's plate of the boat"`
	Capacity    Capacity        `toml:"capacity" doc:"what the rules for a plate need beside the principal data"`
	Hours       []Hours         `toml:"hours" csv:"hours" rows:"yes" doc:"log of running hours, in the order in which they were run"`
	Looks       []Look          `toml:"look" entries:"1000" doc:"looks at the seams at known running hours"`
	Rides       []Ride          `toml:"ride" entries:"200" doc:"records of accelerations under way"`
	Warranties  []Warranty      `toml:"warranty" doc:"what is promised for how long"`
	Service     Service         `toml:"service" doc:"how the boat is expected to be used"`
	Comfort     Comfort         `toml:"comfort" doc:"impact level that is taken as the most for the people on board"`
	Prediction  Prediction      `toml:"prediction" doc:"what a prediction of resistance and power needs beside the principal data"`
	Engines     []Engine        `toml:"engine" csv:"engines" doc:"engines, one entry each"`
	Contacts    []Contact       `toml:"contact" csv:"contacts" doc:"whom the owner can call"`
	Care        []Care          `toml:"care" csv:"care" doc:"plan of care: what is done again and again"`
	Serviced    []Serviced      `toml:"serviced" csv:"serviced" rows:"yes" doc:"register of service, in the order of the work"`
	Claims      []Claim         `toml:"claim" csv:"claims" doc:"register of claims under a warranty"`
	Spares      []Spare         `toml:"spare" csv:"spares" doc:"parts that are replaced in the life of the boat"`
	Survey      []SurveyReading `toml:"survey" csv:"survey" rows:"yes" doc:"lines of the survey sheet as they were filled on board"`
	Spots       []Spot          `toml:"spot" csv:"spots" doc:"welded details whose fatigue is compared"`
	Fitted      Fitted          `toml:"fitted" doc:"what the boat has on board, as far as it decides what is asked of it"`
	Conformity  Conformity      `toml:"conformity" doc:"what a declaration of conformity needs beside the boat"`
	Accepted    []Accepted      `toml:"accepted" csv:"accepted" doc:"who took an item of a list of requirements as answered, and when"`
	Documents   []Document      `toml:"document" csv:"documents" doc:"certificates, photographs and reports"`
	Notes       []Note          `toml:"note" doc:"notes in Markdown that belong in the file"`

	Parts           []Part          `toml:"part" csv:"parts" doc:"cut list: every part with the lot it was cut from"`
	Joints          []Joint         `toml:"joint" csv:"joints" doc:"weld map: every seam as drawn"`
	Welds           []Weld          `toml:"weld" csv:"welds" doc:"who welded what, when, how and with what"`
	Inspections     []Inspection    `toml:"inspection" csv:"inspections" doc:"looks at seams after welding"`
	Imperfections   []Imperfection  `toml:"imperfection" csv:"imperfections" doc:"what inspections found"`
	Nonconformities []Nonconformity `toml:"nonconformity" csv:"nonconformities" doc:"what is not as specified, and what was decided about it"`
	Repairs         []Repair        `toml:"repair" csv:"repairs" doc:"repairs of seams"`
	HoldPoints      []HoldPoint     `toml:"hold_point" csv:"hold_points" doc:"points at which work waits or somebody may watch"`
	LeakTests       []LeakTest      `toml:"leak_test" csv:"leak_tests" doc:"tests of tightness"`
	Stages          []Stage         `toml:"stage" csv:"stages" doc:"stages of the build with their hours"`
	Extents         []Extent        `toml:"extent" csv:"extents" doc:"how much of which seams is to be inspected by which method"`
}

// Identity is what makes this boat this boat.
type Identity struct {
	HIN      Val[string] `toml:"hin" doc:"hull identification number as marked on the boat"`
	Name     Val[string] `toml:"name" doc:"name of the boat"`
	Owner    Val[string] `toml:"owner" doc:"who owns the boat"`
	Contact  Val[string] `toml:"owner_contact" eg:"555-0112, Long Quay" doc:"how the owner is reached, for a recall"`
	State    Val[string] `toml:"state" oneof:"design|in build|finished|in service" doc:"how far the boat has come"`
	KeelLaid Val[Date]   `toml:"keel_laid" doc:"day on which building began"`
	Launched Val[Date]   `toml:"launched" after:"keel_laid" doc:"day on which the boat first floated"`
	Handed   Val[Date]   `toml:"handed_over" after:"keel_laid,launched" doc:"day on which the boat was handed to the owner"`
}

// Issue is one issue of the technical file.
type Issue struct {
	Number Val[int]    `toml:"number" least:"1" most:"999" doc:"number of the issue, from one"`
	Date   Val[Date]   `toml:"date" doc:"day of the issue; every date in the file comes from the records"`
	Reason Val[string] `toml:"reason" doc:"why this issue was made"`
	By     Val[string] `toml:"by" ref:"person" doc:"who issued it"`

	Earlier []PastIssue `toml:"earlier" rows:"yes" doc:"issues before this one, the first one first"`
}

// Note is a text in Markdown that the yard wants on a page.
type Note struct {
	Entry
	Title Val[string] `toml:"title" must:"yes" doc:"heading of the note"`
	Page  Val[string] `toml:"page" oneof:"boat|structure|weight|afloat|loading|trials|prediction|ride|limits|hours|materials|procedures|documents" doc:"page on which the note stands; the boat page if not written"`
	Text  Val[string] `toml:"text" must:"yes" lines:"yes" doc:"the note in Markdown"`
}

// Rules names the method sheets by which the boat is reckoned.
type Rules struct {
	Structure Val[string]     `toml:"structure" ref:"sheet" doc:"method sheet for the structure, by file name without .toml"`
	FramesBy  Val[string]     `toml:"frames_by" oneof:"one span|grillage" doc:"whether frames are judged each as one span by the sheet, or among their neighbours by the model of the bottom; one span if not written"`
	Also      Val[[]string]   `toml:"also" ref:"sheet" doc:"further method sheets for the structure that stand beside it as second opinions; they decide nothing"`
	Service   Val[string]     `toml:"service" doc:"kind of service by the words of the sheets, e.g. patrol"`
	Area      Val[string]     `toml:"service_area" doc:"restriction of service area by the words of the sheets, e.g. R3"`
	Sea       Val[string]     `toml:"sea" doc:"kind of sea by the words of the sheets, e.g. moderate"`
	Wave      Val[unit.M]     `toml:"wave_height_m" above:"0" most:"10" eg:"0.6" doc:"significant wave height for which the structure is reckoned by sheets that ask for one"`
	Trim      Val[unit.Deg]   `toml:"trim_deg" above:"0" most:"15" likely:"2..8" eg:"4" doc:"running trim for which the structure is reckoned by sheets that ask for one"`
	OneOf     Val[unit.Ratio] `toml:"one_of" above:"1" most:"10000" eg:"100" doc:"how rare the impact is that the structure is reckoned for: 10 for the mean of the highest tenth, 100 of the highest hundredth"`
	Values    []RuleValue     `toml:"value" doc:"further values that a sheet asks for as rules.KEY, e.g. read in the yard's own copy"`
}

// Boat is the principal data.
type Boat struct {
	LengthOverall Val[unit.M]     `toml:"length_overall_m" above:"0" most:"30" likely:"3..24" eg:"7.95" doc:"length over all with fittings"`
	LengthHull    Val[unit.M]     `toml:"length_hull_m" above:"0" most:"30" likely:"2.5..24" eg:"7.40" doc:"length of hull LH (ISO 8666 form)"`
	LengthWL      Val[unit.M]     `toml:"length_waterline_m" above:"0" most:"30" likely:"2..24" eg:"6.60" doc:"length of waterline LWL, fully loaded, at rest"`
	BeamHull      Val[unit.M]     `toml:"beam_hull_m" above:"0" most:"12" likely:"1..6" eg:"2.55" doc:"beam of hull BH"`
	BeamChine     Val[unit.M]     `toml:"beam_chine_m" above:"0" most:"12" likely:"0.8..5" eg:"2.10" doc:"beam between chines BC at 0.4 LWL from the aft end of the waterline"`
	Deadrise      Val[unit.Deg]   `toml:"deadrise_deg" least:"0" most:"50" likely:"5..30" eg:"16" doc:"deadrise at 0.4 LWL from the aft end of the waterline"`
	Draught       Val[unit.M]     `toml:"draught_m" above:"0" most:"5" likely:"0.15..1.5" eg:"0.45" doc:"draught of the hull, fully loaded, outboards tilted"`
	LoadedMass    Val[unit.KG]    `toml:"loaded_mass_kg" above:"0" most:"200000" likely:"200..60000" eg:"3200" doc:"mass fully loaded and ready for use, mLDC"`
	LightMass     Val[unit.KG]    `toml:"light_mass_kg" above:"0" most:"200000" likely:"100..50000" eg:"2100" doc:"mass of the light craft as the yard states it"`
	Speed         Val[unit.Knot]  `toml:"speed_kn" above:"0" most:"120" likely:"5..60" eg:"30" doc:"greatest speed in calm water at loaded mass, as intended"`
	Category      Val[string]     `toml:"category" oneof:"A|B|C|D" doc:"design category"`
	Persons       Val[int]        `toml:"persons" least:"1" most:"200" eg:"8" doc:"greatest number of persons"`
	Engines       Val[int]        `toml:"engines" least:"0" most:"6" eg:"2" doc:"number of engines"`
	Power         Val[unit.KW]    `toml:"power_kw" least:"0" most:"3000" likely:"5..900" eg:"170" doc:"rated power of all engines together"`
	FuelTank      Val[unit.Litre] `toml:"fuel_tank_l" least:"0" most:"20000" likely:"10..3000" eg:"300" doc:"volume of the fuel tanks together"`
	FuelUsable    Val[unit.Litre] `toml:"fuel_usable_l" least:"0" most:"20000" eg:"285" doc:"fuel that the engines can really draw"`
	Use           Val[string]     `toml:"use" doc:"what the boat is for, in one sentence"`
}
