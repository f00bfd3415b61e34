package site

import (
	"strconv"
	"strings"

	"hullfile/engine/seam"
)

// BenchPage lists the sheets that are printed and filled by hand.
type BenchPage struct {
	Sheets []Link
}

// BenchSheet is one sheet to fill by hand.
type BenchSheet struct {
	Number, Design string
	Intro          string
	Fields         []string // to be filled at the head
	Groups         []BenchTable
	Signs          []string
}

// BenchTable is a table with some cells filled and the others empty.
type BenchTable struct {
	Caption string
	Head    []BenchHead
	Rows    [][]string // an empty text is a cell to fill
	Record  string     // table of the records that it is written into
}

// BenchHead is the head of one column. Room says how much a hand needs there: "mark" for a word or a tick, "figure" for a
// number, "name" for a key; what is left goes to columns that say nothing.
type BenchHead struct {
	Text, Unit, Room string
}

// benchContents lays the sheets out.
func (b *book) benchContents() {
	top := b.top("Bench sheets", benchPath, "bench", page((*leaf).benchPage))
	for _, s := range []struct {
		title, path string
		make        func(*leaf) BenchSheet
	}{
		{"Weld log", "bench/weld-log.html", (*leaf).weldLog},
		{"Inspection sheet", "bench/inspection.html", (*leaf).inspectionSheet},
		{"Leak-test sheet", "bench/leak-test.html", (*leaf).leakSheet},
		{"Material receipt", "bench/receipt.html", (*leaf).receiptSheet},
		{"Trial sheet", "bench/trial.html", (*leaf).trialSheet},
		{"Weighing sheet", "bench/weighing.html", (*leaf).weighingSheet},
	} {
		below(top, s.title, s.path, "benchsheet", page(func(l *leaf) (BenchSheet, error) {
			sheet := s.make(l)
			sheet.Number, sheet.Design = l.hull.Number, l.hull.Design.V
			return sheet, nil
		}))
	}
}

func (l *leaf) benchPage() (BenchPage, error) {
	var p BenchPage
	for _, s := range l.sectionOf(benchPath).kids {
		p.Sheets = append(p.Sheets, l.section(s))
	}
	return p, nil
}

// heads makes the heads of a table out of texts: "Length|m" has a unit and takes a number, "Stamp||mark" has room for a mark.
func heads(all ...string) []BenchHead {
	var out []BenchHead
	for _, text := range all {
		parts := append(strings.Split(text, "|"), "", "")
		h := BenchHead{Text: parts[0], Unit: parts[1], Room: parts[2]}
		if h.Unit != "" && h.Room == "" {
			h.Room = "figure"
		}
		out = append(out, h)
	}
	return out
}

// empty gives n rows of w empty cells.
func empty(n, w int) [][]string {
	rows := make([][]string, n)
	for i := range rows {
		rows[i] = make([]string, w)
	}
	return rows
}

// joints gives the joints of the weld map that are open by what done says, each filled up to w cells; where there is no weld map,
// empty rows.
func (l *leaf) openJoints(w int, done func(*seam.Joint) bool) [][]string {
	if l.dossier.Seams == nil || len(l.dossier.Seams.Joints) == 0 {
		return empty(24, w)
	}
	var rows [][]string
	for _, j := range l.dossier.Seams.Joints {
		if !done(j) {
			r := j.Record
			row := make([]string, w)
			row[0], row[1], row[2] = r.ID, seam.Short(r), written(float64(r.Length.V), "m")
			rows = append(rows, row)
		}
	}
	return append(rows, empty(4, w)...)
}

func (l *leaf) weldLog() BenchSheet {
	return BenchSheet{
		Intro:  "One line for each joint, or for each stretch of it by one welder. Joints that are not yet welded along their whole length are listed. Readings are taken at the machine, not copied.",
		Fields: []string{"Sheet", "Week", "Machine"},
		Groups: []BenchTable{{
			Caption: "Joints to weld", Record: "welds.csv",
			Head: heads("Joint||name", "What", "Length|m", "Day||figure", "From||mark", "To||mark", "Procedure, revision||name", "Stamp||mark", "Filler lot||name", "Runs||mark", "Volts|V", "Current|A", "Speed|mm/min", "Feed|m/min", "Between runs|°C", "Throat|mm"),
			Rows: l.openJoints(16, func(j *seam.Joint) bool { return j.Metres()-j.Welded() <= 0.01 }),
		}},
		Signs: []string{"Welder", "Answers for the welding"},
	}
}

