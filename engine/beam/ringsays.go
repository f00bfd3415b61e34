package beam

import "fmt"

// faults lists what is wrong with a ring before it becomes a model.
func (r Ring) faults() Faults {
	var fs Faults
	for _, p := range []struct {
		name string
		at   Place
	}{{"keel", r.Keel}, {"chine", r.Chine}, {"sheer", r.Sheer}} {
		if !finite(p.at.Y, p.at.Z) {
			fs.add(p.name, "lies at (%v, %v), which is no place", p.at.Y, p.at.Z)
		}
	}
	if r.Keel.Y != 0 {
		fs.add("keel", "lies %v m from the middle, must lie in it", r.Keel.Y)
	}
	if !(r.Chine.Y > 0) || !(r.Sheer.Y > 0) {
		fs.add("chine and sheer", "lie %v and %v m from the middle, must lie to starboard of it", r.Chine.Y, r.Sheer.Y)
	}
	r.AtKeel.faults("keel", &fs)
	r.AtChine.faults("chine", &fs)
	if r.decked() || r.AtSheer != "" {
		r.AtSheer.faults("sheer", &fs)
	}
	for _, h := range []struct {
		name string
		hold Hold
	}{{"keel", r.KeelHeld}, {"chine", r.ChineHeld}, {"sheer", r.SheerHeld}} {
		if h.hold != Loosely && h.hold != Upright && h.hold != Firmly {
			fs.add(h.name, "hold %q is not known; write %s, %s or %s", h.hold, Loosely, Upright, Firmly)
		}
	}
	for _, v := range []float64{r.KeelToe, r.ChineToe, r.SheerToe, r.Starboard.Bottom.First, r.Starboard.Bottom.Last, r.Starboard.Side.First, r.Starboard.Side.Last, r.Starboard.Deck.First, r.Starboard.Deck.Last,
		r.Port.Bottom.First, r.Port.Bottom.Last, r.Port.Side.First, r.Port.Side.Last, r.Port.Deck.First, r.Port.Deck.Last, r.Camber, r.Deck.EI} {
		if !finite(v) {
			fs.add("ring", "%v is no number", v)
		}
	}
	if !r.decked() && (r.Starboard.Deck != (Run{}) || r.Port.Deck != (Run{})) {
		fs.add("deck beam", "carries a load, but has no stiffness")
	}
	return fs
}

// assumptions says what the model of a ring takes for granted.
func (r Ring) assumptions() []string {
	out := []string{
		"The ring is a plane frame of straight bars of one section each; what it shares with its neighbours through stringers is not counted.",
		"Bars meet at the corners of the moulded section; brackets stiffen nothing, and the moment at the toe of a bracket is read where it ends.",
		fmt.Sprintf("The joint at the keel is %s, at the chine %s.", r.AtKeel, r.AtChine),
		fmt.Sprintf("The keel is %s, the chine %s, the sheer %s: %s.", r.KeelHeld.words(), r.ChineHeld.words(), r.SheerHeld.words(), "what holds a corner is the plating that meets there, stiff in its own plane between bulkheads"),
	}
	if r.decked() {
		out = append(out, fmt.Sprintf("The deck beam runs from sheer to sheer, its joints there are %s.", r.AtSheer))
	} else {
		out = append(out, "There is no deck beam: above the chine the side frame stands by itself.")
	}
	if r.Starboard == r.Port {
		out = append(out, "Both sides are loaded alike.")
	}
	return append(out, "Deflections are small, and the metal stays elastic; heat beside welds lowers strength and not stiffness.")
}

func (h Hold) words() string {
	switch h {
	case Firmly:
		return "held in place"
	case Upright:
		return "held up and down"
	}
	return "free to move"
}
