package compare

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/record"
)

// sideOf reads a side from texts of own making.
func sideOf(t testing.TB, results, values string) *Side {
	t.Helper()
	s, err := ReadSide([]byte(results), []byte("key,value,file,line\n"+values))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const (
	oldResults = `{"form":1,"hull":{"number":"H1","issue":1,"date":"2026-01-05"},"standing":"met",
		"checks":[{"rule":"plating-thickness","subject":"panel B3","standing":"met","says":"8 mm"},{"rule":"weighing-mass","subject":"weighing W1","standing":"met","says":"x"},{"rule":"gone","subject":"boat","standing":"met","says":"y"}],
		"findings":[{"kind":"doubt","rule":"d","subject":"limits","says":"five points"},{"kind":"gap","rule":"g","subject":"plate","says":"no plate"}],
		"documents":[{"key":"cert","title":"Certificate","present":true,"sha256":"aa"},{"key":"sheet","title":"Sheet","present":true,"sha256":"bb"}],
		"panels":[{"key":"B3","fitted_mm":8,"margin":2.5,"standing":"met","steps":[{"symbol":"k","value":1}]},{"key":"B4","fitted_mm":6}],
		"afloat":{"levers":[{"condition":"light","side":"port","points":[[0,0],[10,0.1]]}]},"weight":{"light":{"mass_kg":2000}}}`
	newResults = `{"form":1,"hull":{"number":"H1","issue":2,"date":"2026-02-05"},"standing":"short",
		"checks":[{"rule":"plating-thickness","subject":"panel B3","standing":"short","says":"6 mm"},{"rule":"weighing-mass","subject":"weighing W1","standing":"met","says":"another x"},{"rule":"come","subject":"joint K1","standing":"not shown","says":"z"}],
		"findings":[{"kind":"doubt","rule":"d","subject":"limits","says":"six points"},{"kind":"shortfall","rule":"plating-thickness","subject":"panel B3","says":"thin"}],
		"documents":[{"key":"cert","title":"Certificate","present":true,"sha256":"cc"},{"key":"photo","title":"Photograph","present":false}],
		"panels":[{"key":"B3","fitted_mm":6,"margin":0.9,"standing":"short","steps":[{"symbol":"k","value":2}]},{"key":"B5","fitted_mm":6}],
		"afloat":{"levers":[{"condition":"light","side":"port","points":[[0,0],[10,0.12]]}]},"weight":{"light":{"mass_kg":2000}}}`
	oldValues = "panel.B3.thickness_mm,8,hull.toml,4\npanel.B3.alloy,5083-H116,hull.toml,5\npanel.B4.thickness_mm,6,hull.toml,9\npanel.B4.alloy,5083-H116,hull.toml,10\ntitle,launch,hull.toml,2\n"
	newValues = "panel.B3.thickness_mm,6,hull.toml,4\npanel.B3.alloy,5083-H116,hull.toml,6\nweighing.W2.date,2026-02-01,hull.toml,20\ntitle,work boat,hull.toml,2\n"
)

func TestWhatChangedIsTold(t *testing.T) {
	c := Between(sideOf(t, oldResults, oldValues), sideOf(t, newResults, newValues))
	if want := (Counts{Records: 4, Results: 5, Standings: 3, Findings: 3, Documents: 3}); c.Counts != want {
		t.Errorf("counts %+v, want %+v", c.Counts, want)
	}
	told := map[string]bool{}
	order := []string{}
	for _, g := range c.Groups {
		order = append(order, g.Key)
		if g.Name == "" || g.Again == "" {
			t.Errorf("group %s says nothing", g.Key)
		}
		for _, r := range append(g.Records, g.Results...) {
			told[g.Key+": "+r.What+": "+r.Words()] = true
		}
		for _, s := range g.Standings {
			told[g.Key+": "+s.Rule+", "+s.Subject+": "+s.Words()] = true
		}
		for _, f := range g.Findings {
			told[g.Key+": "+f.Words()] = true
		}
		for _, p := range g.Documents {
			told[g.Key+": "+p.Key+": "+p.Words()] = true
		}
	}
	want := []string{
		"identity: title: before: launch; now: work boat",
		"structure: panel.B3.thickness_mm: 8 to 6 mm, 25 % less",
		"structure: panel.B4: gone: thickness_mm 6, alloy 5083-H116",
		"weight: weighing.W2: new: date 2026-02-01",
		"structure: panels B3 fitted_mm: 8 to 6 mm, 25 % less",
		"structure: panels B3 margin: 2.5 to 0.9, 64 % less",
		"structure: panels B4: gone: fitted_mm 6",
		"structure: panels B5: new: fitted_mm 6",
		"afloat: afloat levers light port points: 1 of 4 numbers of the curve differ, most by 0.02",
		"structure: plating-thickness, panel B3: met to short",
		"seams: come, joint K1: new: not shown",
		"boat: gone, boat: asked no more, was met",
		"trials: doubt reads now: six points",
		"loading: gap gone: no plate",
		"structure: new shortfall: thin",
		"documents: cert: it is another file than before",
		"documents: photo: new: it is not there",
		"documents: sheet: gone: it is on record no more",
	}
	for _, w := range want {
		if !told[w] {
			t.Errorf("not told: %s", w)
		}
		delete(told, w)
	}
	for more := range told {
		t.Errorf("told and not expected: %s", more)
	}
	if got := strings.Join(order, " "); got != "identity boat structure seams weight afloat loading trials documents" {
		t.Errorf("groups in the order %s", got)
	}
	if says := c.Says(); says != "4 records, 5 results, 3 standings, 3 findings and 3 documents changed; the file stood met and stands short." {
		t.Errorf("it says %q", says)
	}
}

func TestNothingChanged(t *testing.T) {
	s := sideOf(t, oldResults, oldValues)
	c := Between(s, s)
	if c.Counts.Any() || len(c.Groups) != 0 || !strings.HasPrefix(c.Says(), "Nothing changed") {
		t.Errorf("%+v", c)
	}
	text, err := json.Marshal(c)
	if err != nil || strings.Contains(string(text), "null") {
		t.Errorf("%s, %v", text, err)
	}
}

// A text that reads as a number beyond all numbers is a text.
func TestChangesBeyondNumbers(t *testing.T) {
	for _, values := range [][2]string{{"inf", "1"}, {"NaN", "2"}, {"1e308", "-1e308"}, {"1e-320", "1e300"}} {
		c := Between(sideOf(t, `{"form":1}`, "a.b,"+values[0]+",f,1\n"), sideOf(t, `{"form":1}`, "a.b,"+values[1]+",f,1\n"))
		if _, err := json.Marshal(c); err != nil || c.Counts.Records != 1 || c.Groups[0].Records[0].Words() == "" {
			t.Errorf("%v: %+v, %v", values, c, err)
		}
	}
}

func TestSidesThatCannotBeRead(t *testing.T) {
	rows := map[string][2]string{
		"results.json cannot be read":      {`{"form":1`, ""},
		"the form 9":                       {`{"form":9}`, ""},
		"tables/values.csv cannot be read": {`{"form":1}`, "key,value,file,line\na,b\n"},
		`"a" stands in it twice`:           {`{"form":1}`, "key,value,file,line\na,1,f,1\na,2,f,2\n"},
	}
	for want, texts := range rows {
		if _, err := ReadSide([]byte(texts[0]), []byte(texts[1])); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}

// Whatever stands in two machine copies, a comparison ends, and a side compared with itself has not changed.
func FuzzSide(f *testing.F) {
	f.Add([]byte(oldResults), []byte("key,value,file,line\n"+oldValues))
	f.Add([]byte(`{"form":1,"panels":[[1],[{"key":"x"}],null,{"key":"x"},{"key":"x"}]}`), []byte("a,b,c,d\na,b,c,d\na,b,c,d\n"))
	f.Fuzz(func(t *testing.T, results, values []byte) {
		s, err := ReadSide(results, values)
		if err != nil {
			return
		}
		if c := Between(s, s); c.Counts.Any() {
			t.Errorf("compared with itself: %+v", c.Counts)
		}
	})
}

func BenchmarkBetween(b *testing.B) {
	make := func(thickness int) *Side {
		var values strings.Builder
		panels := []string{}
		for i := range 3000 {
			fmt.Fprintf(&values, "panel.B%d.thickness_mm,%d,hull.toml,%d\n", i, thickness, i)
			panels = append(panels, fmt.Sprintf(`{"key":"B%d","fitted_mm":%d,"margin":%d}`, i, thickness, thickness))
		}
		return sideOf(b, `{"form":1,"panels":[`+strings.Join(panels, ",")+`]}`, values.String())
	}
	old, new := make(8), make(6)
	for b.Loop() {
		if c := Between(old, new); c.Counts.Records != 3000 {
			b.Fatal(c.Counts)
		}
	}
}

// Every table of a hull's record belongs to a group, so that what changes in a new one is not told among other things.
func TestEveryTableHasAGroup(t *testing.T) {
	seen := 0
	for _, table := range record.Reference() {
		if !strings.HasPrefix(table.File, "hull.toml") {
			continue
		}
		first, _, _ := strings.Cut(table.Key, ".")
		if first == "" {
			for _, f := range table.Fields {
				if recordGroups[f.Key] == "" {
					t.Errorf("the key %s has no group in group.go", f.Key)
				}
			}
			continue
		}
		seen++
		if recordGroups[first] == "" {
			t.Errorf("the table %s has no group in group.go", first)
		}
	}
	if seen < 40 {
		t.Errorf("only %d tables seen", seen)
	}
	for _, group := range recordGroups {
		if !slices.ContainsFunc(groups(), func(g Group) bool { return g.Key == group }) {
			t.Errorf("there is no group %s", group)
		}
	}
}
