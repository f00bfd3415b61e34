package engine

import (
	"slices"

	"hullfile/engine/crosscheck"
	"hullfile/engine/record"
	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// Brief is what is kept of a hull while another is worked on: all that a dossier may take from a hull of the yard, and what
// decides from whom it takes. It is a small part of the records, so a yard of thousands is never in memory as a whole.
type Brief struct {
	Number  string          `json:"number"`
	Title   string          `json:"title,omitempty"`
	State   string          `json:"state,omitempty"`
	Design  string          `json:"design,omitempty"`
	HIN     *Noted[string]  `json:"hin,omitempty"`
	Mass    *Noted[float64] `json:"loaded_mass_kg,omitempty"`
	Power   *Noted[float64] `json:"power_kw,omitempty"`
	Cracked bool            `json:"cracked,omitempty"` // a crack was found at one of its seams
	Hours   [][2]float64    `json:"hours,omitempty"`   // meter from and to
	Looks   []NearLook      `json:"looks,omitempty"`
	Lots    []string        `json:"lots,omitempty"`   // that its parts and plates name, in order, each once
	Parts   []NearPart      `json:"parts,omitempty"`  // those with a lot
	Welds   []NearWeld      `json:"welds,omitempty"`  // those with a day and hours
	Papers  []string        `json:"papers,omitempty"` // what its papers say of themselves; one of them may name another hull
}

// BriefOf makes the brief of a hull.
func BriefOf(h *record.Hull) *Brief {
	b := &Brief{
		Number: h.Number, Title: h.Title.V, State: h.Identity.State.V, Design: h.Design.V, HIN: noted(h.Identity.HIN),
		Mass: quantity(h.Boat.LoadedMass), Power: quantity(h.Boat.Power), Cracked: running.Cracked(h), Lots: lotsOf(h), Papers: crosscheck.Papers(h),
	}
	b.running(h)
	for i := range h.Parts {
		if h.Parts[i].Lot.V != "" {
			b.Parts = append(b.Parts, nearPart(&h.Parts[i]))
		}
	}
	for i := range h.Welds {
		if w := &h.Welds[i]; w.Date.Set && w.Begin.Set && w.End.Set {
			b.Welds = append(b.Welds, NearWeld{Welder: w.Welder.V, Joint: w.Joint.V, Date: w.Date.V.ISO(), Begin: w.Begin.V, At: w.Begin.At, End: w.End.V})
		}
	}
	return b
}

func (b *Brief) hin() string {
	if b.HIN == nil {
		return ""
	}
	return b.HIN.V
}

func (b *Brief) running(h *record.Hull) {
	for i := range h.Hours {
		b.Hours = append(b.Hours, [2]float64{float64(h.Hours[i].From.V), float64(h.Hours[i].To.V)})
	}
	for i := range h.Looks {
		l := NearLook{Meter: float64(h.Looks[i].Meter.V)}
		for k := range h.Looks[i].Indications {
			l.Is = append(l.Is, h.Looks[i].Indications[k].Is.V)
		}
		b.Looks = append(b.Looks, l)
	}
}

func nearPart(p *record.Part) NearPart {
	return NearPart{Key: p.ID, Lot: p.Lot.V, Count: written(p.Count, func(n int) int { return n }), Length: written(p.Length, plainM), Width: written(p.Width, plainM),
		Area: written(p.Area, func(a unit.M2) float64 { return float64(a) })}
}

func plainM(m unit.M) float64 { return float64(m) }

// lotsOf lists the lots that a hull names, in order.
func lotsOf(h *record.Hull) []string {
	var all []string
	for i := range h.Parts {
		all = append(all, h.Parts[i].Lot.V)
	}
	for _, p := range h.Plated() {
		all = append(all, p.Lot.V)
	}
	slices.Sort(all)
	return slices.DeleteFunc(slices.Compact(all), func(lot string) bool { return lot == "" })
}

func noted(v record.Val[string]) *Noted[string] {
	if !v.Set {
		return nil
	}
	return &Noted[string]{v.V, v.At}
}

func quantity[T ~float64](v record.Val[T]) *Noted[float64] {
	if !v.Set {
		return nil
	}
	return &Noted[float64]{float64(v.V), v.At}
}

func written[T, U any](v record.Val[T], plain func(T) U) *U {
	if !v.Set {
		return nil
	}
	u := plain(v.V)
	return &u
}

// Apart gives the brief without its parts, welds and papers, and these by themselves: most neighbours take nothing of them,
// and they are much the longer part.
func (b *Brief) Apart() (core, metal Brief) {
	core = *b
	core.Lots, core.Parts, core.Welds, core.Papers = nil, nil, nil, nil
	return core, Brief{Number: b.Number, Lots: b.Lots, Parts: b.Parts, Welds: b.Welds, Papers: b.Papers}
}
