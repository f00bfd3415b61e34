package site

import (
	"math"
	"slices"
	"strings"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	bar "hullfile/engine/section" // section is a page of the contents here
	"hullfile/site/chart"
)

// nearFrame is how far from a frame, in metres, something may lie and still be cut or stand there.
const nearFrame = 0.02

// midship draws the frame nearest to the middle of the waterline.
func (l *leaf) midship() (frame string, d Drawing) {
	h := l.dossier.Lines.Hull
	if h == nil || len(h.Stations) == 0 {
		return "", Drawing{}
	}
	middle := (h.Stations[0].X + h.Stations[len(h.Stations)-1].X) / 2
	best := math.Inf(1)
	for i := range l.hull.Frames {
		if f := &l.hull.Frames[i]; f.X.Set && math.Abs(float64(f.X.V)-middle) < best {
			frame, best = f.ID, math.Abs(float64(f.X.V)-middle)
		}
	}
	if frame == "" {
		return "", Drawing{}
	}
	return frame, l.framePicture(frame)
}

// framePicture draws the half section at a frame with its sizes.
func (l *leaf) framePicture(id string) Drawing {
	at := slices.IndexFunc(l.hull.Frames, func(f record.Frame) bool { return f.ID == id })
	h := l.dossier.Lines.Hull
	if at < 0 || h == nil || !l.hull.Frames[at].X.Set {
		return Drawing{}
	}
	x := float64(l.hull.Frames[at].X.V)
	c := chart.FrameCut{Name: "frame " + id, X: x, Skins: l.skins(h.Section(x), x)}
	if a := l.dossier.Lines.Afloat; l.dossier.Lines.HasAfloat {
		c.Water, c.HasWater = lines.Surface(a.Rest.Attitude, x), true
	}
	inside := insideOf(c.Skins)
	for i := range l.dossier.Grid.Lines {
		b := &l.dossier.Grid.Lines[i]
		m := l.judgements().members[b.Member]
		if m == nil || b.Port || len(b.Points) < 2 || b.Zone == "bulkhead" || b.Zone == "transom" {
			continue
		}
		if stands(b.Points, x) {
			c.Webs = append(c.Webs, l.cutWeb(b.ID, b.Points, m, inside, b.Zone))
			continue
		}
		if p, ok := cutAt(b.Points, x); ok {
			c.Cuts = addCut(c.Cuts, l.cutBar(b.ID, b.Zone, p, m, &c, inside))
		}
	}
	s := h.Section(x)
	return drawing("Section at frame "+id+", with sizes", chart.FrameSection(c)).says(frameSays(&c, s.At[lines.Chine].Z, s.At[lines.Sheer].Z))
}

// skins are the plates at a place along the hull, each with the thickness of a panel there.
func (l *leaf) skins(s lines.Station, x float64) []chart.CutSkin {
	at := func(e lines.Edge) [2]float64 { return [2]float64{s.At[e].Y, s.At[e].Z} }
	way := func(from, to lines.Edge) [][2]float64 {
		var out [][2]float64
		for e := from; e <= to; e++ {
			out = append(out, at(e))
		}
		return out
	}
	out := []chart.CutSkin{
		{Way: way(lines.Keel, lines.Chine), Words: l.plateWords("bottom", x)},
		{Way: way(lines.Chine, lines.Sheer), Words: l.plateWords("side", x)},
	}
	for _, zone := range []string{"deck", "sole"} {
		if w := l.deckWay(zone, x); len(w) > 1 {
			out = append(out, chart.CutSkin{Way: w, Words: l.plateWords(zone, x)})
		}
	}
	return out
}

// plateWords names a plate and its thickness at a place: that of the panel which begins there or lies over it.
func (l *leaf) plateWords(zone string, x float64) string {
	for i := range l.dossier.Grid.Patches {
		p := &l.dossier.Grid.Patches[i]
		if p.Port || p.Zone != zone || !spans(p.Corners, x) {
			continue
		}
		if judged := l.judgements().panels[p.Panel]; judged != nil {
			return zone + " " + written(float64(judged.Fitted), "mm") + " mm"
		}
	}
	return ""
}

// spans reports whether a place lies between the ends of a piece of plate.
func spans(corners []hydrostatics.Vector, x float64) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		low, high = math.Min(low, c.X), math.Max(high, c.X)
	}
	return x >= low-nearFrame && x <= high+nearFrame
}

// deckWay is the cut through decks or soles at a place, from the innermost panel outwards.
func (l *leaf) deckWay(zone string, x float64) [][2]float64 {
	var all [][2]float64
	for i := range l.dossier.Grid.Patches {
		p := &l.dossier.Grid.Patches[i]
		if p.Zone != zone || p.Port || !spans(p.Corners, x) {
			continue
		}
		for k := range p.Corners {
			a, b := p.Corners[k], p.Corners[(k+1)%len(p.Corners)]
			if t, ok := crossing(a.X, b.X, x); ok {
				q := [2]float64{a.Y + float64(t*(b.Y-a.Y)), a.Z + float64(t*(b.Z-a.Z))}
				if q[0] >= -1e-6 {
					all = append(all, q)
				} else {
					all = append(all, [2]float64{0, q[1]}) // a panel across the centre line
				}
			}
		}
	}
	slices.SortFunc(all, func(a, b [2]float64) int {
		switch {
		case a[0] < b[0]-1e-6:
			return -1
		case a[0] > b[0]+1e-6:
			return 1
		}
		return 0
	})
	return slices.CompactFunc(all, func(a, b [2]float64) bool { return math.Abs(a[0]-b[0]) < 1e-4 })
}

