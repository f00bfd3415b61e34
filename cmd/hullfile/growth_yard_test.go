package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"hullfile/content"
)

// growth is one kind of record of which a hull may have many. A row of a table is a row of the demo once more under an id of
// its own, changed where it could not stand twice; an entry of a record is written out.
type growth struct {
	what   string
	file   string // in the yard; rows or entries are added at its end
	rows   string // the demo's table of which rows are taken, if not the same
	change func(row map[string]string, i int)
	entry  func(i int) string
	beside func(i int) (name, text string) // a file beside each
}

const (
	ofHull   = "hulls/" + fleetOf + "/"
	ofDesign = "designs/HL74/"
)

// growths are the kinds that are multiplied: those of which one boat may have thousands, or nothing keeps a yard from it. Of
// others, such as frames and trials, engine/record has a wall.
var growths = []growth{
	{what: "runs, two a setting", file: ofHull + "runs.csv", change: func(row map[string]string, i int) {
		row["setting"], row["log"], row["from"], row["to"] = fmt.Sprintf("setting %d", i/2), "", "", ""
	}},
	{what: "runs of one setting", file: ofHull + "runs.csv", change: func(row map[string]string, i int) {
		row["setting"], row["log"], row["from"], row["to"] = "cruising", "", "", ""
	}},
	{what: "runs read from a log", file: ofHull + "runs.csv", change: func(row map[string]string, i int) {
		row["setting"] = fmt.Sprintf("setting %d", i/2)
	}},
	{what: "running hours", file: ofHull + "hours.csv", change: func(row map[string]string, i int) {
		row["date"] = growthDay(2026, 8, 1, i/4)
		row["from_h"], row["to_h"] = fmt.Sprint(400+i), fmt.Sprint(401+i)
	}},
	{what: "positions of a log", file: ofHull + "logs/receiver-T1.nmea", entry: growthFix},
	{what: "seams", file: ofDesign + "joints.csv"},
	{what: "weld log lines", file: ofHull + "welds.csv", change: func(row map[string]string, i int) {
		row["date"] = growthDay(2016, 1, 1, i/8)
		row["begin"], row["end"] = growthHour(i % 8)
	}},
	{what: "inspections", file: ofHull + "inspections.csv"},
	{what: "imperfections", file: ofHull + "imperfections.csv"},
	{what: "nonconformities", file: ofHull + "nonconformities.csv"},
	{what: "repairs", file: ofHull + "repairs.csv"},
	{what: "parts", file: ofHull + "parts.csv"},
	{what: "gaugings", file: ofHull + "gaugings.csv", rows: "hulls/LT56-031/gaugings.csv"},
	{what: "weight items", file: ofDesign + "weights.csv", change: func(row map[string]string, i int) {
		row["mass_kg"], row["area_m2"], row["area_from"], row["thickness_mm"], row["length_m"] = "0.01", "", "", "", ""
		row["section_mm2"], row["line_mass_kg_m"], row["alloy"], row["density_kg_m3"] = "", "", "", ""
		row["x_m"], row["y_m"], row["z_m"], row["basis"], row["load"], row["count"] = "2.5", "0", "0.5", "weighed", "", ""
	}},
	{what: "panels", file: ofDesign + "panels.csv"},
	{what: "sections", file: ofDesign + "sections.csv"},
	{what: "fittings", file: ofDesign + "fittings.csv"},
	{what: "details", file: ofDesign + "spots.csv"},
	{what: "extents", file: ofDesign + "extents.csv"},
	{what: "stages", file: ofHull + "stages.csv"},
	{what: "service", file: ofHull + "serviced.csv", change: func(row map[string]string, i int) { row["at_h"], row["date"] = "345", "2026-08-01" }},
	{what: "plan of care", file: ofDesign + "care.csv"},
	{what: "spares", file: ofDesign + "spares.csv"},
	{what: "claims", file: ofHull + "claims.csv"},
	{what: "contacts", file: ofHull + "contacts.csv"},
	{what: "engines", file: ofHull + "engines.csv"},
	{what: "items accepted", file: ofHull + "accepted.csv"},
	{what: "lines of the survey sheet", file: ofHull + "survey.csv", change: func(row map[string]string, i int) {
		row["date"] = growthDay(2026, 8, 3, i/8)
	}},
	{what: "lots", file: "stock/lots.csv"},
	{what: "documents", file: ofHull + "documents.csv", rows: "hulls/LT56-031/documents.csv", change: func(row map[string]string, i int) {
		row["file"], row["sha256"] = fmt.Sprintf("paper-%d.txt", i), ""
	}, beside: func(i int) (string, string) {
		return fmt.Sprintf("%sdocuments/paper-%d.txt", ofHull, i), fmt.Sprintf("paper %d\n", i)
	}},
	{what: "people", file: "yard.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[person.g%d]\nname = \"Person %d\"\nrole = \"welder\"\nsince = 2016-03-01\n", i, i)
	}},
	{what: "instruments", file: "yard.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[instrument.g%d]\nname = \"gauge %d\"\nserial = \"G-%d\"\ncalibrated = 2025-11-17\ndue = 2026-11-17\n", i, i, i)
	}},
	{what: "fillers and gas", file: "stock/consumables.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[consumable.g%d]\nkind = \"filler\"\nclassification = \"S Al 5183\"\nstandard = \"ISO 18273\"\nbatch = \"B-%d\"\n", i, i)
	}},
	{what: "notes", file: ofHull + "hull.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[note.g%d]\ntitle = \"Note %d\"\ntext = \"What was seen.\"\n", i, i)
	}},
	{what: "tanks", file: ofDesign + "design.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[tank.g%d]\nname = \"tank %d\"\ncontents = \"fresh water\"\nvolume_l = 1\ndensity_kg_m3 = 1000\nx_m = 2\ny_m = 0\nz_m = 0.3\nfixed = true\n", i, i)
	}},
	{what: "buoyancy", file: ofDesign + "design.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[buoyancy.g%d]\nname = \"foam %d\"\nkind = \"foam\"\nvolume_l = 0.1\nx_m = 2\ny_m = 0\nz_m = 0.3\n", i, i)
	}},
	{what: "leak tests", file: ofHull + "hull.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[leak_test.G%d]\nboundary = \"space %d\"\nmethod = \"chalk and oil\"\ndate = 2025-10-29\nby = \"ferrin\"\njoints = [\"K1P\"]\nleaks = 0\nresult = \"tight\"\n", i, i)
	}},
	{what: "hold points", file: ofHull + "hull.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[hold_point.G%d]\nwhat = \"point %d\"\nkind = \"hold\"\njoints = [\"F1P\"]\nreleased = 2025-10-31\nby = \"ferrin\"\n", i, i)
	}},
	{what: "promises", file: ofHull + "hull.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[warranty.g%d]\npart = \"part %d\"\nyears = 2\n", i, i)
	}},
	{what: "items of a list", file: "requirements/launch-plan.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[item.\"%d\"]\nheading = \"Point %d\"\nasks = \"It was looked at.\"\nneeded = [\"weighed\"]\nblocks = \"nothing\"\n", 100+i, i)
	}},
	{what: "welding procedures", file: "procedures/seams.toml", entry: func(i int) string {
		return fmt.Sprintf("\n[procedure.G-%d]\nrevision = \"A\"\ntitle = \"seams %d\"\ntests = [\"Q-butt-4\"]\nprocess = \"131\"\nweld_type = \"butt\"\nvalid_from = 2024-03-18\nthickness_from_mm = 3\nthickness_to_mm = 8\npositions = [\"PA\"]\n", i, i)
	}},
}

