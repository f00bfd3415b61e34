package record

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

const manyRuns = 14000

func BenchmarkRead(b *testing.B) {
	for _, c := range []struct {
		name  string
		files map[string]string
	}{
		{"one hull over its design", hullLike(1)},
		{"200 hulls over one design", hullLike(200)},
		{"14000 runs in TOML", map[string]string{"hull.toml": "number = \"T1\"\n[trial.T1]\ndate = 2026-03-14\n" + runsTOML()}},
		{"14000 runs in CSV", map[string]string{"hull.toml": "number = \"T1\"\n[trial.T1]\ndate = 2026-03-14\n", "runs.csv": runsCSV()}},
	} {
		b.Run(c.name, func(b *testing.B) { benchRead(b, c.files) })
	}
}

func benchRead(b *testing.B, files map[string]string) {
	dir, bytes := b.TempDir(), 0
	for name, text := range files {
		if i := strings.LastIndexByte(name, '/'); i > 0 {
			if err := os.MkdirAll(dir+"/"+name[:i], 0o755); err != nil {
				b.Fatal(err)
			}
		}
		if err := os.WriteFile(dir+"/"+name, []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
		bytes += len(text)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		b.Fatal(err)
	}
	defer root.Close()
	b.SetBytes(int64(bytes))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(root, knownForTests); err != nil {
			b.Fatal(err)
		}
	}
}

func runsTOML() string {
	var b strings.Builder
	for i := range manyRuns {
		fmt.Fprintf(&b, "[[trial.T1.run]]\nsetting = \"full\"\nengine_rpm = %d\nspeed_kn = %d.5\n", 4000+i%50, 20+i%9)
	}
	return b.String()
}

func runsCSV() string {
	var b strings.Builder
	b.WriteString("trial,setting,engine_rpm,heading_deg,speed_kn,fuel_l_h\n")
	for i := range manyRuns {
		fmt.Fprintf(&b, "T1,full,%d,%d,%d.5,48.2\n", 4000+i%50, i%360, 20+i%9)
	}
	return b.String()
}

// hullLike is a yard with a design of 30 panels and 70 weights, and hulls over it that change some and add a trial.
func hullLike(hulls int) map[string]string {
	var panels, weights, runs strings.Builder
	panels.WriteString("id,zone,short_side_mm,long_side_mm,thickness_mm,alloy,edges\n")
	for i := range 30 {
		fmt.Fprintf(&panels, "B%d,bottom,%d,900,6,5083-H116,welded\n", i, 250+i)
	}
	weights.WriteString("id,name,group,basis,mass_kg,x_m,y_m,z_m\n")
	for i := range 70 {
		fmt.Fprintf(&weights, "w%d,item %d,outfit,estimated,%d,1.5,0,0.4\n", i, i, 5+i)
	}
	runs.WriteString("trial,setting,engine_rpm,heading_deg,speed_kn\n")
	for i := range 40 {
		fmt.Fprintf(&runs, "T1,step %d,%d,%d,%d\n", i/4, 800+100*(i/4), 90+180*(i%2), 4+i/2)
	}
	files := map[string]string{
		"yard.toml": "name = \"Test Yard\"\n[person.anna]\nname = \"Anna\"\nrole = \"weighs\"\n", "designs/D/panels.csv": panels.String(), "designs/D/weights.csv": weights.String(),
		"designs/D/design.toml": "title = \"launch\"\n[boat]\nlength_hull_m = 7.4\nspeed_kn = 30\nloaded_mass_kg = 3000\n",
	}
	for i := range hulls {
		dir := fmt.Sprintf("hulls/T-%03d/", i+1)
		files[dir+"hull.toml"] = "design = \"D\"\n[panel.B3]\nthickness_mm = 8\n[trial.T1]\ndate = 2026-03-14\nby = \"anna\"\n"
		files[dir+"runs.csv"] = runs.String()
	}
	return files
}

func BenchmarkLookup(b *testing.B) {
	p := Panel{Short: Val[mm]{V: 300, Set: true}}
	b.ReportAllocs()
	for b.Loop() {
		if f, ok := Lookup(&p, "short_side_mm"); !ok || f.Number != 300 {
			b.Fatal(f)
		}
	}
}