// crossing tells where on a stretch from a to b a value lies.
func crossing(a, b, x float64) (t float64, ok bool) {
	if math.Abs(b-a) < 1e-9 {
		return 0, math.Abs(a-x) < nearFrame
	}
	t = (x - a) / (b - a)
	return min(max(t, 0), 1), t > -0.04 && t < 1.04
}

// stands reports whether a line lies in the plane of a frame.
func stands(points []hydrostatics.Vector, x float64) bool {
	for _, p := range points {
		if math.Abs(p.X-x) > nearFrame {
			return false
		}
	}
	return true
}

// cutAt is where a line along the boat passes a frame; a line may end at it.
func cutAt(points []hydrostatics.Vector, x float64) (hydrostatics.Vector, bool) {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		if (x-a.X)*(x-b.X) > 1e-6 && math.Abs(x-a.X) > nearFrame && math.Abs(x-b.X) > nearFrame {
			continue
		}
		if t, ok := crossing(a.X, b.X, x); ok && math.Abs(b.X-a.X) > 1e-6 {
			return hydrostatics.Vector{X: x, Y: a.Y + float64(t*(b.Y-a.Y)), Z: a.Z + float64(t*(b.Z-a.Z))}, true
		}
	}
	return hydrostatics.Vector{}, false
}

// insideOf is a place inside the section, on the centre line halfway up.
func insideOf(skins []chart.CutSkin) [2]float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range skins[:2] {
		for _, p := range s.Way {
			low, high = math.Min(low, p[1]), math.Max(high, p[1])
		}
	}
	return [2]float64{0, (low + high) / 2}
}

func heightOf(m *scantling.Member) float64 {
	return math.Max(0, float64(m.Fitted.Depth-m.Bar.Plate)) / 1000
}

func (l *leaf) cutWeb(id string, points []hydrostatics.Vector, m *scantling.Member, inside [2]float64, zone string) chart.CutWeb {
	w := chart.CutWeb{Height: heightOf(m), Name: id, Section: m.Record.Section.V, Of: beforeNumber(id)}
	for _, p := range points {
		w.Way = append(w.Way, [2]float64{math.Max(p.Y, 0), p.Z})
	}
	w.Inward = chart.Inward(w.Way[0], w.Way[len(w.Way)-1], inside)
	if zone == "deck" || zone == "sole" {
		w.Inward = [2]float64{0, -1}
	}
	return w
}

func (l *leaf) cutBar(id, zone string, at hydrostatics.Vector, m *scantling.Member, c *chart.FrameCut, inside [2]float64) chart.CutBar {
	s := m.Bar.Shape
	b := chart.CutBar{At: [2]float64{at.Y, at.Z}, Height: heightOf(m), Flange: float64(s.Flange) / 1000, Pipe: s.Kind == bar.Pipe, Name: strings.TrimSuffix(id, " "), Section: m.Record.Section.V}
	b.Of = shortBar(id)
	if strings.HasPrefix(b.Of, "stringer ") {
		b.Of = zone + " stringer"
	}
	b.Inward = l.inwardAt(zone, b.At, c, inside)
	return b
}

// shortBar is what a drawing calls a member along the boat: "stringer 2", "keel bar K", from the name that the grid gave it.
func shortBar(id string) string {
	for _, word := range []string{"stringer ", "keel bar ", "chine bar ", "gunwale bar ", "girder "} {
		if _, rest, is := strings.Cut(id, word); is {
			key, _, _ := strings.Cut(rest, " ")
			return word + key
		}
	}
	return ""
}

// beforeNumber is the kind of a member of a frame, from the name that the grid gave it: "bottom frame" of "bottom frame 5".
func beforeNumber(id string) string {
	words := strings.Fields(id)
	if len(words) < 2 {
		return id
	}
	return words[0] + " " + words[1]
}

// inwardAt is square to the plate that a member stands on.
func (l *leaf) inwardAt(zone string, at [2]float64, c *chart.FrameCut, inside [2]float64) [2]float64 {
	switch {
	case zone == "deck" || zone == "sole":
		return [2]float64{0, -1}
	case at[0] < 0.01:
		return [2]float64{0, 1}
	}
	best, out := math.Inf(1), [2]float64{0, 1}
	for _, s := range c.Skins[:2] {
		for i := 1; i < len(s.Way); i++ {
			a, b := s.Way[i-1], s.Way[i]
			if d := awayFrom(a, b, at); d < best {
				best, out = d, chart.Inward(a, b, inside)
			}
		}
	}
	return out
}

// awayFrom is the distance of a place from a straight piece.
func awayFrom(a, b, p [2]float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	long := float64(dx*dx) + float64(dy*dy)
	t := 0.0
	if long > 1e-12 {
		t = min(max((float64((p[0]-a[0])*dx)+float64((p[1]-a[1])*dy))/long, 0), 1)
	}
	return math.Hypot(p[0]-a[0]-t*dx, p[1]-a[1]-t*dy)
}

// addCut keeps one of two members that meet at a frame in one place.
func addCut(all []chart.CutBar, b chart.CutBar) []chart.CutBar {
	for i := range all {
		if math.Hypot(all[i].At[0]-b.At[0], all[i].At[1]-b.At[1]) < 0.005 && all[i].Section == b.Section {
			return all
		}
	}
	return append(all, b)
}
