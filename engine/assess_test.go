package engine

import (
	"bytes"
	"io/fs"
	"os"
	"reflect"
	"sync"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

const contentFolder = "../content"

// demo reads the demo yard and what it is reckoned by.
func demo(t testing.TB) (*record.Yard, *Reference, *os.Root) {
	t.Helper()
	ref, err := NewReference(os.DirFS(contentFolder), nil)
	if err != nil {
		t.Fatalf("reference: %v", err)
	}
	root, err := os.OpenRoot(contentFolder + "/demo")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	yard, err := record.Read(root, record.Known{Alloys: ref.Alloys.Names(), Lists: ref.Requirements.Names(), Words: ref.Requirements.Words()})
	if err != nil {
		t.Fatalf("demo yard: %v", err)
	}
	if ref, err = ref.With(yard.Lists); err != nil {
		t.Fatalf("requirements of the demo yard: %v", err)
	}
	return yard, ref, root
}

func TestEveryCheckThatIsNotMetIsTold(t *testing.T) {
	yard, ref, root := demo(t)
	for _, h := range yard.Hulls {
		d := Assess(yard, h, ref, root)
		if len(d.Checks) == 0 {
			t.Errorf("%s: no checks", h.Number)
		}
		told := map[[2]string]bool{}
		for _, f := range d.Findings {
			told[[2]string{f.Rule, f.Subject}] = true
		}
		for _, c := range d.Checks {
			if c.Standing != finding.Met && !told[[2]string{c.Rule, c.Subject}] {
				t.Errorf("%s: %s on %s is %s and not told", h.Number, c.Rule, c.Subject, c.Standing)
			}
		}
	}
}

func TestEveryCheckAndFindingIsComplete(t *testing.T) {
	yard, ref, root := demo(t)
	for _, h := range yard.Hulls {
		d := Assess(yard, h, ref, root)
		for _, c := range d.Checks {
			if c.Rule == "" || c.Subject == "" || c.Asks == "" || c.Says == "" || c.Standing == "" || c.Source == "" || c.Basis == "" && c.Standing != finding.NotShown {
				t.Errorf("%s: check not complete: %+v", h.Number, c)
			}
			if c.Standing != finding.Met && c.Settle == "" {
				t.Errorf("%s: nothing settles %s on %s", h.Number, c.Rule, c.Subject)
			}
		}
		for _, f := range d.Findings {
			if f.Rule == "" || f.Subject == "" || f.Says == "" || gravity(f.Kind) < 0 || f.Link != "" {
				t.Errorf("%s: finding not complete: %+v", h.Number, f)
			}
		}
		for _, a := range d.Assumptions {
			if a.Subject == "" || a.Says == "" || a.Settle == "" || a.Basis == "" {
				t.Errorf("%s: assumption not complete: %+v", h.Number, a)
			}
		}
	}
}

// A dossier is a pure function of the records, also where hulls are assessed side by side.
func TestSameRecordsSameDossier(t *testing.T) {
	yard, ref, root := demo(t)
	first := make([]*Dossier, len(yard.Hulls))
	for i, h := range yard.Hulls {
		first[i] = Assess(yard, h, ref, root)
	}
	second := make([]*Dossier, len(yard.Hulls))
	var wait sync.WaitGroup
	for i, h := range yard.Hulls {
		wait.Go(func() { second[i] = Assess(yard, h, ref, root) })
	}
	wait.Wait()
	for i := range first {
		if !reflect.DeepEqual(first[i].Checks, second[i].Checks) || !reflect.DeepEqual(first[i].Findings, second[i].Findings) ||
			!reflect.DeepEqual(first[i].Assumptions, second[i].Assumptions) {
			t.Errorf("%s: two dossiers of the same records differ", yard.Hulls[i].Number)
		}
	}
}

func TestFindingsAreInTheOrderOfTelling(t *testing.T) {
	yard, ref, root := demo(t)
	for _, h := range yard.Hulls {
		last := 0
		for _, f := range Assess(yard, h, ref, root).Findings {
			if g := gravity(f.Kind); g < last {
				t.Fatalf("%s: %s after a graver one", h.Number, f.Kind)
			} else {
				last = g
			}
		}
	}
}

func TestADisciplinesFindingStandsInForItsCheck(t *testing.T) {
	short := finding.Finding{Kind: finding.Shortfall, Rule: "r", Subject: "s"}
	gap := finding.Finding{Kind: finding.Gap, Rule: "r", Subject: "s"}
	as := func(k finding.Kind, rule, subject string) finding.Finding {
		return finding.Finding{Kind: k, Rule: rule, Subject: subject}
	}
	rows := []struct {
		where   string
		ofCheck finding.Finding
		own     []finding.Finding
		left    int
	}{
		{"a contradiction stands in for a shortfall", short, []finding.Finding{as(finding.Contradiction, "r", "s")}, 0},
		{"a shortfall worded by the discipline", short, []finding.Finding{as(finding.Shortfall, "r", "s")}, 0},
		{"a doubt does not hide a shortfall", short, []finding.Finding{as(finding.Doubt, "r", "s")}, 1},
		{"a doubt does not hide a gap", gap, []finding.Finding{as(finding.Doubt, "r", "s")}, 1},
		{"another subject", short, []finding.Finding{as(finding.Contradiction, "r", "other")}, 1},
		{"another rule", short, []finding.Finding{as(finding.Contradiction, "other", "s")}, 1},
		{"the gravest of several counts", short, []finding.Finding{as(finding.Doubt, "r", "s"), as(finding.Contradiction, "r", "s"), as(finding.Doubt, "r", "s")}, 0},
	}
	for _, r := range rows {
		if got := notTold([]finding.Finding{r.ofCheck}, r.own); len(got) != r.left {
			t.Errorf("%s: %d left, want %d", r.where, len(got), r.left)
		}
	}
}

func TestYardDoubtsGoToTheirHull(t *testing.T) {
	y := &record.Yard{Doubts: []record.YardDoubt{
		{Hull: "H1", Finding: finding.Finding{Says: "of H1"}},
		{Hull: "H2", Finding: finding.Finding{Says: "of H2"}},
		{Finding: finding.Finding{Says: "of the yard"}},
	}}
	got := doubtsOf(y, &record.Hull{Number: "H1"})
	if len(got) != 2 || got[0].Says != "of H1" || got[1].Says != "of the yard" {
		t.Errorf("%v", got)
	}
}

// An unlikely value of the stock is told in the file of a hull that draws on it, or on nothing at all, and in no other.
func TestDoubtsOfTheStockGoToWhatDrawsOnIt(t *testing.T) {
	lot := func(key, file string) record.Lot {
		l := record.Lot{}
		l.ID, l.At = key, finding.Place{File: file}
		return l
	}
	y := &record.Yard{Doubts: []record.YardDoubt{{Finding: finding.Finding{Says: "thick", Places: []finding.Place{{File: "stock/one.toml", Line: 3}}}}}}
	y.Stock.Lots = []record.Lot{lot("L1", "stock/one.toml"), lot("L2", "stock/two.toml")}
	for of, want := range map[string]int{"L1": 1, "L2": 0, "": 1} {
		h := &record.Hull{Number: "H1"}
		h.Parts = []record.Part{{Lot: record.Written(of, finding.Place{})}}
		if got := doubtsOf(y, h); len(got) != want {
			t.Errorf("a hull that draws on %q is told %d doubts, want %d", of, len(got), want)
		}
	}
}

// A yard that replaces a shipped sheet by one with another factor must see that the published values no longer come out.
func TestAReplacedSheetIsHeldAgainstTheProofs(t *testing.T) {
	shipped, err := NewReference(os.DirFS(contentFolder), nil)
	if err != nil {
		t.Fatal(err)
	}
	if failed := shipped.Proofs().Failed(); len(failed) > 0 {
		t.Fatalf("shipped sheets fail %d proofs, first %+v", len(failed), failed[0])
	}
	if len(shipped.Proofs().Cases) == 0 {
		t.Fatal("no proofs were run")
	}
	const name = "iso-12215-5-2008.toml"
	text, err := fs.ReadFile(os.DirFS(contentFolder), "methods/"+name)
	if err != nil {
		t.Fatal(err)
	}
	own, err := NewReference(os.DirFS(contentFolder), []method.Source{{Name: name, Path: "methods/" + name, Text: halved(t, text)}})
	if err != nil {
		t.Fatal(err)
	}
	failed := unproved(own.Proofs())
	if len(failed) != 1 || failed[0].Kind != finding.Doubt {
		t.Errorf("a sheet with other factors passes the proofs: %v", failed)
	}
}

func TestAYardWithoutRecordsOfMostKinds(t *testing.T) {
	_, ref, _ := demo(t)
	h := &record.Hull{Number: "H1"}
	d := Assess(&record.Yard{Hulls: []*record.Hull{h}}, h, ref, nil)
	if d.Standing() != finding.NotShown {
		t.Errorf("a hull without records is %s", d.Standing())
	}
	for _, c := range d.Checks {
		if c.Standing == finding.Met {
			t.Errorf("%s on %s is met without any record", c.Rule, c.Subject)
		}
	}
}

func BenchmarkAssessDemoHull(b *testing.B) {
	yard, ref, root := demo(b)
	for b.Loop() {
		Assess(yard, yard.Hulls[0], ref, root)
	}
}

// BenchmarkNewReference reads all that comes with the program and runs the proofs, as a run does that reckons something.
func BenchmarkNewReference(b *testing.B) {
	for b.Loop() {
		ref, err := NewReference(os.DirFS(contentFolder), nil)
		if err != nil || len(ref.Proofs().Cases) == 0 {
			b.Fatal(err)
		}
	}
}

// BenchmarkReadShipped is the same without the proofs, as a run does that finds everything unchanged.
func BenchmarkReadShipped(b *testing.B) {
	for b.Loop() {
		if _, err := NewReference(os.DirFS(contentFolder), nil); err != nil {
			b.Fatal(err)
		}
	}
}

// halved halves the factor of the bottom pressure in the text of a sheet.
func halved(t *testing.T, text []byte) []byte {
	t.Helper()
	const formula = "2.4 * m_LDC**0.33"
	if !bytes.Contains(text, []byte(formula)) {
		t.Fatalf("the sheet has no %q to spoil", formula)
	}
	return bytes.Replace(text, []byte(formula), []byte("1.2 * m_LDC**0.33"), 1)
}
