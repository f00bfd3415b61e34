package site

import "slices"

// Ways are the questions of one reader, each a link to the page that answers it first.
type Ways struct {
	Reader string
	Links  []Link
}

// asked is one question with the page of the file, or the chapter of the owner's book, that answers it.
type asked struct{ question, path string }

// asks are the questions that the cover puts for each reader, the most urgent first.
func asks() []struct {
	reader string
	asked  []asked
} {
	return []struct {
		reader string
		asked  []asked
	}{
		{"For the builder", []asked{
			{"What is contradictory, short or missing", findingsPath},
			{"What is asked before the boat is sold", requirementsPath},
			{"What another plate, spacing or speed changes", whatIfPath},
			{"What the boat weighs, item by item", weightPath},
			{"Which seams are welded and looked at", seamsPath},
			{"Who may weld what, and until when", weldingPath},
			{"Sheets to fill in at the bench", benchPath},
		}},
		{"For the surveyor", []asked{
			{"What to look at first on board", surveyPath},
			{"How thick each part must be, and why", structurePath},
			{"Which plate came with which certificate", materialsPath},
			{"What was repaired, and why", repairsPath},
			{"How thin a part may become", renewalPath},
			{"How each formula is known", methodsPath},
			{"Whether the file is whole and unchanged", provingPath},
		}},
		{"For the owner", []asked{
			{"In an emergency", ownerDir + "01-emergency.html"},
			{"How many people, and how much load", loadingPath},
			{"How fast in which sea", limitsPath},
			{"After a grounding, a blow or a crack", ownerDir + "17-damage.html"},
			{"What to look after, and when", ownerDir + "18-care.html"},
			{"What is guaranteed, and for how long", ownerDir + "19-warranty.html"},
			{"Whom to call", ownerDir + "21-contacts.html"},
		}},
	}
}

// ways gives those questions whose page this file has.
func (l *leaf) ways() []Ways {
	var out []Ways
	for _, a := range asks() {
		w := Ways{Reader: a.reader}
		for _, q := range a.asked {
			if no, there := l.has(q.path); there {
				w.Links = append(w.Links, Link{Text: q.question, Href: l.to(q.path, ""), To: no})
			}
			if q.path == repairsPath && len(l.hull.Replaced) > 0 {
				w.Links = append(w.Links, Link{Text: "What differs from the design", Href: l.to(boatPath, "design"), To: l.sectionOf(boatPath).no})
			}
		}
		if len(w.Links) > 0 {
			out = append(out, w)
		}
	}
	return out
}

// has reports whether a page is in this file or in its owner's book, and the number of its section.
func (l *leaf) has(path string) (no string, there bool) {
	if i := slices.IndexFunc(l.order, func(s *section) bool { return s.path == path }); i >= 0 {
		return l.order[i].no, true
	}
	return "", slices.ContainsFunc(l.ownerBook().order, func(s *section) bool { return ownerDir+s.path == path })
}
