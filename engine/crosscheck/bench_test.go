package crosscheck

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/document"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// bigYard writes a yard whose hull has 600 parts, 900 joints with a weld each, and 1500 inspections, as tables out of a
// spreadsheet.
func bigYard(b *testing.B) *os.Root {
	dir := b.TempDir()
	write := func(name, text string) {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			b.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	write("yard.toml", `name = "Big yard"
[person.ann]
name = "Ann"
role = "welder"
[person.ben]
name = "Ben"
role = "inspection"
[welder.w1]
person = "ann"
stamp = "A1"
[qualification.Q1]
welder = "w1"
standard = "ISO 9606-2"
edition = "2004"
process = "131"
weld_type = "butt"
group = "22"
thickness_mm = 6
position = "PF"
tested = 2026-01-02
[inspector.ben-v]
person = "ben"
method = "visual"
level = 2
`)
	write("stock/lots.csv", "id,kind,alloy,thickness_mm,certificate\nL6,plate,5083-H116,6.0,T-6\n")
	write("stock/consumables.csv", "id,kind,classification,diameter_mm,received\nF1,filler,S Al 5183,1.2,2026-01-05\n")
	write("procedures/seams.toml", "[procedure.WB]\nprocess = \"131\"\nweld_type = \"butt\"\nthickness_from_mm = 3\nthickness_to_mm = 10\nfillers = [\"S Al 5183\"]\ngroups = [\"22.4\"]\n")
	write("hulls/H1/hull.toml", "[identity]\nstate = \"finished\"\nkeel_laid = 2026-01-05\n")
	var parts, joints, welds, looks strings.Builder
	parts.WriteString("id,name,lot,alloy,thickness_mm,measured_mm,area_m2,cut\n")
	for i := range 600 {
		fmt.Fprintf(&parts, "P%d,plate %d,L6,5083-H116,6.0,6.02,0.50,2026-01-08\n", i, i)
	}
	joints.WriteString("id,part,other_part,type,thickness_mm,other_thickness_mm,length_m,category,position,procedure,level,where\n")
	welds.WriteString("id,joint,date,begin,end,procedure,welder,filler,position,runs,arc_volt,arc_amp,speed_mm_min,wire_feed_m_min\n")
	for i := range 900 {
		fmt.Fprintf(&joints, "J%d,P%d,P%d,butt,6.0,6.0,1.50,shell,PA,WB,C,place %d\n", i, i%600, (i+7)%600, i)
		fmt.Fprintf(&welds, "W%d,J%d,2026-%02d-%02d,%02d:%02d:00,%02d:%02d:30,WB,A1,F1,PA,1,%.1f,%d,%d,7.%d\n", i, i, 2+i/400, 1+i%28, 8+i/28%8, i%59, 8+i/28%8, i%59, 21+float64(i%20)/10, 155+i%23, 480+i%97, i%9)
	}
	looks.WriteString("id,joint,date,method,by,level,result,surface\n")
	for i := range 1500 {
		fmt.Fprintf(&looks, "V%d,J%d,2026-05-%02d,visual,ben-v,C,accepted,cleaned\n", i, i%900, 1+i%28)
	}
	write("hulls/H1/parts.csv", parts.String())
	write("hulls/H1/joints.csv", joints.String())
	write("hulls/H1/welds.csv", welds.String())
	write("hulls/H1/inspections.csv", looks.String())
	root, err := os.OpenRoot(dir)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { root.Close() })
	return root
}

func readBig(b *testing.B, root *os.Root) *record.Yard {
	y, err := record.Read(root, record.Known{Alloys: []string{"5083-H116"}})
	if err != nil {
		b.Fatal(err)
	}
	return y
}

// Read and cross-checked together.
func BenchmarkReadAndAskABigBuildRecord(b *testing.B) {
	root := bigYard(b)
	s, err := shelf()
	if err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for range b.N {
		y := readBig(b, root)
		m := seam.NewMap(seam.NewStock(y, s.ranges), y.Hulls[0])
		looks := inspection.Assess(m, s.limits, func(string) (float64, bool) { return 0, false })
		if all := Build(y, m, &document.Result{}, Books{Inspections: &looks, Library: s.library, Ranges: s.ranges}); len(all) == 0 {
			b.Fatal("nothing was found in a record that lacks certificates")
		}
		if m.Cover().Joints != 900 {
			b.Fatal("joints are missing")
		}
	}
}

func BenchmarkAskABigBuildRecord(b *testing.B) {
	root := bigYard(b)
	s, err := shelf()
	if err != nil {
		b.Fatal(err)
	}
	y := readBig(b, root)
	m := seam.NewMap(seam.NewStock(y, s.ranges), y.Hulls[0])
	looks := inspection.Assess(m, s.limits, func(string) (float64, bool) { return 0, false })
	b.ResetTimer()
	for range b.N {
		Build(y, m, &document.Result{}, Books{Inspections: &looks, Library: s.library, Ranges: s.ranges})
	}
}