func (l *leaf) inspectionSheet() BenchSheet {
	return BenchSheet{
		Intro:  "Joints without an accepted inspection after welding are listed. What is found goes into the second table with its number by ISO 6520-1 and its size as measured.",
		Fields: []string{"Sheet", "Day", "Method", "Inspector, certificate", "Gauge", "Light"},
		Groups: []BenchTable{
			{Caption: "Joints to inspect", Record: "inspections.csv", Head: heads("Joint||name", "What", "Length|m", "Seen|m", "Level||mark", "Surface||figure", "Throat, least|mm", "Accepted||figure", "Rejected||figure", "Remark"),
				Rows: l.openJoints(10, func(j *seam.Joint) bool { last := j.LastLook(); return last != nil && last.Result.V == "accepted" })},
			{Caption: "What was found", Record: "imperfections.csv", Head: heads("Joint||name", "ISO 6520-1||name", "Size|mm", "Length|mm", "At|m", "Within||figure", "Beyond||figure", "Photograph, remark"), Rows: empty(8, 8)},
		},
		Signs: []string{"Inspector"},
	}
}

func (l *leaf) leakSheet() BenchSheet {
	var rows [][]string
	for i := range l.hull.LeakTests {
		if t := &l.hull.LeakTests[i]; !t.Result.Set {
			rows = append(rows, []string{t.ID, t.Boundary.V, t.Method.V, "", "", "", "", "", "", "", "", ""})
		}
	}
	return BenchSheet{
		Intro:  "Raise air slowly, with a relief valve or a U-tube at the highest pressure that the weakest panel may see. Nobody stands before covers, windows or flat panels while air is on; what gives way is thrown. A tank that has held fuel is freed of gas first. Read pressure and temperature at both ends of the hold.",
		Fields: []string{"Sheet", "Day", "Gauge or U-tube", "Relief set to", "Barometer"},
		Groups: []BenchTable{
			{Caption: "Boundaries", Record: "[leak_test.KEY]", Head: heads("Key||name", "Boundary", "Method||name", "Highest|kPa", "Start|kPa", "Start|°C", "Time||figure", "End|kPa", "End|°C", "Time||figure", "Leaks||figure", "Tight||mark"), Rows: append(rows, empty(max(2, 7-len(rows)), 12)...)},
			{Caption: "Leaks", Head: heads("Boundary||name", "Joint||name", "At|m", "What was seen", "Repair||name"), Rows: empty(5, 5)},
		},
		Signs: []string{"Tested by", "Witness"},
	}
}

func (l *leaf) receiptSheet() BenchSheet {
	return BenchSheet{
		Intro:  "Hold the marking on the metal against the certificate before it goes into the rack. Write the figures with all decimals as they are printed.",
		Fields: []string{"Supplier", "Delivery note", "Day", "Received by"},
		Groups: []BenchTable{{Caption: "Lots", Record: "stock/lots.csv", Head: heads("Lot||name", "Form||figure", "Alloy, temper||name", "Thickness|mm", "Width|mm", "Length|mm", "Pieces||mark", "Cast on the metal||name", "Cast on the certificate||name", "Certificate, type", "Standard, edition", "Agrees||mark"), Rows: empty(12, 12)}},
		Signs:  []string{"Received", "Held against the certificate"},
	}
}

func (l *leaf) trialSheet() BenchSheet {
	rows := empty(14, 8)
	for i := range rows {
		rows[i][0] = strconv.Itoa(i + 1)
	}
	return BenchSheet{
		Intro:  "Kill cord and life jackets on, and somebody who does nothing but look out. Two runs at every setting, one each way, one after the other. Wait until speed and trim are steady.",
		Fields: []string{"Day", "Place", "Wind, from", "Sea", "Water, depth", "Air", "Mass on board", "Persons, fuel", "Propeller", "Receiver"},
		Groups: []BenchTable{{Caption: "Runs", Record: "runs.csv", Head: heads("Run||mark", "Setting||name", "Engine|rpm", "Heading|°", "Speed|kn", "Fuel|l/h", "Trim|°", "Remark"), Rows: rows}},
		Signs:  []string{"Trial run by", "Witness"},
	}
}

func (l *leaf) weighingSheet() BenchSheet {
	rows := empty(6, 6)
	for i := range rows {
		rows[i][0] = strconv.Itoa(i + 1)
	}
	return BenchSheet{
		Intro:  "Indoors, level, tanks empty or full; blocked so that it cannot roll or fall, nobody under it or on board. Name what is missing and what does not belong to the boat.",
		Fields: []string{"Day", "Place", "Cells", "Level within", "Fuel, water"},
		Groups: []BenchTable{
			{Caption: "Points", Record: "[[weighing.KEY.point]]", Head: heads("Point||mark", "Where", "Forward of the transom|m|name", "Starboard|m|name", "Reading|kg|name", "Tare|kg|name"), Rows: rows},
			{Caption: "Not on board, or too much on board", Head: heads("Item", "Mass|kg|name", "Forward of the transom|m|name", "Remark"), Rows: empty(6, 4)},
		},
		Signs: []string{"Weighed by", "Witness"},
	}
}
