package crosscheck

import (
	"fmt"
	"io/fs"
	"sync"
	"testing"

	"hullfile/content"
	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

func entry(id string) record.Entry { return record.Entry{ID: id, At: put(0).At} }

func list(all ...string) record.Val[[]string] { return put(all) }

// built is a yard whose first hull has a sound build record: two plates, a frame, two joints, everything welded, seen and
// tested. All of it is invented. Nothing is to be said of it.
func built() *record.Yard {
	y := orderly()
	y.Builder.People = append(y.Builder.People,
		record.Person{Entry: entry("ann"), Name: put("Ann"), Role: put("welder")},
		record.Person{Entry: entry("ben"), Name: put("Ben"), Role: put("inspection")},
		record.Person{Entry: entry("cas"), Name: put("Cas"), Role: put("design")},
	)
	y.Builder.Instruments = append(y.Builder.Instruments,
		record.Instrument{Entry: entry("gauge"), Calibrated: day(1, 2), Due: day(12, 30)},
		record.Instrument{Entry: entry("mig-1"), Calibrated: day(1, 2), Due: day(12, 30)})
	y.Builder.Welders = []record.Welder{{Entry: entry("w-ann"), Person: put("ann"), Stamp: put("A1")}}
	y.Builder.Qualifications = []record.Qualification{qualification("Q1", "fillet", "PF"), qualification("Q2", "butt", "PF")}
	y.Builder.Inspectors = []record.Inspector{
		{Entry: entry("ben-visual"), Person: put("ben"), Method: put("visual"), Level: put(2), From: day(1, 1), Until: day(12, 31), Vision: day(1, 5)},
		{Entry: entry("ben-penetrant"), Person: put("ben"), Method: put("penetrant"), Level: put(2), From: day(1, 1), Until: day(12, 31), Vision: day(1, 5)},
	}
	y.Stock.Lots = []record.Lot{
		{Entry: entry("L6"), Kind: put("plate"), Alloy: put("5083-H116"), Thickness: put(unit.MM(6)), Cast: put("C600"), Certificate: put("T-6"), Received: day(1, 6)},
		{Entry: entry("L4"), Kind: put("plate"), Alloy: put("5083-H116"), Thickness: put(unit.MM(4)), Cast: put("C400"), Certificate: put("T-4"), Received: day(1, 6)},
	}
	y.Stock.Consumables = []record.Consumable{
		{Entry: entry("F1"), Kind: put("filler"), Classification: put("S Al 5183"), Diameter: put(unit.MM(1.2)), Mass: put(unit.KG(7)), Received: day(1, 6), Opened: day(1, 12), OpenLife: put(90), Expires: day(12, 1), Certificate: put("T-F")},
		{Entry: entry("G1"), Kind: put("gas"), Classification: put("I1")},
	}
	y.Welding.Procedures = []record.Procedure{procedure("WF", "fillet"), procedure("WB", "butt")}
	buildRecord(y.Hulls[0])
	return y
}

func qualification(id, kind, position string) record.Qualification {
	return record.Qualification{
		Entry: entry(id), Welder: put("w-ann"), Standard: put("ISO 9606-2"), Edition: put("2004"), Process: put("131"), Product: put("P"), Weld: put(kind), Group: put("22"),
		Thickness: put(unit.MM(5)), Position: put(position), Sides: put("ss nb"), Tested: day(1, 2),
	}
}

func procedure(id, kind string) record.Procedure {
	p := record.Procedure{
		Entry: entry(id), Number: put(id), Revision: put("1"), From: day(1, 5), Process: put("131"), Weld: put(kind), Groups: list("22.4", "23"), ThickFrom: put(unit.MM(3)), ThickTo: put(unit.MM(10)),
		Positions: list("PA", "PB", "PF"), Fillers: list("S Al 5183"), WireDiameter: put(unit.MM(1.2)), Gas: put("I1"), AmpFrom: put(unit.Ampere(150)), AmpTo: put(unit.Ampere(190)),
		VoltFrom: put(unit.Volt(20)), VoltTo: put(unit.Volt(24)), SpeedFrom: put(unit.MMPerMin(400)), SpeedTo: put(unit.MMPerMin(700)), FeedFrom: put(unit.MPerMin(5)), FeedTo: put(unit.MPerMin(10)),
		Interpass: put(unit.Celsius(90)), Sides: put("bs"),
	}
	if kind == "fillet" {
		p.ThroatFrom, p.ThroatTo, p.Sides = put(unit.MM(2.5)), put(unit.MM(5)), record.Val[string]{}
	}
	return p
}

func buildRecord(h *record.Hull) {
	h.Parts = []record.Part{
		{Entry: entry("P1"), Panel: put("B1"), Lot: put("L6"), Alloy: put("5083-H116"), Drawn: put(unit.MM(6)), Measured: put(unit.MM(6.02)), Cut: day(1, 8)},
		{Entry: entry("P2"), Lot: put("L6"), Drawn: put(unit.MM(6)), Cut: day(1, 8)},
		{Entry: entry("P3"), Lot: put("L4"), Drawn: put(unit.MM(4)), Cut: day(1, 9)},
	}
	h.Joints = []record.Joint{
		{Entry: entry("J1"), Part: put("P1"), Other: put("P2"), Type: put("butt"), Thickness: put(unit.MM(6)), OtherThick: put(unit.MM(6)), Length: put(unit.M(4)), Category: put("shell"), Position: put("PA"), Level: put("C"), Sides: put("bs")},
		{Entry: entry("J2"), Part: put("P1"), Other: put("P3"), Type: put("fillet"), Thickness: put(unit.MM(6)), OtherThick: put(unit.MM(4)), Length: put(unit.M(2)), Throat: put(unit.MM(3.5)), Category: put("primary"), Position: put("PB"), Level: put("C")},
	}
	h.Welds = []record.Weld{
		weldOf("W1", "J1", "WB", 13, "08:00:00", "09:10:00"),
		weldOf("W2", "J2", "WF", 13, "09:20:00", "10:00:00"),
	}
	h.Welds[0].Runs, h.Welds[0].Interpass = put(2), put(unit.Celsius(70))
	h.Inspections = []record.Inspection{
		{Entry: entry("V1"), Joint: put("J1"), Date: day(1, 14), Begin: put("08:00:00"), Method: put("visual"), By: put("ben-visual"), Instrument: put("gauge"), Level: put("C"), Result: put("rejected"), Surface: put("cleaned"), Surfaced: put(unit.Celsius(18))},
		{Entry: entry("V2"), Joint: put("J2"), Date: day(1, 14), Begin: put("08:30:00"), Method: put("visual"), By: put("ben-visual"), Instrument: put("gauge"), Result: put("accepted"), Throat: put(unit.MM(3.6))},
		{Entry: entry("V3"), Joint: put("J1"), Date: day(1, 16), Method: put("visual"), Stage: put("after repair"), By: put("ben-visual"), Result: put("accepted")},
		{Entry: entry("P1"), Joint: put("J1"), Date: day(1, 16), Method: put("penetrant"), By: put("ben-penetrant"), Surface: put("cleaned"), Seen: put(unit.M(1)), Result: put("accepted")},
	}
	h.Imperfections = []record.Imperfection{
		{Entry: entry("F1"), Inspection: put("V1"), Number: put("5011"), Size: put(unit.MM(0.8)), Length: put(unit.MM(60)), Judged: put("beyond")},
		{Entry: entry("F2"), Inspection: put("V2"), Number: put("2017"), Size: put(unit.MM(0.9)), Judged: put("within")},
	}
	h.Nonconformities = []record.Nonconformity{
		{Entry: entry("N1"), About: put("undercut"), Raised: day(1, 14), By: put("ben"), Imperfection: put("F1"), Disposition: put("repair"), Closed: day(1, 16)},
		{Entry: entry("N2"), About: put("mark of a hammer"), Raised: day(1, 14), Joint: put("J2"), Disposition: put("use as it is"), Approved: put("cas"), Closed: day(1, 15)},
	}
	h.Repairs = []record.Repair{{Entry: entry("R1"), Nonconformity: put("N1"), Date: day(1, 15), Procedure: put("WB"), Revision: put("1"), Welder: put("A1"), Filler: put("F1"), Length: put(unit.MM(60)), Position: put(unit.M(1)), Inspection: put("V3")}}
	h.Stages = []record.Stage{{Entry: entry("painting"), Name: put("painting"), From: day(2, 3)}}
	h.LeakTests = []record.LeakTest{{Entry: entry("T1"), Boundary: put("shell"), Method: put("chalk and oil"), Date: day(1, 20), By: put("ben"), Joints: list("J1"), Result: put("tight")}}
	h.HoldPoints = []record.HoldPoint{{Entry: entry("H1"), What: put("seams before paint"), Kind: put("hold"), Stage: put("painting"), Joints: list("J1", "J2"), LeakTests: list("T1"), Released: day(1, 21)}}
	h.Extents = []record.Extent{
		{Entry: entry("visual"), Category: put("all"), Method: put("visual"), Share: put(unit.Percent(100))},
		{Entry: entry("penetrant"), Category: put("shell"), Method: put("penetrant"), Share: put(unit.Percent(20))},
	}
	h.Documents = append(h.Documents,
		record.Document{Entry: entry("d6"), Kind: put("material certificate"), Title: put("Plate 6 mm"), Number: put("T-6"), Date: day(1, 3)},
		record.Document{Entry: entry("d4"), Kind: put("material certificate"), Title: put("Plate 4 mm"), Number: put("T-4"), Date: day(1, 3)},
		record.Document{Entry: entry("photo"), Kind: put("photograph"), Title: put("Seam J1"), Date: day(1, 14)})
}

func weldOf(id, joint, by string, d int, from, to string) record.Weld {
	return record.Weld{
		Entry: entry(id), Joint: put(joint), Date: day(1, d), Begin: put(from), End: put(to), Procedure: put(by), Revision: put("1"), Welder: put("A1"), Filler: put("F1"), Gas: put("G1"),
		Runs: put(1), Volts: put(unit.Volt(22)), Amperes: put(unit.Ampere(171)), Speed: put(unit.MMPerMin(500)), Feed: put(unit.MPerMin(6.6)), Ambient: put(unit.Celsius(17)), Machine: put("mig-1"), Photo: put("photo"),
	}
}

// shelf is what the questions are judged by, read once.
var shelf = sync.OnceValues(func() (s struct {
	limits  *inspection.Limits
	ranges  *weld.Ranges
	library *method.Library
}, err error,
) {
	if s.limits, err = inspection.LoadLimits(content.Files); err != nil {
		return s, err
	}
	if s.ranges, err = weld.LoadRanges(content.Files); err != nil {
		return s, err
	}
	sheets, err := fs.Sub(content.Files, "methods")
	if err != nil {
		return s, err
	}
	s.library, err = method.ReadShipped(sheets).Library(nil)
	return s, err
})

// asked gives what is found about the first hull of a yard.
func asked(t testing.TB, y *record.Yard) []finding.Finding {
	t.Helper()
	s, err := shelf()
	if err != nil {
		t.Fatal(err)
	}
	m := seam.NewMap(seam.NewStock(y, s.ranges), y.Hulls[0])
	looks := inspection.Assess(m, s.limits, func(string) (float64, bool) { return 0, false })
	needed := func(panel string) (float64, bool) { return 5.5, panel == "B1" }
	return Build(y, m, papers(y.Hulls[0]), Books{Inspections: &looks, Needed: needed, Library: s.library, Ranges: s.ranges})
}

func TestASoundBuildRecord(t *testing.T) {
	y := built()
	for _, f := range asked(t, y) {
		t.Errorf("%s %s on %s: %s", f.Kind, f.Rule, f.Subject, f.Says)
	}
	if base := Assess(y, y.Hulls[0], papers(y.Hulls[0])).Findings; len(base) != 0 {
		t.Errorf("the records beside it: %v", base)
	}
}

func TestAHullWithoutBuildRecordIsAskedNothing(t *testing.T) {
	y := built()
	h := y.Hulls[0]
	h.Parts, h.Joints, h.Welds, h.Inspections, h.Imperfections, h.Nonconformities, h.Repairs, h.HoldPoints, h.LeakTests = nil, nil, nil, nil, nil, nil, nil, nil, nil
	if all := asked(t, y); len(all) != 0 {
		t.Errorf("%v", all)
	}
}

// row is one contradiction: what makes it, what almost makes it, and where it must be found.
type row struct {
	no      string // in the list of questions that a surveyor asks; practice
	rule    string
	subject string
	says    string
	alter   func(y *record.Yard, h *record.Hull)
	near    func(y *record.Yard, h *record.Hull)
}

func (r row) test(t *testing.T) {
	y := built()
	r.alter(y, y.Hulls[0])
	kinds := map[string]finding.Kind{}
	for _, q := range Questions() {
		kinds[q.Rule] = q.Kind
	}
	hits := of(asked(t, y), r.rule)
	if len(hits) != 1 {
		t.Errorf("%s %s: found %d times, want once: %s", r.no, r.rule, len(hits), fmt.Sprint(hits))
		return
	}
	f := hits[0]
	if f.Subject != r.subject || !contains(f.Says, r.says) || f.Settle == "" || len(f.Places) == 0 || f.Kind != kinds[r.rule] {
		t.Errorf("%s %s: %s on %q at %v: %s; want %q with %q", r.no, r.rule, f.Kind, f.Subject, f.Places, f.Says, r.subject, r.says)
	}
	y = built()
	r.near(y, y.Hulls[0])
	if hits := of(asked(t, y), r.rule); len(hits) != 0 {
		t.Errorf("%s %s: found where it only almost is: %s", r.no, r.rule, hits[0].Says)
	}
}

func of(all []finding.Finding, rule string) (hits []finding.Finding) {
	for _, f := range all {
		if f.Rule == rule {
			hits = append(hits, f)
		}
	}
	return hits
}
