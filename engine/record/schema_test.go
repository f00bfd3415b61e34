package record

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// TestSchemaSaysWhatTheReaderDoes reads the schema back and holds it against the field table.
func TestSchemaSaysWhatTheReaderDoes(t *testing.T) {
	for what, make := range map[string]func() ([]byte, error){"hull": Schema, "yard": YardSchema, "stock": StockSchema, "procedures": ProceduresSchema} {
		text, err := make()
		if err != nil {
			t.Fatal(err)
		}
		var s map[string]any
		if err := json.Unmarshal(text, &s); err != nil {
			t.Fatal(err)
		}
		if s["$schema"] != "https://json-schema.org/draft/2020-12/schema" {
			t.Errorf("dialect %v", s["$schema"])
		}
		root := map[string]*table{"hull": hullTable, "yard": builderTable, "stock": stockTable, "procedures": proceduresTable}[what]
		holdsTable(t, what, root, s, what != "hull")
	}
}

func holdsTable(t *testing.T, way string, tab *table, s map[string]any, whole bool) {
	t.Helper()
	if s["type"] != "object" || s["additionalProperties"] != false {
		t.Errorf("%s takes keys that nobody reads", way)
	}
	properties, _ := s["properties"].(map[string]any)
	required, _ := s["required"].([]any)
	for _, f := range tab.fields {
		p, ok := properties[f.key].(map[string]any)
		if !ok {
			t.Errorf("%s.%s is not in the schema", way, f.key)
			continue
		}
		if f.must && whole != slices.Contains(required, any(f.key)) {
			t.Errorf("%s.%s: required is %v", way, f.key, required)
		}
		holdsField(t, way+"."+f.key, f, p, whole)
	}
	if _, ok := properties[absentKey]; ok != (tab.keyed && !whole) {
		t.Errorf("%s: absent is in the schema: %t", way, ok)
	}
}

func holdsField(t *testing.T, way string, f *field, p map[string]any, whole bool) {
	t.Helper()
	if d, _ := p["description"].(string); !strings.HasPrefix(d, f.doc) {
		t.Errorf("%s is described as %q", way, d)
	}
	switch {
	case f.kind == plain:
		holdsTable(t, way, f.sub, p, whole)
	case f.kind == entries && f.rows:
		both := p["anyOf"].([]any)
		holdsTable(t, way, f.sub, both[0].(map[string]any)["additionalProperties"].(map[string]any), whole)
		holdsTable(t, way, f.sub, both[1].(map[string]any)["items"].(map[string]any), whole)
	case f.kind == entries:
		holdsTable(t, way, f.sub, p["additionalProperties"].(map[string]any), whole)
	default:
		for name, b := range map[string]bound{"exclusiveMinimum": f.above, "minimum": f.least, "maximum": f.most} {
			if v, is := p[name].(float64); is != b.set || v != b.v {
				t.Errorf("%s: %s is %v, expected %v", way, name, p[name], b)
			}
		}
		if items, list := p["items"].(map[string]any); list {
			p = items
		}
		if words, _ := p["enum"].([]any); len(words) != len(f.oneof) {
			t.Errorf("%s allows %v", way, words)
		}
	}
}

// TestReferenceIsWhole: every key of every table is in the reference, under its heading.
func TestReferenceIsWhole(t *testing.T) {
	found := map[string]TableDoc{}
	fields := 0
	for _, d := range Reference() {
		found[d.File+d.Heading] = d
		fields += len(d.Fields)
	}
	want := 0
	eachField(func(_ *table, f *field) {
		if f.sub == nil {
			want++
		}
	})
	if fields != want {
		t.Errorf("%d keys in the reference, %d in the records", fields, want)
	}
	runs := found["hull.toml and design.toml[trial.KEY.run.KEY]"]
	if runs.CSV != "runs.csv" || !runs.Ordered || !slices.Equal(runs.Columns[:3], []string{"id", "trial", "setting"}) {
		t.Errorf("runs: %+v", runs)
	}
	panel := found["hull.toml and design.toml[panel.KEY]"]
	i := slices.IndexFunc(panel.Fields, func(f FieldDoc) bool { return f.Key == "thickness_mm" })
	want2 := FieldDoc{Key: "thickness_mm", Takes: "number", Unit: "mm", InWords: "millimetre", Range: "above 0, at most 60", Usual: "2 to 16", Required: true, Example: "6.0", Doc: "plate thickness as ordered"}
	if got := panel.Fields[i]; got.Key != want2.Key || got.Range != want2.Range || got.Usual != want2.Usual || got.Unit != want2.Unit || !got.Required || got.Example != want2.Example {
		t.Errorf("thickness: %+v", got)
	}
}

func TestMeans(t *testing.T) {
	for key, want := range map[string]string{
		"plate.max_load_kg":         "greatest",
		"panel.B3.thickness_mm":     "plate thickness",
		"panel.thickness_mm":        "plate thickness",
		"weighing.W1.point.1.x_m":   "",
		"joint.K1":                  "seam",
		"person.ab.name":            "name",
		"lot.6K0417.cast":           "cast number",
		"procedure.P1.layers":       "run",
		"title":                     "",
		"no.such.key":               "no",
		"panel.B3.no_such_mm":       "no",
		"panel.B3.thickness_mm.too": "no",
		"":                          "no",
	} {
		got := Means(key)
		switch {
		case want == "no" && got != "":
			t.Errorf("%q means %q", key, got)
		case want != "no" && (got == "" || !strings.Contains(strings.ToLower(got), want)):
			t.Errorf("%q means %q, expected something about %q", key, got, want)
		}
	}
}