func growthDay(year, month, day, after int) string {
	return time.Date(year, time.Month(month), day+after, 0, 0, 0, 0, time.UTC).Format(time.DateOnly)
}

func growthHour(i int) (begin, end string) {
	return fmt.Sprintf("%02d:00:00", 8+i), fmt.Sprintf("%02d:20:00", 8+i)
}

// growthFix is one sentence of a receiver, two seconds after the one before.
func growthFix(i int) string {
	at := time.Date(2026, 3, 3, 16, 0, 0, 0, time.UTC).Add(2 * time.Second * time.Duration(i))
	body := fmt.Sprintf("GPRMC,%s,A,4700.%04d,N,02000.0000,W,3.0,65.0,%s,,,A", at.Format("150405"), i%9999, at.Format("020106"))
	sum := byte(0)
	for _, c := range []byte(body) {
		sum ^= c
	}
	return fmt.Sprintf("$%s*%02X\n", body, sum)
}

// grownYard writes a yard of the demo's complete hull alone, with n more records of each kind.
func grownYard(tb testing.TB, n int, kinds ...growth) string {
	tb.Helper()
	dir := tb.TempDir()
	err := fs.WalkDir(content.Files, "demo", func(name string, e fs.DirEntry, err error) error {
		below := strings.TrimPrefix(name, "demo/")
		if err != nil || e.IsDir() || e.Name() == ".keep" || strings.HasPrefix(below, "hulls/") && !strings.HasPrefix(below, ofHull) {
			return err
		}
		text, err := fs.ReadFile(content.Files, name)
		if err != nil {
			return err
		}
		return put(filepath.Join(dir, filepath.FromSlash(below)), text)
	})
	if err != nil {
		tb.Fatal(err)
	}
	for _, g := range kinds {
		g.add(tb, dir, n)
	}
	return dir
}

func (g growth) add(tb testing.TB, dir string, n int) {
	tb.Helper()
	var more bytes.Buffer
	name := filepath.Join(dir, filepath.FromSlash(g.file))
	text, err := os.ReadFile(name)
	if err != nil && g.rows == "" {
		tb.Fatal(err)
	}
	if g.entry == nil {
		g.addRows(tb, &more, n, len(text) == 0)
	}
	for i := 0; i < n && g.entry != nil; i++ {
		more.WriteString(g.entry(i))
	}
	if err := put(name, append(text, more.Bytes()...)); err != nil {
		tb.Fatal(err)
	}
	for i := 0; i < n && g.beside != nil; i++ {
		name, text := g.beside(i)
		if err := put(filepath.Join(dir, filepath.FromSlash(name)), []byte(text)); err != nil {
			tb.Fatal(err)
		}
	}
}

func (g growth) addRows(tb testing.TB, more *bytes.Buffer, n int, head bool) {
	tb.Helper()
	from := g.rows
	if from == "" {
		from = g.file
	}
	text, err := fs.ReadFile(content.Files, "demo/"+from)
	if err != nil {
		tb.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	keys, w := rows[0], csv.NewWriter(more)
	if head {
		w.Write(keys)
	}
	for i := range n {
		row := map[string]string{}
		for k, value := range rows[1+i%(len(rows)-1)] {
			row[keys[k]] = value
		}
		if row["id"] != "" {
			row["id"] = "G" + strconv.Itoa(i)
		}
		if g.change != nil {
			g.change(row, i)
		}
		cells := make([]string, len(keys))
		for k, key := range keys {
			cells[k] = row[key]
		}
		w.Write(cells)
	}
	w.Flush()
}
