package site

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// plainPanels is the number of panels listed by hand above which the structure gets a page for each zone, as it does
// wherever members are judged.
const plainPanels = 40

// parts of the boat in the order in which a surveyor goes through it; what else a record names follows in its own order.
var zoneOrder = []string{"bottom", "side", "transom", "deck", "bulkhead", "tank", "superstructure"}

// framePath, renewalPath and localPath lie below the structure and are no zones.
const (
	framePath   = "structure/frames.html"
	renewalPath = "structure/renewal.html"
	localPath   = "structure/local.html"
	whatIfPath  = "structure/what-if.html"
)

// family is what is judged alike: panels cut from one plate in one zone, or members of one kind and section. Their page
// works the one with the least room in full and lists, for the others, every value that differs.
type family struct {
	title   string
	kind    string // "panel" or "member"
	zone    string
	panels  []int // indices into the result
	members []int
	page    *section
}

// structureContents lays out the pages below the structure: panels alone where there are few, else a page for each zone,
// with its families below it.
func (b *book) structureContents(top *section) {
	r := &b.dossier.Structure
	b.slug("frames", "renewal", "local", "what-if")
	if !b.zoned() {
		for i := range r.Panels {
			b.panelSection(top, &r.Panels[i])
		}
		b.structureEnd(top)
		return
	}
	families := b.families()
	for _, zone := range b.zoneNames() {
		z := below(top, capital(zone), "structure/"+b.panelSlugs.take(zone)+".html", "zone", page(func(l *leaf) (ZonePage, error) { return l.zonePage(zone) }))
		b.zones[zone] = z
		for i := range r.Panels {
			if p := &r.Panels[i]; !p.Derived && p.Record.Zone.V == zone {
				b.panelSection(z, p)
			}
		}
		for _, f := range families {
			if f.zone == zone {
				f.page = below(z, f.title, "structure/"+b.panelSlugs.take(f.title)+".html", "family", page(func(l *leaf) (FamilyPage, error) { return l.familyPage(f) }))
			}
		}
	}
	b.kin = families
	b.structureEnd(top)
}

// worst gives the panel or member of a family that its page works in full: the gravest outcome, and of those the one with the least
// room; of equal ones the first, which has a working of its own.
func (f *family) worst(r *scantling.Result) int {
	worst := -1
	for _, i := range f.panels {
		if p := &r.Panels[i]; worst < 0 || graver(p.Standing, r.Panels[worst].Standing, p.Margin, r.Panels[worst].Margin) {
			worst = i
		}
	}
	for _, i := range f.members {
		if m := &r.Members[i]; worst < 0 || graver(m.Standing, r.Members[worst].Standing, m.Margin, r.Members[worst].Margin) {
			worst = i
		}
	}
	return worst
}

// slug keeps names of pages from being given to panels.
func (b *book) slug(names ...string) {
	for _, name := range names {
		b.panelSlugs.take(name)
	}
}

// structureEnd adds the pages that are about more than one zone, each where there is something to show.
func (b *book) structureEnd(top *section) {
	r := &b.dossier.Structure
	if len(r.Models) > 0 {
		frames := below(top, "Frames and grillages", framePath, "frames", page((*leaf).framesPage))
		for i := range r.Models {
			m := &r.Models[i]
			b.modelAt[i] = below(frames, modelTitle(m), "structure/"+b.panelSlugs.take(modelTitle(m))+".html", "model", page(func(l *leaf) (ModelPage, error) { return l.modelPage(i) }))
		}
	}
	if len(r.Brackets)+len(r.Fittings) > 0 || r.Collision != nil {
		local := below(top, "Brackets and local loads", localPath, "local", page((*leaf).localPage))
		for _, k := range b.bracketKinds() {
			k.page = below(local, k.title, "structure/"+b.panelSlugs.take(k.title)+".html", "bracket", page(func(l *leaf) (BracketPage, error) { return l.bracketPage(k) }))
			b.brackets = append(b.brackets, k)
		}
		for i := range r.Fittings {
			f := &r.Fittings[i]
			title := capital(f.Record.Kind.V) + " " + f.Record.ID
			b.fittingAt[f.Record.ID] = below(local, title, "structure/"+b.panelSlugs.take(title)+".html", "bracket", page(func(l *leaf) (BracketPage, error) { return l.fittingPage(f) }))
		}
	}
	if len(r.WhatIfs) > 0 || len(r.Headrooms) > 0 {
		below(top, "What if", whatIfPath, "whatif", page((*leaf).whatIfPage))
	}
	if len(r.Renewals) > 0 {
		below(top, "Renewal thickness", renewalPath, "renewal", page((*leaf).renewalPage))
	}
	b.secondContents(top)
}

func (b *book) panelSection(above *section, p *scantling.Panel) {
	b.panelAt[p.Record.ID] = below(above, "Panel "+p.Record.ID, "structure/"+b.panelSlugs.take(p.Record.ID)+".html", "panel",
		page(func(l *leaf) (PanelPage, error) { return l.panelPage(p) }))
}

// zoned reports whether the structure has a page for each zone.
func (b *book) zoned() bool {
	r := &b.dossier.Structure
	if len(r.Members) > 0 || len(r.Panels) > plainPanels {
		return true
	}
	return slices.ContainsFunc(r.Panels, func(p scantling.Panel) bool { return p.Derived })
}

