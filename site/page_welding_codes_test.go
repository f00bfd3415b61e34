package site

import "testing"

// The words for codes are recalled; what is held here is that a code gets its own word, and one that is not known none.
func TestCodesInWords(t *testing.T) {
	for _, c := range []struct{ variable, written, want string }{
		{"process", "131", "metal inert gas welding, solid wire"},
		{"positions", "PA, PF", "PA flat, from above; PF upright, upward"},
		{"positions", "PA, QQ", ""},
		{"sides", "ss mb", "from one side, on backing"},
		{"material groups", "22.4", "more than 3.5 % magnesium"},
		{"thickness", "22", ""},
		{"process", "", ""},
	} {
		if got := means(c.variable, c.written); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.variable, c.written, got, c.want)
		}
	}
}

func TestCodesThatStandOnAPage(t *testing.T) {
	p := WeldingPage{
		Procedures: []ProcedurePart{{Variables: []VariableRow{{Name: "sides", Written: "bs", Qualified: Figure{Text: "ss mb, bs"}}, {Name: "thickness", Written: "22 mm"}}, Tests: []TestRow{{Piece: "butt, 21 mm, PF, 22.4, bs"}}}},
		Welders:    []WelderPart{{Ranges: []RangeRow{{Positions: "butt PA PF; fillet PB", Groups: "21, 22", Sides: "bs"}}}},
	}
	var got []string
	for _, r := range codeRows(&p) {
		got = append(got, r.Code)
	}
	want := []string{"21", "22", "22.4", "PA", "PB", "PF", "ss mb", "bs"}
	if len(got) != len(want) {
		t.Fatalf("%v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%v, want %v", got, want)
		}
	}
}
