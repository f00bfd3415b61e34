package site

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"hullfile/engine/unit"
)

// whatIfOnRecord is what results.json says of other spacings in one zone.
type whatIfOnRecord struct {
	Zone   string `json:"zone"`
	Curves []struct {
		Rule     string       `json:"rule"`
		Needed   [][2]float64 `json:"spacing_needed_mm"`
		Pressure [][2]float64 `json:"spacing_mm_pressure_kn_m2"`
		Stress   float64      `json:"stress_n_mm2"`
	} `json:"curves"`
	Greatest []struct {
		Rule  string  `json:"rule"`
		Plate float64 `json:"plate_mm"`
	} `json:"greatest"`
	Builds []struct {
		Spacing float64 `json:"spacing_mm"`
	} `json:"builds"`
}

// Thickness and pressure at each spacing are the same in results.json and in the table under the picture of the zone.
func whatIfAgainstResults(t *testing.T, out *output) {
	text, err := os.ReadFile(filepath.Join(out.dir, "HL74-012", "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	var results struct {
		Structure struct {
			WhatIf []whatIfOnRecord `json:"what_if"`
		} `json:"structure"`
	}
	if err := json.Unmarshal(text, &results); err != nil {
		t.Fatal(err)
	}
	tables := figureTables(out.pages["HL74-012/structure/what-if.html"])
	if len(results.Structure.WhatIf) < 3 || len(tables) != len(results.Structure.WhatIf) {
		t.Fatalf("%d zones in the results, %d tables on the page", len(results.Structure.WhatIf), len(tables))
	}
	pressures := 0
	for _, zone := range results.Structure.WhatIf {
		rows := tables[zone.Zone]
		for n, c := range zone.Curves {
			for _, p := range c.Needed {
				if got := rows[unit.Text(p[0], 0)]; len(got) < 2*n+3 || got[2*n+1] != unit.Up(p[1], 2) {
					t.Errorf("%s, %s at %v mm: %v mm in the results, the page has %v", zone.Zone, c.Rule, p[0], p[1], got)
				}
			}
			for _, p := range c.Pressure {
				pressures++
				if got := rows[unit.Text(p[0], 0)]; len(got) < 2*n+3 || got[2*n+2] != unit.Text(p[1], 1) {
					t.Errorf("%s, %s at %v mm: %v kN/m² in the results, the page has %v", zone.Zone, c.Rule, p[0], p[1], got)
				}
			}
			if c.Stress > 0 && len(c.Pressure) == 0 || n == 0 && c.Stress <= 0 {
				t.Errorf("%s, %s: %d pressures and a stress of %v", zone.Zone, c.Rule, len(c.Pressure), c.Stress)
			}
		}
		if len(zone.Greatest) == 0 || zone.Greatest[0].Plate <= 0 || len(zone.Builds) > 0 && zone.Builds[0].Spacing <= 0 {
			t.Errorf("%s: greatest %+v, builds %+v", zone.Zone, zone.Greatest, zone.Builds)
		}
	}
	if pressures < 50 {
		t.Errorf("only %d pressures in the results", pressures)
	}
}

// figureTables gives the tables under the pictures of spacings, by zone, each row by its first cell.
func figureTables(page *html.Node) map[string]map[string][]string {
	all := map[string]map[string][]string{}
	each(page, func(n *html.Node) {
		_, zone, found := strings.Cut(attr(n, "aria-label"), "Thickness needed over stiffener spacing, ")
		if n.Data != "div" || !found {
			return
		}
		all[zone] = map[string][]string{}
		each(n, func(tr *html.Node) {
			var cells []string
			for c := tr.FirstChild; tr.Data == "tr" && c != nil; c = c.NextSibling {
				if c.Type == html.ElementNode {
					cells = append(cells, strings.TrimSpace(textOf(c)))
				}
			}
			if len(cells) > 0 {
				all[zone][cells[0]] = cells
			}
		})
	})
	return all
}
