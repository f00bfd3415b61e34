package crosscheck

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/weld"
)

// Question is one named question that the build record is asked.
type Question struct {
	Rule string       // stable name
	Kind finding.Kind // of what it finds
	Asks string       // what must not be, in words
	find func(*build) []told
}

// build is what the questions look at.
type build struct {
	*seam.Map
	yard   *record.Yard
	papers *document.Result
	books  Books
	arc    *weld.Arc // made when it is first asked
}

// Books is what the questions need from other trades.
type Books struct {
	Inspections *inspection.Result
	Library     *method.Library
	Ranges      *weld.Ranges
	Needed      func(panel string) (mm float64, known bool) // thickness that the structure asks of a panel
}

// told is one answer, before it has the rule and kind of its question.
type told struct {
	subject, says, settle string
	places                []finding.Place
}

// Build asks all questions about the build record of one hull. A hull without any build record is asked none.
func Build(y *record.Yard, m *seam.Map, papers *document.Result, books Books) []finding.Finding {
	if !seam.Has(m.Hull) {
		return nil
	}
	b := &build{Map: m, yard: y, papers: papers, books: books}
	var all []finding.Finding
	for _, q := range Questions() {
		for _, t := range q.find(b) {
			all = append(all, finding.Finding{Kind: q.Kind, Rule: q.Rule, Subject: t.subject, Says: t.says, Settle: t.settle, Places: t.places})
		}
	}
	return all
}

// tell makes an answer. Places that were not written are left out.
func tell(subject, settle string, places []finding.Place, format string, args ...any) told {
	return told{subject: subject, settle: settle, says: fmt.Sprintf(format, args...), places: slices.DeleteFunc(places, func(p finding.Place) bool { return !p.Known() })}
}

// at gathers places.
func at(places ...finding.Place) []finding.Place { return places }

// mostNamed is how many things a sentence names before it counts the others, and mostPlaces how many lines it points at.
const (
	mostNamed  = 12
	mostPlaces = 12
)

// gathered tells many equal lacks in one sentence: the things by name, as many as a sentence holds.
type gathered struct {
	names  []string
	places []finding.Place
}

func (g *gathered) add(name string, at finding.Place) {
	g.names = append(g.names, name)
	if len(g.places) < mostPlaces {
		g.places = append(g.places, at)
	}
}

func (g *gathered) list() string {
	if len(g.names) <= mostNamed {
		return strings.Join(g.names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(g.names[:mostNamed], ", "), len(g.names)-mostNamed)
}

// tell makes the answer, or none where nothing was gathered. The format has %d for how many and %s for their names.
func (g *gathered) tell(subject, settle, format string) []told {
	if len(g.names) == 0 {
		return nil
	}
	return []told{tell(subject, settle, g.places, format, len(g.names), g.list())}
}

func float[T ~float64](v record.Val[T]) record.Val[float64] {
	return record.Val[float64]{V: float64(v.V), Set: v.Set, At: v.At}
}

// welder gives who made a weld, or nil.
func (b *build) welder(w *record.Weld) *record.Welder { return b.Welder(w.Welder, w.Date) }

// each calls do for every weld whose joint is on the map and whose procedure is on record.
func (b *build) each(do func(*seam.Joint, *record.Weld, *record.Procedure)) {
	for _, j := range b.Joints {
		for _, w := range j.Welds {
			if p := b.Procedure(w.Procedure, w.Revision); p != nil {
				do(j, w, p)
			}
		}
	}
}
