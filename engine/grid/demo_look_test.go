package grid

import (
	"fmt"
	"os"
	"testing"

	"hullfile/engine/lines"
	"hullfile/engine/record"
)

func TestLookDemo(t *testing.T) {
	if os.Getenv("LOOK") == "" {
		t.Skip()
	}
	root, err := os.OpenRoot("../../content/demo")
	if err != nil {
		t.Fatal(err)
	}
	y, err := record.Read(root, record.Known{Alloys: []string{"5083-H116", "6082-T6", "5754-H34"}})
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range y.Hulls {
		if h.Number != os.Getenv("LOOK") {
			continue
		}
		r := Derive(h, lines.FromRecord(&h.HullFile))
		for _, p := range r.Panels {
			fmt.Printf("%-50s %4.0f x %4.0f  x %.2f z %.2f top %.2f dr %.1f c %.0f t %.0f n %d head %.2f | %s\n", p.ID, float64(p.Short.V), float64(p.Long.V), float64(p.X.V), float64(p.Z.V), float64(p.HullTop.V), float64(p.Deadrise.V), float64(p.Camber.V), float64(p.Thickness.V), p.Count.V, float64(p.Head.V), p.Where.V)
		}
		for _, m := range r.Members {
			fmt.Printf("%-55s %-10s span %4.0f sp %4.0f curve %.0f %s on %.0f n %d z %.2f | %s\n", m.ID, m.Section.V, float64(m.Span.V), float64(m.Spacing.V), float64(m.Curve.V), m.Ends.V, float64(m.Attached.V), m.Count.V, float64(m.Z.V), m.Where.V)
		}
		fmt.Println(len(r.Panels), len(r.Members), len(r.Patches), len(r.Lines), len(r.Brackets), len(r.Rings), len(r.Grillages))
		for _, f := range r.Findings {
			fmt.Println(f.Kind, f.Rule, f.Subject, f.Says)
		}
		for _, a := range r.Assumptions {
			fmt.Println("A", a.Says)
		}
	}
}
