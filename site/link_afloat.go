package site

// afloatSubjects maps what the engine speaks of when the boat floats: conditions, tanks, what the lines hold, tests.
func (b *book) afloatSubjects(add func(subject, path, anchor string)) {
	h := b.hull
	on := func(path, word, key string) { add(word+" "+key, path, b.anchors.take(word+"-"+key)) }
	add("loading", afloatPath, "")
	for i := range b.dossier.Loading.Conditions {
		on(afloatPath, "condition", b.dossier.Loading.Conditions[i].ID)
	}
	for i := range h.Tanks {
		on(afloatPath, "tank", h.Tanks[i].ID)
	}
	for i := range h.CrewAreas {
		on(afloatPath, "crew_area", h.CrewAreas[i].ID)
	}
	for i := range h.Buoyancy {
		on(afloatPath, "buoyancy", h.Buoyancy[i].ID)
	}
	for i := range h.HeelTests {
		on(afloatPath, "heel_test", h.HeelTests[i].ID)
	}
	for i := range h.Freeboards {
		on(afloatPath, "freeboard", h.Freeboards[i].ID)
	}
	for i := range h.OffsetTests {
		on(afloatPath, "offset_test", h.OffsetTests[i].ID)
	}
	for i := range h.SwampTests {
		on(afloatPath, "swamp_test", h.SwampTests[i].ID)
	}
	for i := range h.ListTests {
		on(afloatPath, "list_test", h.ListTests[i].ID)
	}
	for i := range h.Stations {
		on(boatPath, "station", h.Stations[i].ID)
	}
	for i := range h.Recesses {
		on(boatPath, "recess", h.Recesses[i].ID)
	}
	for i := range h.Openings {
		on(boatPath, "opening", h.Openings[i].ID)
	}
}
