package record

import (
	"testing"

	"hullfile/engine/unit"
)

type mm = unit.MM

func TestLookup(t *testing.T) {
	at := place("hull.toml", 3, 1)
	p := Panel{Short: Written[mm](300, at), Alloy: Written("5083-H116", at), Walked: Written(true, at), Count: Written(4, at)}
	for _, c := range []struct {
		key  string
		want Field
	}{
		{"short_side_mm", Field{Number: 300, Set: true, Unit: "mm", At: at}},
		{"alloy", Field{Word: "5083-H116", IsWord: true, Set: true, At: at}},
		{"walked_on", Field{Word: "true", IsWord: true, Set: true, At: at}},
		{"count", Field{Number: 4, Set: true, At: at}},
		{"camber_mm", Field{Unit: "mm"}},
	} {
		got, ok := Lookup(&p, c.key)
		if got.Doc == "" {
			t.Errorf("%s has no words", c.key)
		}
		got.Doc = ""
		if !ok || got != c.want {
			t.Errorf("%s is %+v, expected %+v", c.key, got, c.want)
		}
	}
	for _, entry := range []any{p, (*Panel)(nil), nil, new(int), &Entry{}} {
		if _, ok := Lookup(entry, "alloy"); ok {
			t.Errorf("%T has an alloy", entry)
		}
	}
	if _, ok := Lookup(&p, "thickness"); ok {
		t.Error("a key that does not exist was found")
	}
}

// A key found once reads every table of its kind as Lookup does, and says of others that they are not its own.
func TestKey(t *testing.T) {
	at := place("hull.toml", 3, 1)
	one, other := Panel{Short: Written[mm](300, at)}, Panel{}
	k := KeyOf(&one, "short_side_mm")
	for _, p := range []*Panel{&one, &other} {
		want, known := Lookup(p, "short_side_mm")
		if got, ok := k.In(p); ok != known || got != want || !k.Fits(p) {
			t.Errorf("%+v, expected %+v", got, want)
		}
	}
	if k.Fits(&Member{}) || k.Fits(one) || k.Fits(nil) {
		t.Error("a table of another kind fits")
	}
	for _, entry := range []any{one, nil, new(int), &Entry{}} {
		if k := KeyOf(entry, "alloy"); k.Fits(entry) != (entry != nil) && entry != nil {
			t.Errorf("%T does not fit itself", entry)
		} else if _, ok := k.In(entry); ok {
			t.Errorf("%T has an alloy", entry)
		}
	}
	if _, ok := k.In((*Panel)(nil)); ok {
		t.Error("no panel has a side")
	}
}

func TestHullValue(t *testing.T) {
	h := yardOf(t, "layers").Hulls[0]
	for _, c := range []struct {
		name   string
		number float64
		word   string
		set    bool
	}{
		{"boat.speed_kn", 26.5, "", true},
		{"boat.loaded_mass_kg", 0, "", false},
		{"panel.B1.thickness_mm", 6, "", true},
		{"trial.T1.run.2.speed_kn", 27, "", true},
		{"trial.T1.date", 0, "2026-04-02", true},
		{"title", 0, "launch with wheelhouse", true},
		{"rules.structure", 0, "own", true},
	} {
		f, ok := h.Value(c.name)
		if !ok || f.Number != c.number || f.Word != c.word || f.Set != c.set {
			t.Errorf("%s is %+v", c.name, f)
		}
	}
	for _, name := range []string{"", "boat", "panel", "panel.B9.alloy", "panel.B1", "panel.", "boat.x.y", "boat.colour", ".", "trial.T1.run"} {
		if f, ok := h.Value(name); ok {
			t.Errorf("%q is %+v", name, f)
		}
	}
}
