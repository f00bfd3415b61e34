package requirement

import (
	"errors"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

const words = `
[evidence.strength]
says  = "strength"
how   = "result"
rules = ["strong"]
also  = ["strong-*"]
[evidence.paper]
says  = "a paper"
how   = "document"
kinds = ["manual"]
named = true
[evidence.signed]
says   = "a signed statement"
how    = "statement"
kinds  = ["statement"]
signed = true
[evidence.seen]
says = "from where it is seen"
how  = "record"
keys = ["plate.seen_from"]
[evidence.turned]
says   = "turning on trial"
how    = "test"
tables = ["trial.turning"]
[fact.LH]
from = "boat.length_hull_m"
name = "length of hull"
unit = "m"
[fact.gas]
from  = "fitted.gas"
name  = "gas on board"
words = ["yes", "no"]
[fact.begun]
from = "day.identity.keel_laid"
name = "begun"
[fact.eu]
from  = "law.EU"
name  = "European rules"
words = ["yes", "no"]
`

const head = "title = \"List\"\nwork = \"law\"\nkind = \"law\"\nbasis = \"read\"\n"

// catalog makes a catalog of one list out of its items.
func catalog(t *testing.T, items string) *Catalog {
	t.Helper()
	c, err := load(files(items), nil)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func files(items string) fstest.MapFS {
	return fstest.MapFS{"evidence/w.toml": {Data: []byte(words)}, "requirements/list.toml": {Data: []byte(head + items)}}
}

func item(lines string) string {
	return "[item.\"1\"]\nheading = \"H\"\nasks = \"A.\"\nblocks = \"sale\"\n" + lines + "\n"
}

func at(line int) finding.Place { return finding.Place{File: "hull.toml", Line: line, Col: 1} }

// hull is a boat of 5.9 m that must answer the list.
func hull() *record.Hull {
	h := &record.Hull{Number: "1"}
	h.Boat.LengthHull = record.Written(unit.M(5.9), at(1))
	h.Conformity.Lists = record.Written([]string{"list"}, at(2))
	return h
}

func input(h *record.Hull) Input {
	return Input{Hull: h, Builder: &record.Builder{}, Documents: &document.Result{}}
}

func paper(id, kind string, shows ...string) document.Document {
	r := &record.Document{Entry: record.Entry{ID: id, At: at(9)}, Kind: record.Written(kind, at(9)), Title: record.Written("Title of "+id, at(9))}
	r.Shows = record.Written(shows, at(9))
	return document.Document{Record: r, Present: true, Matches: true}
}

func check(rule string, s finding.Standing) finding.Check {
	return finding.Check{Rule: rule, Subject: "panel B1", Standing: s, Says: "says " + rule, Settle: "settle " + rule}
}

// TestStandingOfAnItem: who meets exactly, and who almost does.
func TestStandingOfAnItem(t *testing.T) {
	signedPaper := paper("S", "statement")
	signedPaper.Record.SignedBy, signedPaper.Record.SHA256 = record.Written("N", at(9)), record.Written("ab", at(9))
	unsigned := paper("S", "statement")
	unsigned.Record.SHA256 = record.Written("ab", at(9))
	noHash := paper("S", "statement")
	noHash.Record.SignedBy = record.Written("N", at(9))
	gone := paper("P", "manual", "paper")
	gone.Present = false
	altered := paper("P", "manual", "paper")
	altered.Matches = false
	met, short := check("strong", finding.Met), check("strong", finding.Short)
	rows := []struct { // own arithmetic
		name, item string
		checks     []finding.Check
		findings   []finding.Finding
		papers     []document.Document
		seen       bool
		want       finding.Standing
	}{
		{"result met", `needed = ["strength"]`, []finding.Check{met}, nil, nil, false, finding.Met},
		{"one of two checks short", `needed = ["strength"]`, []finding.Check{met, short}, nil, nil, false, finding.Short},
		{"no check at all", `needed = ["strength"]`, nil, nil, nil, false, finding.NotShown},
		{"a further rule is no evidence by itself", `needed = ["strength"]`, []finding.Check{check("strong-more", finding.Met)}, nil, nil, false, finding.NotShown},
		{"a further rule that is short counts", `needed = ["strength"]`, []finding.Check{met, check("strong-more", finding.Short)}, nil, nil, false, finding.Short},
		{"a contradiction of the trade", `needed = ["strength"]`, []finding.Check{met}, []finding.Finding{{Kind: finding.Contradiction, Rule: "strong-two", Says: "both"}}, nil, false, finding.Short},
		{"a gap of the trade", `needed = ["strength"]`, []finding.Check{met}, []finding.Finding{{Kind: finding.Gap, Rule: "strong-two", Says: "gap"}}, nil, false, finding.NotShown},
		{"a doubt changes nothing", `needed = ["strength"]`, []finding.Check{met}, []finding.Finding{{Kind: finding.Doubt, Rule: "strong-two", Says: "doubt"}}, nil, false, finding.Met},
		{"a rule of another trade", `needed = ["strength"]`, []finding.Check{met, check("stronger", finding.Short)}, nil, nil, false, finding.Met},
		{"paper that names the word", `needed = ["paper"]`, nil, nil, []document.Document{paper("P", "manual", "paper")}, false, finding.Met},
		{"paper of another kind", `needed = ["paper"]`, nil, nil, []document.Document{paper("P", "drawing", "paper")}, false, finding.NotShown},
		{"paper that names nothing", `needed = ["paper"]`, nil, nil, []document.Document{paper("P", "manual")}, false, finding.NotShown},
		{"paper that is not there", `needed = ["paper"]`, nil, nil, []document.Document{gone}, false, finding.NotShown},
		{"paper that was altered", `needed = ["paper"]`, nil, nil, []document.Document{altered}, false, finding.Short},
		{"one paper altered, one whole", `needed = ["paper"]`, nil, nil, []document.Document{altered, paper("Q", "manual", "paper")}, false, finding.Met},
		{"signed and hashed", `needed = ["signed"]`, nil, nil, []document.Document{signedPaper}, false, finding.Met},
		{"hashed, not signed", `needed = ["signed"]`, nil, nil, []document.Document{unsigned}, false, finding.NotShown},
		{"signed, not hashed", `needed = ["signed"]`, nil, nil, []document.Document{noHash}, false, finding.NotShown},
		{"a statement beside does not stand in for a result", "needed = [\"strength\"]\nsupports = [\"signed\"]", nil, nil, []document.Document{signedPaper}, false, finding.NotShown},
		{"record key written", `needed = ["seen"]`, nil, nil, nil, true, finding.Met},
		{"record key missing", `needed = ["seen"]`, nil, nil, nil, false, finding.NotShown},
		{"one of two is enough", `either = ["strength", "seen"]`, nil, nil, nil, true, finding.Met},
		{"none of two", `either = ["strength", "seen"]`, []finding.Check{short}, nil, nil, false, finding.NotShown},
		{"needed and almost", `needed = ["strength", "seen"]`, []finding.Check{met}, nil, nil, false, finding.NotShown},
		{"table without entries", `needed = ["turned"]`, nil, nil, nil, false, finding.NotShown},
	}
	for _, r := range rows {
		h := hull()
		if r.seen {
			h.Plate.Seen = record.Written("the helm", at(5))
		}
		in := input(h)
		in.Checks, in.Findings, in.Documents.Documents = r.checks, r.findings, r.papers
		got := catalog(t, item(r.item)).Assess(in)
		it := got.Lists[0].Items[0]
		if it.Standing != r.want {
			t.Errorf("%s: %s, want %s (%s)", r.name, it.Standing, r.want, it.Says)
		}
		if (it.Says == "") != (r.want == finding.Met) {
			t.Errorf("%s: says %q", r.name, it.Says)
		}
		if c := got.Checks[0]; c.Standing != r.want || c.Rule != ruleList || c.Places[0] != at(2) {
			t.Errorf("%s: check %+v", r.name, c)
		}
		if len(got.Open) > 0 == (r.want == finding.Met) {
			t.Errorf("%s: %d open", r.name, len(got.Open))
		}
	}
}

func TestTurningOnTrialIsEvidence(t *testing.T) {
	h := hull()
	h.Trials = []record.Trial{{Entry: record.Entry{ID: "T1"}, Turnings: []record.Turning{{Entry: record.Entry{ID: "P1", At: at(7)}}}}}
	it := catalog(t, item(`needed = ["turned"]`)).Assess(input(h)).Lists[0].Items[0]
	if it.Standing != finding.Met || it.Answers[0].Shown[0].Place != at(7) {
		t.Errorf("%+v", it)
	}
}

// A law that is not about such a boat is doubted, and so is one of which that is not known; its items are judged all the same.
func TestScopeOfALaw(t *testing.T) {
	scoped := "scope = \"LH >= 2.5 and gas == 'no'\"\nbeyond = \"it is about boats without gas\"\n" + item(`needed = ["seen"]`)
	for _, r := range []struct { // own arithmetic
		gas, set bool
		says     string
	}{
		{false, true, ""},
		{true, true, "this boat may stand outside it: it is about boats without gas (length of hull 5.9\u00a0m, gas on board yes)"},
		{false, false, "this boat may stand outside it: it is about boats without gas (not written: fitted.gas)"},
	} {
		h := hull()
		h.Fitted.Gas = record.Val[bool]{V: r.gas, Set: r.set, At: at(3)}
		got := catalog(t, scoped).Assess(input(h))
		says := ""
		for _, f := range got.Findings {
			if f.Rule == ruleScope && f.Kind == finding.Doubt {
				says = f.Says
			}
		}
		if says != r.says || len(got.Lists[0].Items) != 1 {
			t.Errorf("gas %v, written %v: %q, want %q", r.gas, r.set, says, r.says)
		}
	}
	if _, err := load(files("scope = \"LH > 2\"\n"+item(`needed = ["seen"]`)), nil); err == nil {
		t.Error("a scope without words is taken")
	}
}

// TestWhenAnItemApplies: the boat at the limit, just under it, and one of which it is not known.
func TestWhenAnItemApplies(t *testing.T) {
	under := "needed = [\"seen\"]\nwhen = \"LH < 6\"\notherwise = \"it is 6 m or longer\""
	rows := []struct { // own arithmetic
		length  float64
		applies bool
		says    string
	}{
		{5.99, true, "from where it is seen: plate.seen_from not written"},
		{6, false, "does not apply, because it is 6 m or longer (length of hull 6 m)"},
		{0, true, "it is not known whether it applies: not written: boat.length_hull_m"},
	}
	for _, r := range rows {
		h := hull()
		h.Boat.LengthHull = record.Val[unit.M]{V: unit.M(r.length), Set: r.length > 0, At: at(1)}
		got := catalog(t, item(under)).Assess(input(h))
		it := got.Lists[0].Items[0]
		if it.Applies != r.applies || it.Says != r.says {
			t.Errorf("%g m: applies %v, %q", r.length, it.Applies, it.Says)
		}
		if !r.applies && (got.Lists[0].Idle != 1 || len(got.Open) != 0) {
			t.Errorf("%g m: %+v", r.length, got.Lists[0])
		}
	}
}

func TestFactsOfDaysAndMarkets(t *testing.T) {
	h := hull()
	h.Identity.KeelLaid = record.Written(record.Date{Year: 2006, Month: 7, Day: 1}, at(3))
	h.Plate.Law = record.Written([]string{"UK", "EU"}, at(4))
	h.Fitted.Gas = record.Written(false, at(5))
	for when, applies := range map[string]bool{
		"begun >= 20060701": true, "begun > 20060701": false, "eu == 'yes'": true, "gas == 'yes'": false, "gas == 'no'": true,
	} {
		it := catalog(t, item("needed = [\"seen\"]\notherwise = \"o\"\nwhen = \""+when+"\"")).Assess(input(h)).Lists[0].Items[0]
		if it.Applies != applies {
			t.Errorf("%s: applies %v", when, it.Applies)
		}
	}
}

// TestListThatDoesNotApply raises nothing, and neither does one that nobody chose.
func TestListThatDoesNotApply(t *testing.T) {
	h := hull()
	h.Plate.Law = record.Written([]string{"US"}, at(4))
	c := catalog(t, "when = \"eu == 'yes'\"\notherwise = \"sold elsewhere\"\n"+item(`needed = ["seen"]`))
	got := c.Assess(input(h))
	if l := got.Lists[0]; l.Applies || len(l.Items) > 0 || len(got.Checks) > 0 || !strings.Contains(l.Why, "sold elsewhere") {
		t.Errorf("%+v", got)
	}
	h.Conformity.Lists.Set = false
	if got := c.Assess(input(h)); len(got.Lists) > 0 || len(got.Checks) > 0 || len(got.Findings) > 0 {
		t.Errorf("a list that nobody chose: %+v", got)
	}
	in := input(h)
	in.Builder.Lists = record.Written([]string{"list", "list"}, at(8))
	h.Plate.Law.V = []string{"EU"}
	if got := c.Assess(in); len(got.Lists) != 1 || got.Checks[0].Places[0] != at(8) {
		t.Errorf("the yard's choice: %+v", got)
	}
	h.Conformity.Lists = record.Written([]string{"lsit"}, at(2))
	if got := c.Assess(input(h)); len(got.Findings) != 1 || got.Findings[0].Settle != "did you mean list?" {
		t.Errorf("a list that is not at hand: %+v", got.Findings)
	}
}

func TestWhatBlocksMostComesFirst(t *testing.T) {
	var items string
	for id, blocks := range map[string]string{"a": "nothing", "b": "plate", "c": "sale", "d": "next work"} {
		items += "[item." + id + "]\nheading = \"H\"\nasks = \"A\"\nneeded = [\"seen\"]\nblocks = \"" + blocks + "\"\n"
	}
	var got string
	r := catalog(t, items).Assess(input(hull()))
	for _, it := range r.Open {
		got += it.Record.ID
	}
	if got != "cbda" || !strings.Contains(r.Checks[0].Says, "c H") {
		t.Errorf("order %s; %s", got, r.Checks[0].Says)
	}
}

// TestAcceptedMakesNothingMet: who accepted is shown, and told where there was nothing to accept.
func TestAcceptedMakesNothingMet(t *testing.T) {
	h := hull()
	accept := func(list, no string) {
		h.Accepted = []record.Accepted{{List: record.Written(list, at(6)), Item: record.Written(no, at(6)), By: record.Written("p", at(6))}}
	}
	c := catalog(t, item(`needed = ["seen"]`))
	for no, kind := range map[string]finding.Kind{"1": finding.Doubt, "2": finding.Contradiction} {
		accept("list", no)
		got := c.Assess(input(h))
		if got.Lists[0].Items[0].Standing != finding.NotShown || len(got.Findings) != 1 || got.Findings[0].Kind != kind || got.Findings[0].Places[0] != at(6) {
			t.Errorf("item %s: %+v", no, got.Findings)
		}
	}
	accept("other", "1")
	if got := c.Assess(input(h)); len(got.Findings) != 1 || got.Findings[0].Kind != finding.Contradiction {
		t.Errorf("another list: %+v", got.Findings)
	}
	accept("list", "all")
	h.Plate.Seen = record.Written("the helm", at(5))
	if got := c.Assess(input(h)); len(got.Findings) != 0 || len(got.Lists[0].Items[0].Accepted) != 1 {
		t.Errorf("all: %+v", got.Findings)
	}
}

// TestRecalledItemsAreADoubt: those that apply, and no others.
func TestRecalledItemsAreADoubt(t *testing.T) {
	h := hull()
	h.Plate.Seen = record.Written("the helm", at(5))
	two := item("needed = [\"seen\"]\nbasis = \"recalled\"") + strings.Replace(item("needed = [\"seen\"]\nbasis = \"recalled\"\nwhen = \"LH > 6\"\notherwise = \"o\""), `"1"`, `"2"`, 1)
	got := catalog(t, two).Assess(input(h))
	if len(got.Findings) != 1 || got.Findings[0].Kind != finding.Doubt || !strings.HasPrefix(got.Findings[0].Says, "1 of 1 items that apply") {
		t.Errorf("%+v", got.Findings)
	}
	if got := catalog(t, item(`needed = ["seen"]`)).Assess(input(h)); len(got.Findings) != 0 {
		t.Errorf("read items: %+v", got.Findings)
	}
}

func TestSignedOverOpenItems(t *testing.T) {
	d := paper("S", "statement")
	d.Record.SignedBy, d.Record.SHA256 = record.Written("N", at(9)), record.Written("ab", at(9))
	in := input(hull())
	in.Documents.Documents = []document.Document{d}
	two := item(`needed = ["signed"]`) + strings.Replace(item(`needed = ["seen"]`), `"1"`, `"2"`, 1)
	got := catalog(t, two).Assess(in)
	if len(got.Findings) != 1 || got.Findings[0].Rule != ruleSigned || got.Findings[0].Places[0] != at(9) || !strings.Contains(got.Findings[0].Says, "1 item is open") {
		t.Errorf("%+v", got.Findings)
	}
	// readers know a list by its title, and what compares two files by the name of its file
	if f, c := got.Findings[0], got.Checks[0]; f.Name() != `list "List"` || c.Name() != f.Name() || f.Subject != "list list" || c.Subject != f.Subject {
		t.Errorf("named %q and %q, subjects %q and %q", f.Name(), c.Name(), f.Subject, c.Subject)
	}
	soft := strings.Replace(two, "blocks = \"sale\"\nneeded = [\"seen\"]", "blocks = \"nothing\"\nneeded = [\"seen\"]", 1)
	if got := catalog(t, soft).Assess(in); len(got.Findings) != 0 {
		t.Errorf("an item that blocks no signature: %+v", got.Findings)
	}
}

// TestFaultsOfLists: every fault of every list at its line and column.
func TestFaultsOfLists(t *testing.T) {
	rows := []struct{ name, items, want string }{
		{"unknown word", item(`needed = ["strenght"]`), `requirements/list.toml:9:10: item.1: "strenght" is not a word for evidence that is known here`},
		{"nothing answers it", item(`supports = ["seen"]`), "requirements/list.toml:5:7: item.1: no evidence is named that would answer it"},
		{"statement instead of a result", item(`either = ["strength", "signed"]`), "requirements/list.toml:9:10: item.1.either: a statement may not stand in for a result or a document"},
		{"unknown fact", item("needed = [\"seen\"]\notherwise = \"o\"\nwhen = \"LH < 6 and gass == 'yes'\""), "requirements/list.toml:11:20: item.1.when: gass is no fact of the boat that is known here"},
		{"a word that cannot be", item("needed = [\"seen\"]\notherwise = \"o\"\nwhen = \"gas == 'true'\""), "requirements/list.toml:11:16: item.1.when: gas is never \"true\""},
		{"condition without a reason", item("needed = [\"seen\"]\nwhen = \"LH < 6\""), "requirements/list.toml:10:8: item.1.when: a condition needs the reason why it does not apply otherwise"},
		{"reason without a condition", item("needed = [\"seen\"]\notherwise = \"o\""), "requirements/list.toml:10:13: item.1.when: otherwise stands without a condition"},
		{"no item", "", "requirements/list.toml:1:1: item: the list has no item"},
		{"word taken", item(`needed = ["seen"]`) + "[evidence.seen]\nsays = \"s\"\nhow = \"record\"\nkeys = [\"title\"]\n", "requirements/list.toml:10:11: evidence.seen: the word is taken; first evidence/w.toml:17:11"},
		{"word for nothing", item(`needed = ["seen"]`) + "[evidence.x]\nsays = \"s\"\nhow = \"record\"\nalso = [\"strong\"]\n", "requirements/list.toml:10:11: evidence.x: nothing is said that could show it"},
		{"no such key", item(`needed = ["x"]`) + "[evidence.x]\nsays = \"s\"\nhow = \"record\"\nkeys = [\"plate.sen_from\"]\n", `requirements/list.toml:13:8: evidence.x.keys: "plate.sen_from" is no record key`},
		{"no such table", item(`needed = ["x"]`) + "[evidence.x]\nsays = \"s\"\nhow = \"record\"\ntables = [\"trial.turn\"]\n", `requirements/list.toml:13:10: evidence.x.tables: "trial.turn" is no table of the record of a hull`},
		{"no TOML", "[item", "requirements/list.toml:5"},
		{"unknown key", item("needed = [\"seen\"]\ncolour = \"red\""), "requirements/list.toml:10:1: item.1.colour: unknown key"},
	}
	for _, r := range rows {
		c, err := load(files(r.items), nil)
		var faults finding.Faults
		if c != nil || !errors.As(err, &faults) || !strings.Contains(err.Error(), r.want) {
			t.Errorf("%s: %v\nwant %s", r.name, err, r.want)
		}
	}
}

func TestYardsListReplacesAndAdds(t *testing.T) {
	read := func(text string) record.List {
		all, err := record.ReadLists(fstest.MapFS{"requirements/list.toml": {Data: []byte(text)}}, "requirements")
		if err != nil {
			t.Fatal(err)
		}
		return all[0]
	}
	own := read(strings.Replace(head, `"List"`, `"Own"`, 1) + item(`needed = ["seen"]`))
	own.Yards, own.Replaces = true, true
	more := own
	more.Name = "more"
	c, err := load(files(item(`needed = ["strength"]`)), []record.List{own, more})
	if err != nil {
		t.Fatal(err)
	}
	l, _ := c.Find("list")
	if l.Title.V != "Own" || !l.Replaces || strings.Join(c.Names(), " ") != "list more" {
		t.Errorf("%v, %+v", c.Names(), l)
	}
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := load(os.DirFS("../../content"), nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAssess(b *testing.B) {
	c, err := load(os.DirFS("../../content"), nil)
	if err != nil {
		b.Fatal(err)
	}
	h := hull()
	h.Conformity.Lists.V = c.Names()
	in := input(h)
	for range 400 {
		in.Checks = append(in.Checks, check("plating-thickness", finding.Met), check("lot-strength", finding.Met))
	}
	for b.Loop() {
		c.Assess(in)
	}
}
