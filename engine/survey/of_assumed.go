package survey

import (
	"strings"

	"hullfile/engine/finding"
)

// settled are the record keys that replace an assumption and that can be measured on board, with how.
var settled = []struct{ key, name, do, sign string }{
	{"afloat.water_density_kg_m3", "density of the water", "fill a tall glass from beside the boat and read a hydrometer", "kg/m³"},
	{"afloat.windage_above_sheer_m2", "area above the sheer", "measure length and height of everything that stands above the sheer, from the side, and add up", "m²"},
	{"prediction.frontal_area_m2", "area from ahead", "measure breadth and height of hull and house above water, from ahead, and add up", "m²"},
	{"prediction.thrust_z_m", "height of the propeller shaft", "plumb from the keel line to the middle of the shaft, engines down, upwards positive", "m"},
	{"prediction.thrust_deg", "angle of the propeller shaft", "inclinometer on shaft and keel, engines as they run; write the difference, upwards positive", "°"},
}

// assumed are the assumptions of the file that a measurement on board replaces. Nothing is expected of the reading: it goes
// into the record.
func (in *Input) assumed() []Item {
	var out []Item
	for _, s := range settled {
		for _, a := range in.Assumptions {
			if !strings.Contains(a.Settle, s.key) {
				continue
			}
			i := Item{Key: key("assumed", s.key), Class: Tape, Subject: s.name, Why: "assumed: " + a.Says, Do: s.do, Unit: s.sign}
			i.Expect = Expect{Says: "any reading; it goes into the record as " + s.key, Source: "an assumption of this file", Basis: orPractice(a.Basis)}
			i.Spot.None = true
			out = append(out, i)
			break
		}
	}
	return out
}

func orPractice(b finding.Basis) finding.Basis {
	if b == "" {
		return finding.Practice
	}
	return b
}
