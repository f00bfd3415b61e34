package site

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// zoneNumbers are what a page of a zone says of each panel: in its picture, and in its table.
type zoneNumbers struct {
	picture map[string]string   // by the way to the panel
	table   map[string][]string // cells of the row, by the way to the panel
}

func readZone(page *html.Node) zoneNumbers {
	z := zoneNumbers{map[string]string{}, map[string][]string{}}
	each(page, func(n *html.Node) {
		switch n.Data {
		case "a":
			if n.Parent != nil && n.Parent.Data == "svg" {
				each(n, func(t *html.Node) {
					if t.Data == "text" {
						z.picture[attr(n, "href")] = textOf(t)
					}
				})
			}
		case "tr":
			var cells []string
			href := ""
			for c := n.FirstChild; c != nil; c = c.NextSibling {
				if c.Type != html.ElementNode {
					continue
				}
				cells = append(cells, strings.TrimSpace(textOf(c)))
				if c.Data == "th" && attr(c, "scope") == "row" && href == "" {
					each(c, func(a *html.Node) {
						if a.Data == "a" && href == "" {
							href = attr(a, "href")
						}
					})
				}
			}
			if href != "" && z.table[href] == nil {
				z.table[href] = cells
			}
		}
	})
	return z
}

func TestStructureOfTheDemo(t *testing.T) {
	out := readOutput(t, rendered(t, demoJob(t)))
	t.Run("picture and table", func(t *testing.T) { pictureAgainstTable(t, out) })
	t.Run("pages and results", func(t *testing.T) { pagesAgainstResults(t, out) })
	t.Run("what if and results", func(t *testing.T) { whatIfAgainstResults(t, out) })
	t.Run("light", func(t *testing.T) { light(t, out.dir) })
}

// The picture of a zone and the table under it say the same ratio of every panel.
func pictureAgainstTable(t *testing.T, out *output) {
	labels, shorts := 0, 0
	for _, name := range []string{"HL74-012/structure/bottom.html", "HL74-012/structure/side.html", "HL74-012/structure/deck.html", "HL74-012/structure/transom.html", "LT56-031/structure/bottom.html"} {
		page := out.pages[name]
		if page == nil {
			t.Fatalf("%s is not there", name)
		}
		z := readZone(page)
		for href, label := range z.picture {
			row := z.table[href]
			if len(row) < 8 {
				t.Errorf("%s: the picture shows %s, which no row of the table does", name, href)
				continue
			}
			labels++
			says := strings.TrimPrefix(label, "▼")
			if says != label {
				shorts++
			}
			if row[6] != says && says != "" {
				t.Errorf("%s: %s is %q in the picture and %q in the table", name, href, label, row[6])
			}
		}
	}
	if labels < 120 || shorts == 0 {
		t.Errorf("%d figures compared, %d of them short; the pictures hold fewer than they did", labels, shorts)
	}
}

// The pages and results.json say the same of every panel and member.
func pagesAgainstResults(t *testing.T, out *output) {
	dir := out.dir
	for _, hull := range []string{"HL74-012", "LT56-031"} {
		text, err := os.ReadFile(filepath.Join(dir, hull, "results.json"))
		if err != nil {
			t.Fatal(err)
		}
		var results struct {
			Panels    []judgedPiece `json:"panels"`
			Structure struct {
				Members []judgedPiece `json:"members"`
			} `json:"structure"`
		}
		if err := json.Unmarshal(text, &results); err != nil {
			t.Fatal(err)
		}
		if len(results.Panels) < 80 || len(results.Structure.Members) < 80 {
			t.Fatalf("%s: %d panels and %d members in the results", hull, len(results.Panels), len(results.Structure.Members))
		}
		rows := map[string][]string{}
		for name, page := range out.pages {
			if strings.HasPrefix(name, hull+"/structure/") {
				each(page, func(n *html.Node) { zoneRow(n, rows) })
			}
		}
		for _, p := range results.Panels {
			p.check(t, hull, rows["panel "+p.Key], 6)
		}
		for _, m := range results.Structure.Members {
			m.check(t, hull, rows["member "+m.Key], 8)
		}
	}
}

// judgedPiece is a panel or member in results.json.
type judgedPiece struct {
	Key      string  `json:"key"`
	Standing string  `json:"standing"`
	Margin   float64 `json:"margin"`
}

// zoneRow keeps the cells of a row of the tables of zones, by the name of the panel or member.
func zoneRow(n *html.Node, rows map[string][]string) {
	if n.Data != "table" || !strings.Contains(attr(n, "class"), "filterable panels") {
		return
	}
	kind := "panel "
	each(n, func(c *html.Node) {
		if c.Data == "caption" && strings.Contains(textOf(c), "members") {
			kind = "member "
		}
	})
	each(n, func(tr *html.Node) {
		if tr.Data != "tr" {
			return
		}
		key := ""
		var cells []string
		for c := tr.FirstChild; c != nil; c = c.NextSibling {
			if c.Type != html.ElementNode {
				continue
			}
			cells = append(cells, strings.TrimSpace(textOf(c)))
			each(c, func(a *html.Node) {
				if a.Data == "a" && c.Data == "th" && key == "" {
					key = textOf(a)
				}
			})
		}
		if key != "" {
			rows[kind+key] = cells
		}
	})
}

// check holds a row against a panel or member; at is the column of its ratio, the standing stands two or one after it.
func (p judgedPiece) check(t *testing.T, hull string, row []string, at int) {
	t.Helper()
	if len(row) <= at+2 {
		t.Errorf("%s: no page of a zone has a row for %s", hull, p.Key)
		return
	}
	if p.Standing != "not shown" {
		want := math.Floor(p.Margin*100+1e-6) / 100
		if p.Standing == "short" {
			want = math.Min(want, 0.99)
		}
		if got := row[at]; got != times(want) {
			t.Errorf("%s: %s is %s on its page and %v in the results", hull, p.Key, got, p.Margin)
		}
	}
	if !strings.Contains(row[at+1]+row[at+2], p.Standing) {
		t.Errorf("%s: %s is %q on its page and %s in the results", hull, p.Key, row[at+1:at+3], p.Standing)
	}
}

// The pages of the structure stay light: about five megabytes for a boat of 7.4 m with its whole grid and three second opinions,
// each on one page.
func light(t *testing.T, dir string) {
	for _, hull := range []string{"HL74-012", "HL74-013", "LT56-031"} {
		all, err := filepath.Glob(filepath.Join(dir, hull, "structure", "*.html"))
		if err != nil || len(all) < 20 {
			t.Fatalf("%s: %d pages, %v", hull, len(all), err)
		}
		sum := int64(0)
		for _, name := range append(all, filepath.Join(dir, hull, "structure.html")) {
			info, err := os.Stat(name)
			if err != nil {
				t.Fatal(err)
			}
			sum += info.Size()
		}
		if sum > 5_300_000 {
			t.Errorf("%s: %d pages of the structure hold %.1f MB", hull, len(all)+1, float64(sum)/1e6)
		}
	}
}
