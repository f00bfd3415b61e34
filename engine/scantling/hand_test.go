package scantling_test

import (
	"fmt"
	"math"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// hand is the method once more in plain Go, written from the notes on ISO 12215-5:2008 and not from the sheet: own
// arithmetic. It knows welded 5083 only (275 and 125 N/mm² beside a weld).
type hand struct {
	lwl, bc, deadrise, mass, speed float64
	category                       string
	zone, face                     string
	walked                         bool
	x, z, top, short, long, camber float64
}

func (h hand) kDC() float64 {
	return map[string]float64{"A": 1, "B": 0.8, "C": 0.6, "D": 0.4}[h.category]
}

func (h hand) planing() bool { return h.speed/math.Sqrt(h.lwl) >= 5 }

func (h hand) nCG() float64 {
	rise := math.Min(math.Max(h.deadrise, 10), 30)
	n := 0.32 * (h.lwl/10/h.bc + 0.084) * (50 - rise) * h.speed * h.speed * h.bc * h.bc / h.mass
	if n > 3 {
		n = math.Min(math.Max(h.speed/2/math.Pow(h.mass, 0.17), 3), 7)
	}
	return n
}

// along is k_L for a dynamic load factor.
func (h hand) along(n float64) float64 {
	at := math.Min(math.Max(h.x/h.lwl, 0), 1)
	if at > 0.6 {
		return 1
	}
	end := 0.167 * math.Min(math.Max(n, 3), 6)
	return end + (1-end)*at/0.6
}

// area is k_AR for a structural factor.
func (h hand) area(kR float64) float64 {
	square := math.Min(h.long*h.short, 2.5*h.short*h.short) / 1e6
	return math.Min(math.Max(kR*0.1*math.Pow(h.mass, 0.15)/math.Pow(square, 0.3), 0.25), 1)
}

func (h hand) pressure() float64 {
	kDC := h.kDC()
	slow, fast := h.area(1.5-3*h.short/1e4), h.area(1)
	kSlow, kFast := h.along(3), h.along(h.nCG())
	cube := math.Pow(h.mass, 0.33)
	baseSlow := 20 + 2.4*cube
	baseFast := h.mass / (10 * h.lwl * h.bc) * (1 + math.Sqrt(kDC)*h.nCG())
	deck := 14.6 + 0.35*h.lwl
	least := 0.45*cube + 0.9*h.lwl*kDC
	bottomSlow := math.Max(baseSlow*slow*kDC*kSlow, least)
	bottomFast := math.Max(baseFast*fast*kFast, least)
	up := (h.top - h.z) / h.top
	sideSlow := math.Max((deck+up*(baseSlow-deck))*slow*kDC*kSlow, 0.9*h.lwl*kDC)
	sideFast := math.Max((deck+up*(baseFast/4-deck))*fast*kDC*kFast, 0.9*h.lwl*kDC)
	zone := h.zone
	if zone == "transom" {
		zone = map[bool]string{true: "bottom", false: "side"}[h.z < 0]
	}
	if !h.planing() {
		bottomFast, sideFast, fast, kFast = 0, 0, 0, 0
	}
	switch zone {
	case "bottom":
		return math.Max(bottomSlow, bottomFast)
	case "side":
		switch {
		case h.category == "A" || h.category == "B":
			return math.Max(sideSlow, sideFast)
		case bottomFast > bottomSlow:
			return sideFast
		case bottomFast < bottomSlow:
			return sideSlow
		}
		return math.Max(sideSlow, sideFast)
	case "deck":
		return math.Max(deck*math.Max(slow, fast)*kDC*math.Max(kSlow, kFast), 5)
	}
	kSUP := map[string]float64{"front": 1, "side": 0.67, "aft end": 0.5, "top": 0.5, "upper tier": 0.35}[h.face]
	return math.Max(deck*kDC*math.Max(slow, fast)*kSUP, map[bool]float64{true: 5, false: 3}[h.walked])
}

func (h hand) thickness() float64 {
	r := h.long / h.short
	k2 := 0.5
	if r <= 2 {
		k2 = math.Min(math.Max((0.271*r*r+0.91*r-0.554)/(r*r-0.313*r+1.351), 0.308), 0.5)
	}
	kC := 1.0
	switch rise := h.camber / h.short; {
	case rise > 0.18:
		kC = 0.5
	case rise > 0.03:
		kC = math.Min(math.Max(1.1-3.33*rise, 0.5), 1)
	}
	bending := h.short * kC * math.Sqrt(h.pressure()*k2/1000/math.Min(0.6*275, 0.9*125))
	cube := 0.1 * math.Pow(h.mass, 0.33)
	least := map[string]float64{"bottom": 1 + 0.02*h.speed + cube, "side": 1 + cube, "deck": 1.35 + 0.06*h.lwl}
	zone := h.zone
	if zone == "transom" {
		zone = map[bool]string{true: "bottom", false: "side"}[h.z < 0]
	}
	return math.Max(bending, least[zone])
}

// record writes the same craft and panel as records.
func (h hand) record() (*record.Hull, record.Panel) {
	b := boat(h.category)
	b.Boat.LengthWL, b.Boat.BeamChine = put(unit.M(h.lwl), 3), put(unit.M(h.bc), 4)
	b.Boat.Deadrise, b.Boat.LoadedMass, b.Boat.Speed = put(unit.Deg(h.deadrise), 5), put(unit.KG(h.mass), 6), put(unit.Knot(h.speed), 7)
	p := bottom("P", 6)
	p.Zone, p.X = put(h.zone, 21), put(unit.M(h.x), 22)
	p.Short, p.Long, p.Camber = put(unit.MM(h.short), 23), put(unit.MM(h.long), 24), put(unit.MM(h.camber), 31)
	p.Z, p.HullTop = put(unit.M(h.z), 27), put(unit.M(h.top), 28)
	if h.face != "" {
		p.Face, p.Walked = put(h.face, 29), put(h.walked, 30)
	}
	return b, p
}

func TestSheetAgainstHand(t *testing.T) {
	fast := hand{lwl: 6.1, bc: 2, deadrise: 19, mass: 2400, speed: 38, category: "C", x: 4.27, top: 0.75, short: 200, long: 500}
	slow := hand{lwl: 6.6, bc: 2.1, deadrise: 14, mass: 3200, speed: 8, category: "C", x: 1.2, top: 0.9, short: 320, long: 480}
	calm := hand{lwl: 7.2, bc: 2.3, deadrise: 8, mass: 6500, speed: 16, category: "D", x: 2.0, top: 1.0, short: 280, long: 300, camber: 20}
	zones := []func(hand) hand{
		func(h hand) hand { h.zone = "bottom"; return h },
		func(h hand) hand { h.zone, h.z = "side", 0.3; return h },
		func(h hand) hand { h.zone, h.z, h.x = "transom", -0.1, 0; return h },
		func(h hand) hand { h.zone, h.z, h.x = "transom", 0.2, 0; return h },
		func(h hand) hand { h.zone = "deck"; return h },
		func(h hand) hand { h.zone, h.face, h.walked = "superstructure", "front", true; return h },
		func(h hand) hand { h.zone, h.face = "superstructure", "side"; return h },
		func(h hand) hand { h.zone, h.face = "superstructure", "aft end"; return h },
		func(h hand) hand { h.zone, h.face, h.walked = "superstructure", "top", true; return h },
		func(h hand) hand { h.zone, h.face = "superstructure", "upper tier"; return h },
	}
	r := shipped(t)
	for _, base := range []hand{fast, slow, calm} {
		for _, category := range []string{"A", "B", "C", "D"} {
			for _, place := range zones {
				h := place(base)
				h.category = category
				t.Run(fmt.Sprintf("%v kn/%s/%s %s %v", h.speed, h.category, h.zone, h.face, h.z), func(t *testing.T) {
					p, _ := r.judgeOne(t, first(h.record()), second(h.record()))
					if p.Standing == finding.NotShown {
						t.Fatalf("not shown: %s", p.Why)
					}
					near(t, "pressure", p.Pressure, h.pressure())
					near(t, "thickness", float64(p.Needed), h.thickness())
				})
			}
		}
	}
}

func first(h *record.Hull, _ record.Panel) *record.Hull  { return h }
func second(_ *record.Hull, p record.Panel) record.Panel { return p }

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-8*math.Max(1, want) {
		t.Errorf("%s: sheet %.9f, by hand %.9f", what, got, want)
	}
}
