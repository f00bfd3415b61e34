package site

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
	"hullfile/site/chart"
)

// judgements find panels and members of the grid by the records that judge them.
type judgements struct {
	panels  map[string]*scantling.Panel
	members map[string]*scantling.Member
	both    map[string]bool // faces on which port is judged otherwise
}

func (b *book) judgements() *judgements {
	if b.judged != nil {
		return b.judged
	}
	r := &b.dossier.Structure
	j := &judgements{make(map[string]*scantling.Panel, len(r.Panels)), make(map[string]*scantling.Member, len(r.Members)), b.portDiffers()}
	for i := range r.Panels {
		j.panels[r.Panels[i].Record.ID] = &r.Panels[i]
	}
	for i := range r.Members {
		j.members[r.Members[i].Record.ID] = &r.Members[i]
	}
	b.judged = j
	return j
}

// unrolling says which part of the grid a picture shows.
type unrolling struct {
	zone   string // of the records; empty for all
	only   bool   // the panels and members that are named, the other panels as outlines
	panels map[string]bool
	bars   map[string]bool
	names  func(zone, on string) string // of the face that a picture has them on
}

// faces lays out what a picture shows, starboard alone where port is judged by the same records.
func (l *leaf) faces(u unrolling) []chart.Unfolded {
	g, j := &l.dossier.Grid, l.judgements()
	both, most := map[string]bool{}, map[string]int{} // by the name of the face: whether port is drawn too, panels on it
	for i := range g.Patches {
		name := u.names(g.Patches[i].Zone, g.Patches[i].On)
		both[name] = both[name] || l.bothSides(g.Patches[i].On)
		most[name]++
	}
	var out []chart.Unfolded
	at := map[string]int{}
	face := func(on string, zone string) *chart.Unfolded {
		i, known := at[on]
		if !known {
			i = len(out)
			at[on] = i
			out = append(out, chart.Unfolded{Name: on, Along: zone != "transom" && zone != "bulkhead", Both: both[on], Tiles: make([]chart.Tile, 0, most[on])})
			if out[i].Along {
				out[i].Frames = l.frameMarks()
			}
		}
		return &out[i]
	}
	for i := range g.Patches {
		p := &g.Patches[i]
		judged := j.panels[p.Panel]
		name := u.names(p.Zone, p.On)
		if judged == nil || (p.Port && !both[name]) || (u.zone != "" && judged.Record.Zone.V != u.zone) {
			continue
		}
		f := face(name, p.Zone)
		f.Tiles = append(f.Tiles, l.tile(p, judged, u.only && !u.panels[p.Panel], !f.Both && f.Along, !f.Both && !f.Along))
	}
	for i := range g.Lines {
		b := &g.Lines[i]
		judged := j.members[b.Member]
		name := u.names(b.Zone, b.On)
		if judged == nil || (b.Port && !both[name]) || (u.zone != "" && judged.Record.Zone.V != u.zone) {
			continue
		}
		if u.only && !u.bars[b.Member] {
			continue
		}
		f := face(name, b.Zone)
		f.Bars = append(f.Bars, chart.Bar{Flat: starboardOf(b.Flat, !f.Both && f.Along, !f.Both && !f.Along), Standing: judged.Standing, Margin: judged.Margin, Primary: judged.Scope == "primary", Named: u.only})
	}
	return out
}

func (l *leaf) tile(p *grid.Patch, judged *scantling.Panel, plain, girth, across bool) chart.Tile {
	t := chart.Tile{Name: p.Panel, Flat: starboardOf(p.Flat, girth, across), Standing: judged.Standing, Margin: judged.Margin, Plain: plain}
	if plain {
		return t
	}
	t.Fitted = written(float64(judged.Fitted), "mm")
	t.Href = l.subject("panel " + p.Panel).Href
	if judged.Standing != finding.NotShown {
		t.Needed = unit.Up(judged.Needed, 2)
	}
	return t
}

// starboardOf cuts what lies across the centre line back to it: by its girth on a face along the boat, by its y on one
// across.
func starboardOf(flat [][2]float64, girth, across bool) [][2]float64 {
	if !slices.ContainsFunc(flat, func(p [2]float64) bool { return girth && p[1] < 0 || across && p[0] < 0 }) {
		return flat
	}
	out := slices.Clone(flat)
	for i := range out {
		if girth {
			out[i][1] = max(out[i][1], 0)
		}
		if across {
			out[i][0] = max(out[i][0], 0)
		}
	}
	return out
}

// bothSides reports whether port must be drawn too on a face of the boat.
func (b *book) bothSides(on string) bool { return b.judgements().both[on] }

