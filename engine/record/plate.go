package record

import "hullfile/engine/unit"

// Plate is what stands on the builder's plate, and on a capacity label beside it, as read off the boat, with what is
// needed to know where its figures come from.
type Plate struct {
	Law        Val[[]string] `toml:"law" oneof:"EU|UK|US|Australia" doc:"under whose rules the boat's plates stand; those of all are shown for information if not written"`
	MaxLoad    Val[unit.KG]  `toml:"max_load_kg" least:"0" most:"50000" likely:"75..20000" eg:"490" doc:"greatest load on the plate: people, stores and gear, without engines and without the contents of full fixed tanks"`
	WithEngine Val[unit.KG]  `toml:"max_load_with_engines_kg" least:"0" most:"50000" eg:"860" doc:"greatest load with the outboards counted in, as a US capacity label and an Australian plate give it"`
	Persons    Val[int]      `toml:"persons" least:"1" most:"200" eg:"6" doc:"greatest number of persons on the plate"`
	AllPersons Val[unit.KG]  `toml:"persons_mass_kg" above:"0" most:"20000" eg:"450" doc:"mass of all persons together, where the plate gives one"`
	Category   Val[string]   `toml:"category" oneof:"A|B|C|D" doc:"design category on the plate"`
	Power      Val[unit.KW]  `toml:"power_kw" least:"0" most:"3000" likely:"2..900" eg:"170" doc:"greatest power on the plate, all engines together"`
	EngineMass Val[unit.KG]  `toml:"engine_mass_kg" above:"0" most:"10000" eg:"366" doc:"mass of the outboards that the figures of the plate were reckoned with"`
	PersonMass Val[unit.KG]  `toml:"person_mass_kg" above:"0" most:"200" likely:"60..120" eg:"75" doc:"mass of one person that the figures of the plate were reckoned with"`
	Buoyancy   Val[string]   `toml:"buoyancy" oneof:"level|basic" doc:"flotation that the plate states for a boat under 6 m"`
	Standard   Val[string]   `toml:"standard" doc:"work and edition from which the figures of the plate come"`
	By         Val[string]   `toml:"approved_by" ref:"person" doc:"who approved the figures of the plate"`
	As         Val[string]   `toml:"approved_as" oneof:"builder|importer|authorised representative|person approved by an authority" doc:"in what capacity they were approved"`
	Approved   Val[Date]     `toml:"approved" doc:"day on which they were approved"`
	Seen       Val[string]   `toml:"seen_from" doc:"from where on board the plate can be read, e.g. from the helm, standing"`
	Fixed      Val[string]   `toml:"fixed_with" doc:"how it is fixed to the boat"`
	Document   Val[string]   `toml:"document" ref:"document" doc:"photograph of the plate on the boat"`
}

// Capacity is what the rules for a plate need beside the principal data: the United States' rule for boats under 20 feet
// (33 CFR 183) and the French rule for undecked boats.
type Capacity struct {
	Drive         Val[string]       `toml:"drive" oneof:"outboard|inboard|small outboard|oars" doc:"how the boat is driven; small outboard is one of 2 hp or less, inboard counts a sterndrive in"`
	Length        Val[unit.M]       `toml:"length_m" above:"0" most:"30" eg:"5.60" doc:"length over the deck without brackets, rudders and fittings; the length of hull if not written"`
	Displacement  Val[unit.KG]      `toml:"max_displacement_kg" above:"0" most:"200000" eg:"4300" doc:"mass of water that the hull displaces when water is just about to come in, level"`
	BoatMass      Val[unit.KG]      `toml:"boat_mass_kg" above:"0" most:"200000" eg:"790" doc:"hull, deck, everything that is fixed, and full fixed tanks; an outboard does not count, inboard machinery does"`
	Machinery     Val[unit.KG]      `toml:"machinery_mass_kg" above:"0" most:"20000" eg:"310" doc:"inboard engines with drives, controls and batteries"`
	Portable      Val[bool]         `toml:"portable_tank" doc:"true where the engine draws from a fuel tank that is carried on board"`
	Transom       Val[unit.M]       `toml:"transom_width_m" above:"0" most:"10" eg:"2.08" doc:"greatest width of the transom; without a full transom the greatest beam in the aft quarter"`
	TransomHeight Val[unit.MM]      `toml:"transom_height_mm" above:"0" most:"2000" likely:"300..800" eg:"510" doc:"height of the transom where the outboard hangs"`
	Remote        Val[bool]         `toml:"remote_steering" doc:"true where the outboard is steered from a wheel"`
	Flat          Val[bool]         `toml:"flat_bottom" doc:"true for a hard-chine boat with a flat bottom"`
	Below         Val[unit.KG]      `toml:"hull_below_kg" least:"0" most:"100000" eg:"520" doc:"mass of what is under water when the boat is swamped, engines and batteries apart"`
	Above         Val[unit.KG]      `toml:"hull_above_kg" least:"0" most:"100000" eg:"60" doc:"mass of what stays above the water when the boat is swamped"`
	Metal         Val[unit.KGPerM3] `toml:"hull_density_kg_m3" above:"1000" most:"20000" likely:"1200..8000" eg:"2660" doc:"density of what is under water"`
	Foam          Val[unit.KGPerM3] `toml:"foam_density_kg_m3" least:"0" most:"600" likely:"15..200" eg:"35" doc:"density of the foam"`
	Submerged     Val[unit.KG]      `toml:"machinery_submerged_kg" least:"0" most:"20000" eg:"190" doc:"what the inboard machinery weighs under water"`
	Depth         Val[unit.M]       `toml:"depth_m" above:"0" most:"6" eg:"0.58" doc:"depth of the hull amidships, bottom to gunwale, for the French rule"`
}
