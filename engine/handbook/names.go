package handbook

import (
	"slices"
	"sync"
)

// Name is one thing that may go into a chapter.
type Name struct {
	Key    string
	Is     string // what it is, in words
	Record string // record key, or page, that it comes from
	Block  bool   // a picture, table or list, alone on its line
}

// Find gives a name of the set.
func Find(key string) (Name, bool) {
	all := Names()
	at := slices.IndexFunc(all, func(n Name) bool { return n.Key == key })
	if at < 0 {
		return Name{}, false
	}
	return all[at], true
}

func keys() []string {
	var out []string
	for _, n := range Names() {
		out = append(out, n.Key)
	}
	return out
}

// Names is the closed set: nothing else of the records can come into the owner's book.
func Names() []Name { return closedSet() }

var closedSet = sync.OnceValue(func() []Name { return slices.Concat(values(), blocks()) })

func values() []Name {
	return []Name{
		{"hull.number", "hull number of the yard", "number", false},
		{"hull.name", "name of the boat", "identity.name", false},
		{"hull.title", "what the boat is called in words", "title", false},
		{"hull.hin", "hull identification number", "identity.hin", false},
		{"hull.design", "design", "design", false},
		{"hull.owner", "owner", "identity.owner", false},
		{"hull.begun", "day on which building began", "identity.keel_laid", false},
		{"hull.launched", "day of the launch", "identity.launched", false},
		{"hull.handed", "day of the handover", "identity.handed_over", false},
		{"issue.number", "issue of this file", "issue.number", false},
		{"issue.date", "day of this issue", "issue.date", false},
		{"builder.name", "name of the yard", "yard.toml name", false},
		{"builder.address", "address of the yard", "yard.toml address", false},
		{"builder.contact", "how the yard is reached", "yard.toml contact", false},
		{"boat.use", "what the boat is for", "boat.use", false},
		{"boat.length", "length over all", "boat.length_overall_m", false},
		{"boat.beam", "beam of hull", "boat.beam_hull_m", false},
		{"boat.draught", "draught, fully loaded, engines tilted", "boat.draught_m", false},
		{"boat.light", "mass of the light craft", "boat.light_mass_kg", false},
		{"boat.loaded", "mass fully loaded", "boat.loaded_mass_kg", false},
		{"boat.category", "design category", "boat.category", false},
		{"boat.sea", "wind and sea of that category", "boat.category", false},
		{"boat.speed", "greatest speed that the structure is reckoned for", "boat.speed_kn", false},
		{"plate.load", "greatest load on the plate", "plate.max_load_kg", false},
		{"plate.persons", "greatest number of persons on the plate", "plate.persons", false},
		{"plate.person", "mass of a person that the plate was reckoned with", "plate.person_mass_kg", false},
		{"plate.power", "greatest power on the plate", "plate.power_kw", false},
		{"plate.category", "design category on the plate", "plate.category", false},
		{"plate.seen", "from where the plate is seen", "plate.seen_from", false},
		{"load.most", "greatest load that the checks leave", "page Loading and plates", false},
		{"load.persons", "greatest number of persons that they leave", "page Loading and plates", false},
		{"afloat.freeboard", "least freeboard, loaded", "page Afloat", false},
		{"afloat.crowd", "heel with everybody to one side", "page Afloat", false},
		{"afloat.flooding", "heel at which water comes in", "page Afloat", false},
		{"afloat.opening", "where it comes in first", "page Afloat", false},
		{"afloat.drains", "what drains by itself", "recess", false},
		{"fuel.tank", "volume of the fuel tanks", "boat.fuel_tank_l", false},
		{"fuel.usable", "fuel that the engines can draw", "boat.fuel_usable_l", false},
		{"fuel.kind", "what the engines run on", "engine", false},
		{"fuel.best", "speed with the least fuel for a mile on the plane", "page Trials", false},
		{"fuel.mile", "fuel for a mile at that speed", "page Trials", false},
		{"fuel.range", "range at that speed", "page Trials", false},
		{"fuel.reserve", "part of the fuel kept back in that range", "trial.reserve_percent", false},
		{"trial.speed", "greatest speed on trial", "page Trials", false},
		{"trial.mass", "mass on that trial", "page Trials", false},
		{"trial.noise", "sound at the helm on trial", "trial.noise", false},
		{"lift.light", "mass to lift, tanks empty", "page Weight", false},
		{"lift.full", "mass to lift, fuel tanks full", "page Weight", false},
		{"lift.centre", "centre of the light craft, forward of the transom", "page Weight", false},
		{"hours.run", "running hours on record", "hours", false},
		{"hours.next", "running hours of the next look at the welds", "page Running hours", false},
		{"build.alloys", "alloys of the plating", "panel", false},
		{"build.welders", "initials of those who welded", "weld", false},
		{"build.inspectors", "initials of those who looked at the welds", "inspection", false},
		{"warranty.structure", "warranty on the structure", "warranty", false},
	}
}

func blocks() []Name {
	return []Name{
		{"picture arrangement", "the boat from the side and from above", "page Boat", true},
		{"picture people", "where people and tanks are", "crew_area, tank", true},
		{"picture heeled", "the boat heeled with everybody to one side", "page Afloat", true},
		{"picture welds", "where the welds lie", "page Seams", true},
		{"table identity", "what makes this boat this boat", "identity", true},
		{"table plate", "what stands on the plate", "plate", true},
		{"table principal", "principal data", "boat", true},
		{"table people", "places for people", "crew_area", true},
		{"table openings", "ways for water into the hull", "opening", true},
		{"table strong", "where the boat is lifted, towed and moored", "fitting", true},
		{"table engines", "engines", "engine", true},
		{"table speeds", "speed, fuel and range by engine speed", "page Trials", true},
		{"table limits", "how fast in which sea", "page Limits", true},
		{"table metal", "plate by zone, with its lots", "panel, stock", true},
		{"table care", "plan of care", "care", true},
		{"table looks", "looks at the welds, done and to come", "look", true},
		{"table warranty", "warranties, part by part", "warranty", true},
		{"table claims", "register of claims, with blank lines", "claim", true},
		{"table service", "register of service, with blank lines", "serviced", true},
		{"table hours", "register of running hours, with blank lines", "hours", true},
		{"table spares", "spare parts", "spare", true},
		{"table contacts", "whom to call", "contact", true},
		{"table emergency", "whom to call in an emergency", "contact", true},
		{"papers engines", "papers of the engines", "document", true},
		{"papers electrical", "papers of the electrical system", "document", true},
		{"papers fuel", "papers of the fuel system", "document", true},
		{"papers gas", "papers of the gas system", "document", true},
		{"papers fire", "papers of fire-fighting", "document", true},
		{"papers steering", "papers of the steering", "document", true},
		{"papers trailer", "papers of trailer and lifting gear", "document", true},
		{"papers boat", "papers of the boat as a whole", "document", true},
		{"list chapters", "the chapters of this book", "the book itself", true},
		{"list short", "what the checks of strength, load and floating find short", "page Findings", true},
		{"list unknown", "what this book does not know of the boat", "the book itself", true},
		{"list glossary", "words that this book uses", "the glossary", true},
		{"lines 5", "five lines to write on", "", true},
	}
}
