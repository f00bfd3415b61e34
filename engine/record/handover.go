package record

import "hullfile/engine/unit"

// What the owner's book is filled from, beside what the trades need.

// Engine is one engine of the boat.
type Engine struct {
	Entry
	Where     Val[string]  `toml:"where" doc:"where it is: port, starboard, centre"`
	Kind      Val[string]  `toml:"kind" must:"yes" doc:"what it is, e.g. four-stroke outboard"`
	Serial    Val[string]  `toml:"serial" doc:"serial number"`
	Power     Val[unit.KW] `toml:"power_kw" above:"0" most:"3000" likely:"1..600" eg:"85" doc:"rated power"`
	Fuel      Val[string]  `toml:"fuel" oneof:"petrol|diesel|battery" doc:"what it runs on"`
	Oil       Val[string]  `toml:"oil" doc:"oil that its maker asks for"`
	Propeller Val[string]  `toml:"propeller" doc:"propeller that is fitted"`
	Document  Val[string]  `toml:"document" ref:"document" doc:"its manual or declaration"`
}

// Contact is somebody whom the owner can call.
type Contact struct {
	Entry
	For       Val[string] `toml:"for" must:"yes" doc:"what to call about"`
	Name      Val[string] `toml:"name" must:"yes" doc:"office, workshop or service"`
	Telephone Val[string] `toml:"telephone" doc:"telephone number or radio channel"`
	Address   Val[string] `toml:"address" doc:"where it is"`
	Hours     Val[string] `toml:"hours" doc:"when somebody is there"`
	Urgent    Val[bool]   `toml:"emergency" doc:"true puts it on the emergency page"`
}

// Care is one thing that is done again and again to keep the boat.
type Care struct {
	Entry
	What   Val[string]    `toml:"what" must:"yes" doc:"what is done"`
	Where  Val[string]    `toml:"where" doc:"where on board"`
	First  Val[unit.Hour] `toml:"first_h" above:"0" most:"100000" eg:"20" doc:"running hours at which it is done first"`
	Every  Val[unit.Hour] `toml:"every_h" above:"0" most:"100000" eg:"100" doc:"running hours after which it is done again"`
	Months Val[int]       `toml:"every_months" least:"1" most:"240" eg:"12" doc:"months after which it is done again, whichever comes first"`
	By     Val[string]    `toml:"by" oneof:"owner|yard|engine workshop|trained person" doc:"who does it"`
	Source Val[string]    `toml:"source" doc:"who asks for it: the yard, the maker of the engine, a paper"`
}

// Serviced is one entry of the register of service.
type Serviced struct {
	Entry
	Date  Val[Date]      `toml:"date" must:"yes" doc:"day of the work"`
	Meter Val[unit.Hour] `toml:"at_h" least:"0" most:"100000" eg:"104" doc:"running hours on that day"`
	Care  Val[string]    `toml:"care" ref:"care" doc:"entry of the plan of care that it answers, by its key"`
	What  Val[string]    `toml:"what" must:"yes" doc:"what was done"`
	By    Val[string]    `toml:"by" doc:"who did it: owner, yard, a workshop; no name of a person"`
	Note  Val[string]    `toml:"note" doc:"anything that matters"`
}

// Claim is one entry of the register of claims under a warranty.
type Claim struct {
	Entry
	Date     Val[Date]      `toml:"date" must:"yes" doc:"day on which it was made"`
	Warranty Val[string]    `toml:"warranty" ref:"warranty" doc:"warranty that it is made under, by its key"`
	Meter    Val[unit.Hour] `toml:"at_h" least:"0" most:"100000" eg:"212" doc:"running hours on that day"`
	What     Val[string]    `toml:"what" must:"yes" doc:"what is wrong"`
	Answer   Val[string]    `toml:"answer" oneof:"accepted|refused|open" doc:"what was answered; open if not written"`
	Done     Val[string]    `toml:"done" doc:"what was done about it"`
	Closed   Val[Date]      `toml:"closed" after:"date" doc:"day on which it was closed"`
}

// Spare is something that is replaced in the life of the boat.
type Spare struct {
	Entry
	Name     Val[string] `toml:"name" must:"yes" doc:"what it is"`
	For      Val[string] `toml:"for" doc:"where it belongs"`
	Size     Val[string] `toml:"size" doc:"size, material, grade"`
	Number   Val[string] `toml:"number" doc:"number by which it is ordered"`
	Lot      Val[string] `toml:"lot" doc:"lot or batch fitted"`
	Aboard   Val[int]    `toml:"aboard" least:"0" most:"1000" eg:"2" doc:"how many lie on board at the handover"`
	Supplier Val[string] `toml:"from" doc:"where it is to be had"`
}