// zoneNames are the zones that have panels or members.
func (b *book) zoneNames() []string {
	var out []string
	for _, name := range zoneOrder {
		if b.zone(name) != nil {
			out = append(out, name)
		}
	}
	for i := range b.dossier.Structure.Zones {
		if name := b.dossier.Structure.Zones[i].Name; !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

func (b *book) zone(name string) *scantling.Zone {
	for i := range b.dossier.Structure.Zones {
		if z := &b.dossier.Structure.Zones[i]; z.Name == name {
			return z
		}
	}
	return nil
}

// families groups derived panels and all members, in the order in which they were judged.
func (b *book) families() []*family {
	r := &b.dossier.Structure
	on := b.shownOn()
	at := map[string]*family{}
	var out []*family
	join := func(key string, make func() *family) *family {
		f := at[key]
		if f == nil {
			f = make()
			at[key] = f
			out = append(out, f)
		}
		return f
	}
	for i := range r.Panels {
		p := &r.Panels[i]
		if !p.Derived {
			continue
		}
		rec := p.Record
		place := on["panel "+rec.ID]
		if place == "" {
			place = rec.Zone.V
		}
		key := strings.Join([]string{"panel", rec.Zone.V, place, unit.Plain(rec.Thickness.V), rec.Alloy.V, rec.Edges.V}, "|")
		f := join(key, func() *family {
			return &family{title: capital(place) + ", " + written(float64(rec.Thickness.V), "mm") + " mm " + rec.Alloy.V, kind: "panel", zone: rec.Zone.V}
		})
		f.panels = append(f.panels, i)
	}
	for i := range r.Members {
		m := &r.Members[i]
		rec := m.Record
		key := strings.Join([]string{"member", rec.Zone.V, rec.Kind.V, rec.Section.V, m.Scope}, "|")
		f := join(key, func() *family {
			return &family{title: capital(rec.Kind.V) + "s, " + rec.Section.V, kind: "member", zone: rec.Zone.V}
		})
		f.members = append(f.members, i)
	}
	return out
}

// shownOn says of each panel of the grid which face of the boat it is cut from: "chine flat", "bulkhead 6".
func (b *book) shownOn() map[string]string {
	out := map[string]string{}
	for i := range b.dossier.Grid.Patches {
		p := &b.dossier.Grid.Patches[i]
		out["panel "+p.Panel] = p.On
	}
	return out
}

// structureSubjects leads from every panel, member, bracket and fitting to where it is shown.
func (b *book) structureSubjects(add func(subject, path, anchor string)) {
	r := &b.dossier.Structure
	for i := range r.Panels {
		if s := b.panelAt[r.Panels[i].Record.ID]; s != nil {
			add("panel "+r.Panels[i].Record.ID, s.path, "")
		}
	}
	for _, f := range b.kin {
		for _, i := range f.panels {
			add("panel "+r.Panels[i].Record.ID, f.page.path, b.anchors.take("panel-"+r.Panels[i].Record.ID))
		}
		for _, i := range f.members {
			add("member "+r.Members[i].Record.ID, f.page.path, b.anchors.take("member-"+r.Members[i].Record.ID))
		}
	}
	for _, k := range b.brackets {
		add("bracket "+r.Brackets[k.at[0]].Record.ID, k.page.path, "")
		for _, i := range k.at {
			add(r.Brackets[i].ID, k.page.path, b.anchors.take(r.Brackets[i].ID))
		}
	}
	for i := range r.Fittings {
		add("fitting "+r.Fittings[i].Record.ID, b.fittingAt[r.Fittings[i].Record.ID].path, "")
	}
	for i := range r.Models {
		add("model "+r.Models[i].Name, b.modelAt[i].path, "")
	}
	for i := range b.dossier.Hull.Platings {
		add("plating "+b.dossier.Hull.Platings[i].ID, structurePath, "")
	}
	if len(r.Renewals) > 0 {
		for i := range b.dossier.Hull.Gaugings {
			add("gauging "+b.dossier.Hull.Gaugings[i].ID, renewalPath, "")
		}
	}
	if len(r.WhatIfs) > 0 || len(r.Headrooms) > 0 {
		add("what if", whatIfPath, "")
	}
}

// structureSheets are the method sheets by which the structure is judged, the governing one first.
func structureSheets(r *scantling.Result) []*method.Sheet {
	var out []*method.Sheet
	add := func(s *method.Sheet) {
		if s != nil && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	of := func(w *method.Working) {
		if w != nil {
			add(w.Sheet)
		}
	}
	add(r.Sheet)
	for i := range r.Rules {
		add(r.Rules[i].Sheet)
	}
	for i := range r.Brackets {
		of(r.Brackets[i].Working)
	}
	for i := range r.Fittings {
		of(r.Fittings[i].Working)
	}
	if r.Collision != nil {
		of(r.Collision.Working)
	}
	for i := range r.Renewals {
		for k := range r.Renewals[i].Gauged {
			of(r.Renewals[i].Gauged[k].Working)
		}
	}
	return out
}

// graver orders by outcome: short first, then not shown, then met, each by its room.
func graver(a, b finding.Standing, am, bm float64) bool {
	rank := func(s finding.Standing) int {
		switch s {
		case finding.Short:
			return 0
		case finding.NotShown:
			return 1
		}
		return 2
	}
	if rank(a) != rank(b) {
		return rank(a) < rank(b)
	}
	return am < bm
}