// portDiffers gives the faces on which a panel or member to port is not judged by the record that judges its fellow to
// starboard.
func (b *book) portDiffers() map[string]bool {
	g := &b.dossier.Grid
	starboard := make(map[string]string, len(g.Patches)/2+len(g.Lines)/2)
	for i := range g.Patches {
		if p := &g.Patches[i]; !p.Port {
			starboard[p.ID] = p.Panel
		}
	}
	for i := range g.Lines {
		if p := &g.Lines[i]; !p.Port {
			starboard[p.ID] = p.Member
		}
	}
	out := map[string]bool{}
	for i := range g.Patches {
		if p := &g.Patches[i]; p.Port && starboard[p.ID] != p.Panel {
			out[p.On] = true
		}
	}
	for i := range g.Lines {
		if p := &g.Lines[i]; p.Port && starboard[p.ID] != p.Member {
			out[p.On] = true
		}
	}
	return out
}

func (l *leaf) frameMarks() []chart.FrameMark {
	var out []chart.FrameMark
	for i := range l.hull.Frames {
		if f := &l.hull.Frames[i]; f.X.Set {
			out = append(out, chart.FrameMark{Name: f.ID, X: float64(f.X.V)})
		}
	}
	return out
}

// sideWords say which sides a picture shows.
func sideWords(faces []chart.Unfolded) string {
	for i := range faces {
		if faces[i].Both {
			return "starboard, and port where it is built otherwise"
		}
	}
	return "starboard; port is the same"
}

// wholePictures show the boat unrolled: shell, decks, and what stands across.
func (l *leaf) wholePictures() []Drawing {
	all := l.faces(unrolling{names: func(zone, on string) string {
		switch zone {
		case "bottom", "chine flat", "side":
			return "bottom and side"
		}
		return on
	}})
	groups := []struct {
		id, title string
		has       func(f *chart.Unfolded) bool
	}{
		{"shell", "Bottom and side unrolled", func(f *chart.Unfolded) bool { return f.Name == "bottom and side" }},
		{"decks", "Decks and soles", func(f *chart.Unfolded) bool { return f.Along && f.Name != "bottom and side" }},
		{"across", "Transom and bulkheads", func(f *chart.Unfolded) bool { return !f.Along }},
	}
	var out []Drawing
	for _, g := range groups {
		var faces []chart.Unfolded
		for i := range all {
			if g.has(&all[i]) {
				faces = append(faces, all[i])
			}
		}
		if len(faces) > 0 {
			out = append(out, drawing(g.title+", "+sideWords(faces), chart.Unrolled(g.id, g.title, faces)).says(facesSay(faces)))
		}
	}
	return out
}

// zonePicture shows one zone.
func (l *leaf) zonePicture(zone string) Drawing {
	faces := l.faces(unrolling{zone: zone, names: func(_, on string) string { return on }})
	if len(faces) == 0 {
		return Drawing{}
	}
	return withoutTable(drawing(capital(zone)+" unrolled, "+sideWords(faces), chart.Unrolled(zone, capital(zone)+" unrolled", faces)).says(facesSay(faces)))
}

// familyPicture shows where a family lies.
func (l *leaf) familyPicture(f *family) Drawing {
	r := &l.dossier.Structure
	u := unrolling{zone: f.zone, only: true, panels: map[string]bool{}, bars: map[string]bool{}, names: func(_, on string) string { return on }}
	for _, i := range f.panels {
		u.panels[r.Panels[i].Record.ID] = true
	}
	for _, i := range f.members {
		u.bars[r.Members[i].Record.ID] = true
	}
	all := l.faces(u)
	var faces []chart.Unfolded
	for i := range all {
		if showsAny(&all[i]) {
			faces = append(faces, all[i])
		}
	}
	if len(faces) == 0 {
		return Drawing{}
	}
	return withoutTable(drawing("Where they lie, "+sideWords(faces), chart.Unrolled("where", f.title, faces)).says(l.familySays(f)))
}

func showsAny(f *chart.Unfolded) bool {
	return len(f.Bars) > 0 || slices.ContainsFunc(f.Tiles, func(t chart.Tile) bool { return !t.Plain })
}

// withoutTable leaves the figures of a picture to the tables of its page.
func withoutTable(d Drawing) Drawing {
	d.Head, d.Rows = nil, nil
	return d
}

// sectionPicture draws a member's section on its plating.
func (l *leaf) sectionPicture(m *scantling.Member) Drawing {
	name := m.Record.Section.V
	return drawing("Section of "+name+" on its plating", chart.Section(m.Record.ID, name, m.Bar, nil)).says(sectionSays(m))
}
