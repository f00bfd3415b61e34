package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"hullfile/engine/unit"
)

// TestSameNumberEverywhere holds the figures that a reader meets in more than one place against each other: the results and
// the tables for other programs, the cover, the page of the trade, the owner's book and its printed edition.
func TestSameNumberEverywhere(t *testing.T) {
	t.Parallel()
	dir := demoFiles(t)
	for _, hull := range []string{"HL74-012", "LT56-031"} {
		t.Run(hull, func(t *testing.T) { newHeld(t, filepath.Join(dir, hull)).all() })
	}
}

// held is one hull's file, read back.
type held struct {
	*testing.T
	dir     string
	results map[string]any
	pages   map[string]string
}

func newHeld(t *testing.T, dir string) *held {
	h := &held{T: t, dir: dir, pages: map[string]string{}}
	text, err := os.ReadFile(filepath.Join(dir, "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &h.results); err != nil {
		t.Fatal(err)
	}
	return h
}

func (h *held) all() {
	h.weights()
	h.afloat()
	h.plate()
	h.trials()
	h.panels()
	h.members()
	h.requirements()
	h.warranties()
}

// says wants a phrase on every one of the pages; spaces of all widths are alike.
func (h *held) says(phrase string, pages ...string) {
	h.Helper()
	for _, page := range pages {
		text, read := h.pages[page]
		if !read {
			text = strings.Join(strings.Fields(readAloud(first(parsed(h.T, filepath.Join(h.dir, page)), "main"))), " ")
			h.pages[page] = text
		}
		if !strings.Contains(text, strings.Join(strings.Fields(phrase), " ")) {
			h.Errorf("%s does not say %q", page, phrase)
		}
	}
}

// at walks into the results: names of keys, and for a list the value that key, name, or level has in the part wanted.
func (h *held) at(path ...string) any {
	h.Helper()
	var v any = h.results
	for _, step := range path {
		switch in := v.(type) {
		case map[string]any:
			v = in[step]
		case []any:
			i := slices.IndexFunc(in, func(e any) bool {
				m, _ := e.(map[string]any)
				return m["key"] == step || m["name"] == step || m["setting"] == step
			})
			if i < 0 {
				h.Fatalf("results: nothing is called %s in %v", step, path)
			}
			v = in[i]
		}
	}
	if v == nil {
		h.Fatalf("results: nothing at %v", path)
	}
	return v
}

func (h *held) number(path ...string) float64 {
	h.Helper()
	v, ok := h.at(path...).(float64)
	if !ok {
		h.Fatalf("results: no number at %v", path)
	}
	return v
}

// table reads a table for other programs, a map a row.
func (h *held) table(name string) (rows []map[string]string) {
	h.Helper()
	f, err := os.Open(filepath.Join(h.dir, "tables", name))
	if err != nil {
		h.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil || len(all) < 2 {
		h.Fatalf("%s: %d lines, %v", name, len(all), err)
	}
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, cell := range line {
			row[all[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return rows
}

// same wants a cell of a table to hold a number of the results.
func (h *held) same(what, cell string, want float64) {
	h.Helper()
	if got, err := strconv.ParseFloat(cell, 64); err != nil || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
		h.Errorf("%s: the table has %q, the results %g", what, cell, want)
	}
}

func (h *held) weights() {
	light, loaded := h.number("weight", "light", "mass_kg"), h.number("weight", "loaded", "mass_kg")
	h.says("Light craft "+unit.Text(light, 0)+" kg", "index.html", "weight.html")
	h.says("fully loaded, as the items add up, "+unit.Text(loaded, 0)+" kg", "index.html", "weight.html")
	var sum float64
	for _, row := range h.table("weights.csv") {
		if row["item"] == "" { // the sums below the items
			continue
		}
		kg, err := strconv.ParseFloat(row["mass_kg"], 64)
		if err != nil {
			h.Fatalf("item %s: %v", row["item"], err)
		}
		sum += kg
	}
	if math.Abs(sum-loaded) > 1e-4 {
		h.Errorf("the items of weights.csv add up to %.4f kg, the results have %.4f kg", sum, loaded)
	}
}

func (h *held) afloat() {
	for _, row := range h.table("conditions.csv") {
		for _, column := range []string{"mass_kg", "x_m", "z_m", "draught_m", "least_freeboard_m", "gm_fluid_m"} {
			h.same(row["condition"]+" "+column, row[column], h.number("afloat", "conditions", row["condition"], column))
		}
	}
	of := func(key string, decimals int) string {
		return unit.Text(h.number("afloat", "conditions", "loaded", key), decimals)
	}
	h.says("with "+of("mass_kg", 0)+" kg, put together from light craft, tanks and people, it floats with "+of("least_freeboard_m", 2)+" m of freeboard at least", "index.html", "afloat.html")
	h.says("metacentric height of "+of("gm_fluid_m", 2)+" m", "index.html", "afloat.html")
	h.says(of("least_freeboard_m", 2)+" m above the water", "owner/06-afloat.html", "owner/print.html")
}

func (h *held) plate() {
	for _, row := range h.table("capacity.csv") {
		if row["load_kg"] != "" {
			h.same("load by "+row["limit"], row["load_kg"], h.number("capacity", "limits", row["limit"], "load_kg"))
		}
		if row["governs_load"] == "true" {
			h.says("leave "+unit.Text(h.number("capacity", "limits", row["limit"], "load_kg"), 0)+" kg", "index.html", "loading.html")
		}
	}
	for _, row := range h.table("values.csv") {
		if row["key"] == "plate.max_load_kg" {
			h.says("permits "+row["value"]+" kg", "index.html", "loading.html")
			h.says("people, stores and gear together: "+row["value"]+" kg", "owner/05-loading.html", "owner/print.html")
		}
	}
}

func (h *held) trials() {
	fastest := 0.0
	for _, row := range h.table("trials.csv") {
		speed := h.number("trials", row["trial"], "settings", row["setting"], "speed_kn", "mean")
		h.same("speed at "+row["setting"], row["speed_kn"], speed)
		h.same("slip at "+row["setting"], row["slip"], h.number("trials", row["trial"], "settings", row["setting"], "slip"))
		h.same("range at "+row["setting"], row["range_nm"], h.number("trials", row["trial"], "settings", row["setting"], "range_nm"))
		rpm := unit.Text(h.number("trials", row["trial"], "settings", row["setting"], "engine_rpm", "mean"), 0)
		h.says("| "+rpm+" | "+unit.Text(speed, 1)+" |", "trials.html", "owner/08-engines.html", "owner/print.html")
		fastest = math.Max(fastest, speed)
	}
	h.says(unit.Text(fastest, 1)+" kn at ", "index.html", "trials.html")
	h.says("reached on trial: "+unit.Text(fastest, 1)+" kn", "owner/07-limits.html", "owner/print.html")
}

func (h *held) panels() {
	least := math.Inf(1)
	for _, row := range h.table("panels.csv") {
		h.same("panel "+row["panel"], row["needed_mm"], h.number("panels", row["panel"], "needed_mm"))
		fitted, err := strconv.ParseFloat(row["fitted_mm"], 64)
		if err != nil {
			h.Fatal(err)
		}
		h.same("room of panel "+row["panel"], row["margin"], math.Round(1e9*fitted/h.number("panels", row["panel"], "needed_mm"))/1e9)
		margin := h.number("panels", row["panel"], "margin")
		least = math.Min(least, margin)
	}
	h.says(unit.Text(math.Floor(100*least+1e-6)/100, 2), "structure.html")
}

// members holds what is asked of each member in the table against the results, and what governs against the member.
func (h *held) members() {
	governing := 0
	for _, row := range h.table("members.csv") {
		if row["needed"] == "" || row["margin"] == "" {
			continue
		}
		fitted, needed := h.cell(row["fitted"]), h.cell(row["needed"])
		room := fitted / needed
		if row["most"] == "true" {
			room = needed / fitted
		}
		if margin := h.cell(row["margin"]); math.Abs(room-margin) > 1e-6*margin {
			h.Errorf("member %s, %s: %s and %s give %v times, the table says %s", row["member"], row["of"], row["fitted"], row["needed"], room, row["margin"])
		}
		if row["governs"] == "true" {
			governing++
			h.same("room of member "+row["member"], row["margin"], h.number("structure", "members", row["member"], "margin"))
		}
	}
	if governing == 0 {
		h.Error("no member has a row that governs")
	}
}

func (h *held) cell(text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		h.Error(err)
	}
	return v
}

func (h *held) requirements() {
	var met, apply int
	for _, e := range h.at("requirements", "lists").([]any) {
		for _, item := range e.(map[string]any)["items"].([]any) {
			one := item.(map[string]any)
			if one["applies"] != true || e.(map[string]any)["applies"] != true {
				continue
			}
			apply++
			if one["standing"] == "met" {
				met++
			}
		}
	}
	h.says(fmt.Sprintf("%d of %d items", met, apply), "index.html", "requirements.html")
}

// warranties reckons the last day of each promise again: the day of handing over and whole years.
func (h *held) warranties() {
	values := map[string]string{}
	for _, row := range h.table("values.csv") {
		values[row["key"]] = row["value"]
	}
	handed, err := time.Parse(time.DateOnly, values["identity.handed_over"])
	switch {
	case err != nil && strings.HasSuffix(h.dir, "HL74-012"):
		h.Fatal("the finished boat is not handed over, so that no end of a warranty is held")
	case err != nil:
		return
	}
	found := 0
	for key, value := range values {
		if name, is := strings.CutSuffix(key, ".years"); is && strings.HasPrefix(key, "warranty.") {
			years, err := strconv.Atoi(value)
			if err != nil {
				h.Fatalf("%s is %q", name, value)
			}
			found++
			h.says("| "+handed.AddDate(years, 0, 0).Format(time.DateOnly)+" |", "owner/19-warranty.html", "owner/print.html")
		}
	}
	if found == 0 {
		h.Error("no warranty is on record, and the boat is handed over")
	}
}
