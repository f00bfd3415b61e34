package chart

import (
	"fmt"
	"math"
	"sort"

	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// shown is how many panels are drawn; the others are told in words and stand in the table.
const shown = 20

// Margins draws needed and fitted thickness of the panels with the least room, the least first. The key of each panel is a
// link to the page that link names, or plain where link is nil or gives nothing.
func Margins(panels []scantling.Panel, link func(scantling.Panel) string) Figure {
	const id, title = "fig-margins", "Fitted and needed thickness, panels with the least room first"
	sorted := byRoom(panels)
	if len(sorted) == 0 {
		return blank(id, title, "No panel on record.", nil)
	}
	if link == nil {
		link = func(scantling.Panel) string { return "" }
	}
	m := margins{rows: sorted[:min(shown, len(sorted))], rest: restWords(sorted), link: link}
	p := plate{id: id, title: title, alt: leastWords(sorted), links: m.linked(), paint: m.draw}
	return p.finished("Disc: fitted. Upright stroke: needed. Heavy line: room; hatched: what lacks. The scale begins at 0.", marginTable(sorted))
}

// margins is the picture of the panels with the least room.
type margins struct {
	rows []scantling.Panel
	rest string
	link func(scantling.Panel) string
}

func (m margins) linked() bool {
	for _, p := range m.rows {
		if href := m.link(p); href != "" && local(href) {
			return true
		}
	}
	return false
}

// byRoom sorts panels by fitted over needed; those not shown come last, for they cannot be compared.
func byRoom(panels []scantling.Panel) []scantling.Panel {
	sorted := append([]scantling.Panel{}, panels...)
	sort.SliceStable(sorted, func(i, j int) bool {
		a, b := sorted[i], sorted[j]
		if judged(a) != judged(b) {
			return judged(a)
		}
		return judged(a) && a.Margin < b.Margin
	})
	return sorted
}

func judged(p scantling.Panel) bool {
	return p.Standing != finding.NotShown && usable(p.Margin) && p.Margin > 0 && thick(p.Needed) && thick(p.Fitted)
}

// thick reports whether a thickness is one that can be drawn.
func thick(t unit.MM) bool { return usable(float64(t)) && t > 0 }

func panelKey(p scantling.Panel) string {
	if p.Record == nil {
		return "panel without a record"
	}
	return p.Record.ID
}

func panelZone(p scantling.Panel) string {
	if p.Record == nil {
		return ""
	}
	return p.Record.Zone.V
}

// leastWords tells the panel with the least room.
func leastWords(sorted []scantling.Panel) string {
	p := sorted[0]
	if !judged(p) {
		return fmt.Sprintf("%d panels; none of them could be judged.", len(sorted))
	}
	return fmt.Sprintf("%d panels. Least room at %s: %s mm fitted, %s mm needed, %s times.",
		len(sorted), panelKey(p), unit.Text(p.Fitted, 1), unit.Up(p.Needed, 1), ratio(p.Margin))
}

// ratio writes fitted over needed, rounded down as everywhere in the file, so that what is short never reads as enough.
func ratio(v float64) string { return unit.Text(math.Floor(float64(v*100)+1e-6)/100, 2) }

// restWords tells the panels that are not drawn.
func restWords(sorted []scantling.Panel) string {
	if len(sorted) <= shown {
		return ""
	}
	rest := sorted[shown:]
	open := 0
	for _, p := range rest {
		if !judged(p) {
			open++
		}
	}
	words := fmt.Sprintf("%d more panels are in the table", len(rest))
	if judged(rest[0]) {
		words += fmt.Sprintf(", the least of them %s times", ratio(rest[0].Margin))
	}
	if open > 0 {
		words += fmt.Sprintf(", %d of them not shown to be enough or short", open)
	}
	return words + "."
}

// marginTable lists all panels in the order of the figure.
func marginTable(sorted []scantling.Panel) [][]string {
	table := [][]string{{"Panel", "Zone", "Fitted, mm", "Needed, mm", "Fitted / needed", "Standing"}}
	for _, p := range sorted {
		row := []string{panelKey(p), panelZone(p), figure(float64(p.Fitted), thick(p.Fitted), 1), "–", "–", string(p.Standing)}
		if judged(p) {
			row[3], row[4] = unit.Up(p.Needed, 2), ratio(p.Margin)
		}
		table = append(table, row)
	}
	return table
}
