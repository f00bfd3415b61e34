package method

import (
	"errors"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

// head is the shortest head that a sheet may have: three lines.
const head = "title = 't'\nwork = 'w'\nstanding = 's'\n"

// inputs declares x in mm and zone: lines 4 to 14.
const inputs = head + `[[c.input]]
symbol = "x"
name = "breadth"
unit = "mm"
from = "panel.x_mm"
[[c.input]]
symbol = "zone"
name = "zone"
words = ["bottom", "side"]
from = "panel.zone"

`

// step is one sound step but for its formula: the formula stands on line 19.
func step(formula string) string {
	return inputs + "[[c.step]]\nsymbol = 'y'\nname = 'result'\nunit = ''\nformula = '" + formula + "'\nclause = '1'\nbasis = 'read'\n"
}

// further is one more step.
func further(symbol, rest string) string {
	return "[[c.step]]\nsymbol = '" + symbol + "'\nname = 'n'\nunit = ''\nclause = '1'\nbasis = 'read'\n" + rest + "\n"
}

func TestFaults(t *testing.T) {
	rows := []struct {
		name, text, want string
	}{
		// head
		{"no TOML", "title = \n", "f.toml:1:9: is no TOML: expected value but found '\\n' instead"},
		{"not UTF-8", "title = '\xff'\n", "f.toml:1:10: is not UTF-8 text\n    save the file as UTF-8"},
		{"nested", "title = 't'\nx = " + strings.Repeat("[", 20), "f.toml:2:17: is nested more than 12 deep\n    a method sheet has scopes, and steps in them"},
		{"key of many parts", "title = 't'\n" + strings.Repeat("a.", 20) + "a = 1", "f.toml:2:26: is nested more than 12 deep\n    a method sheet has scopes, and steps in them"},
		{"brackets in text and remarks", "# " + strings.Repeat("[", 20) + "\nabout = \"\"\"" + strings.Repeat("[", 20) + "\\\"\"\"\"\neditoin = '" + strings.Repeat("{", 20) + "'\n" + step("1"), "f.toml:3:1: editoin: is not a key of a method sheet\n    did you mean edition?"},
		{"nothing", "", "f.toml:1:1: has no scope\n    write [[craft.input]] and [[craft.step]]\nf.toml:1:1: standing: is missing\n    say how far the sheet can be relied on\nf.toml:1:1: title: is missing\n    write title = \"...\"\nf.toml:1:1: work: is missing\n    name the work the formulas come from"},
		{"empty title", "title = ' '\n" + strings.Replace(step("1"), "title = 't'\n", "", 1), "f.toml:1:9: title: is empty\n    write title = \"...\""},
		{"title of a number", "title = 3\n" + strings.Replace(step("1"), "title = 't'\n", "", 1), "f.toml:1:9: title: is the number 3, must be text\n    write it in quotes"},
		{"unknown key", "editoin = '2'\n" + step("1"), "f.toml:1:1: editoin: is not a key of a method sheet\n    did you mean edition?"},
		{"control character", "about = \"\\u001b[31m\"\n" + step("1"), "f.toml:1:9: about: holds a character that cannot be seen\n    take out control characters"},

		// formulas: each message with line and column inside the text
		{"parser", step("x + * 2"), "f.toml:19:16: c.step.y.formula: has something out of place: Operator(\"*\")\n    look for a missing sign or bracket"},
		{"ends early", step("(x + 2"), "f.toml:19:17: c.step.y.formula: ends too early\n    look for a missing sign or bracket"},
		{"empty", step(" "), "f.toml:19:11: c.step.y.formula: is empty"},
		{"unknown symbol", step("x + w"), "f.toml:19:16: c.step.y.formula: w is no symbol of scope c\n    known here: x, y, zone"},
		{"unknown symbol, none near", step("x + length"), "f.toml:19:16: c.step.y.formula: length is no symbol of scope c\n    known here: x, y, zone"},
		{"Greek column", step("x + x*σ_d"), "f.toml:19:18: c.step.y.formula: σ_d is no symbol of scope c\n    known here: x, y, zone"},
		{"sine of radians", step("sin(x)"), "f.toml:19:12: c.step.y.formula: sin is no function of method sheets and no table of this sheet\n    angles are in degrees here: write sind"},
		{"logarithm", step("log(x)"), "f.toml:19:12: c.step.y.formula: log is no function of method sheets and no table of this sheet\n    write ln or log10"},
		{"mistyped function", step("sqr(x)"), "f.toml:19:12: c.step.y.formula: sqr is no function of method sheets and no table of this sheet\n    did you mean sqrt?"},
		{"number of arguments", step("min(x)"), "f.toml:19:12: c.step.y.formula: min takes at least 2 values, here is 1"},
		{"number of arguments of one", step("abs(x, 2)"), "f.toml:19:12: c.step.y.formula: abs takes one value, here are 2"},
		{"builtin", step("len(x)"), "f.toml:19:12: c.step.y.formula: len is no function of method sheets and no table of this sheet\n    did you mean ln?"},
		{"closure", step("filter([1], # > 0)"), "f.toml:19:12: c.step.y.formula: filter is no function of method sheets and no table of this sheet\n    known: abs, acosd, asind, atand, cbrt, ceil, clamp, cosd, exp, floor, ln, log10, max, min, round, sind, sqrt, tand"},
		{"member", step("x.y"), "f.toml:19:13: c.step.y.formula: . is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"method call", step("zone.trim()"), "f.toml:19:16: c.step.y.formula: . is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"index", step("x[1]"), "f.toml:19:13: c.step.y.formula: [ ] after a value is not allowed\n    a table is read as NAME(value)"},
		{"slice", step("x[1:2]"), "f.toml:19:13: c.step.y.formula: [ ] after a value is not allowed\n    a table is read as NAME(value)"},
		{"variable", step("let a = 1; a"), "f.toml:19:12: c.step.y.formula: let is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"sequence", step("x; x"), "f.toml:19:13: c.step.y.formula: ; is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"pipe", step("x | abs()"), "f.toml:19:14: c.step.y.formula: | is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"range", step("1..3"), "f.toml:19:13: c.step.y.formula: .. is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"map", step("{a: 1}"), "f.toml:19:12: c.step.y.formula: { is not allowed\n    a formula may use + - * / **, comparisons, and, or, not, in, ? : and the functions of method sheets"},
		{"caret", step("x^2"), "f.toml:19:13: c.step.y.formula: ^ is not allowed\n    write a power as **"},
		{"equals", step("x = 2 ? 1 : 2"), "f.toml:19:14: c.step.y.formula: = is not allowed\n    write a comparison as =="},
		{"comment", step("x // 2"), "f.toml:19:14: c.step.y.formula: // is not allowed\n    remarks belong in note; division is one /"},
		{"hexadecimal", step("0x10"), "f.toml:19:12: c.step.y.formula: 0x10 is not a number as people write it\n    write 1000 or 1e-6"},
		{"too large a number", step("1e999"), "f.toml:19:12: c.step.y.formula: 1e999 is not a number that can be reckoned with\n    write 1000 or 1e-6"},
		{"true", step("true"), "f.toml:19:12: c.step.y.formula: true is not allowed"},
		{"nil", step("nil"), "f.toml:19:12: c.step.y.formula: nil is not allowed"},
		{"plus before a value", step("+x"), "f.toml:19:12: c.step.y.formula: + before a value is not allowed\n    leave it out"},
		{"dollar", step("$env"), "f.toml:19:12: c.step.y.formula: $env is not a symbol"},
		{"list", step("[x]"), "f.toml:19:12: c.step.y.formula: a list in [ ] may hold words only\n    write category in [\"A\", \"B\"]"},
		{"list outside in", step("[\"a\"]"), "f.toml:19:12: c.step.y.formula: a list of words may stand only after in"},
		{"length", step(strings.Repeat("1+", 1000) + "1"), "f.toml:19:12: c.step.y.formula: has 2001 characters, may have 2000\n    part it into several steps"},
		{"parts", step(strings.Repeat("1+", 300) + "1"), "f.toml:19:12: c.step.y.formula: is made of more than 400 parts\n    part it into several steps"},
		{"depth", step(strings.Repeat("-(", 50) + "1" + strings.Repeat(")", 50)), "f.toml:19:12: c.step.y.formula: is nested more than 40 deep\n    part it into several steps"},
		{"hidden character in a word", step(`zone == "a\u202eb" ? 1 : 2`), "f.toml:19:20: c.step.y.formula: holds a character that cannot be seen\n    take out control characters"},

		// kinds
		{"sum of words", step("zone + \"a\""), "f.toml:19:12: c.step.y.formula: zone is a word, here must stand a number"},
		{"condition as result", step("x > 2"), "f.toml:19:12: c.step.y.formula: is a condition, must give a number or a word\n    write condition ? one : other"},
		{"word that cannot be", step("zone == \"botom\" ? 1 : 2"), "f.toml:19:20: c.step.y.formula: zone is never \"botom\"\n    did you mean bottom?"},
		{"word in list that cannot be", step("zone in [\"side\", \"deck\"] ? 1 : 2"), "f.toml:19:29: c.step.y.formula: zone is never \"deck\"\n    known here: bottom, side"},
		{"branches of two kinds", step("x > 2 ? 1 : \"a\""), "f.toml:19:24: c.step.y.formula: a is a word, here must stand a number"},
		{"number as condition", step("x ? 1 : 2"), "f.toml:19:12: c.step.y.formula: x is a number, here must stand a condition"},
		{"not without brackets", step("not x > 2 ? 1 : 2"), "f.toml:19:16: c.step.y.formula: x is a number, here must stand a condition\n    put what not denies in brackets: not (a > b)"},
		{"order of words", step("zone < \"side\" ? 1 : 2"), "f.toml:19:12: c.step.y.formula: zone is a word and cannot be compared so"},
		{"in a number", step("x in zone ? 1 : 2"), "f.toml:19:14: c.step.y.formula: after in must stand a list of words\n    write category in [\"A\", \"B\"]"},
		{"open quote", step("1\nwhen = x"), "f.toml:19:13: is no TOML: strings cannot contain newlines"},
		{"when is no condition", step("1") + "when = 'x'\n", "f.toml:22:9: c.step.y.when: x is a number, here must stand a condition"},
		{"range is no condition", step("1") + "range = 'x'\n", "f.toml:22:10: c.step.y.range: x is a number, here must stand a condition"},

		// units
		{"unit of the result", step("max(x, 3)"), "f.toml:19:12: c.step.y.formula: gives mm, the unit of y is \"\"\n    turn it into the unit of the step"},
		{"two units in a sum", strings.Replace(step("1"), "[[c.step]]", "[[c.input]]\nsymbol='m'\nname='mass'\nunit='kg'\nfrom='boat.mass_kg'\n[[c.step]]", 1) + "when = 'x > m'\n", "f.toml:27:11: c.step.y.when: x in mm and m in kg stand together\n    turn one into the unit of the other"},
		{"unit of the record name", strings.Replace(step("1"), `unit = "mm"`, `unit = "m"`, 1), "f.toml:7:8: c.input.x.unit: is \"m\", but panel.x_mm is in mm\n    write unit = \"mm\""},
		{"unit spelt another way", step("1") + further("p", "formula='1'") + "[[c.step]]\nsymbol='q'\nname='q'\nunit='kN/m2'\nformula='1'\nclause='1'\nbasis='read'\n", "f.toml:32:6: c.step.q.unit: \"kN/m2\" is not how the unit is written here\n    write unit = \"kN/m²\""},

		// inputs and steps
		{"no basis", strings.Replace(step("1"), "basis = 'read'\n", "", 1), "f.toml:15:5: c.step.y.basis: is missing\n    one of read, derived, yard, practice, recalled"},
		{"unknown basis", strings.Replace(step("1"), "'read'", "'guess'", 1), "f.toml:21:9: c.step.y.basis: \"guess\" is no basis\n    one of read, derived, yard, practice, recalled"},
		{"no clause", strings.Replace(step("1"), "clause = '1'\n", "", 1), "f.toml:15:5: c.step.y.clause: is missing\n    name clause, table or page of the work"},
		{"no formula", strings.Replace(step("1"), "formula = '1'\n", "", 1), "f.toml:15:5: c.step.y.formula: is missing\n    write formula = \"...\""},
		{"no unit", strings.Replace(step("1"), "unit = ''\n", "", 1), "f.toml:15:5: c.step.y.unit: is missing\n    write unit = \"\" for a number without unit"},
		{"no symbol", strings.Replace(step("1"), "symbol = 'y'\n", "", 1), "f.toml:15:5: c.step.1.symbol: is missing\n    write the symbol of the source, e.g. symbol = \"k_2\""},
		{"symbol of a function", step("1") + further("max", "formula='1'"), "f.toml:23:10: c.step.max.symbol: max is the name of a function\n    choose another symbol"},
		{"symbol π", step("1") + further("pi", "formula='1'"), "f.toml:23:10: c.step.pi.symbol: pi is the number π\n    choose another symbol"},
		{"symbol of the language", step("1") + further("and", "formula='1'"), "f.toml:23:10: c.step.and.symbol: and is a word of the formula language\n    choose another symbol"},
		{"no symbol at all", step("1") + further("a<b>", "formula='1'"), "f.toml:23:10: c.step.2.symbol: \"a<b>\" cannot be a symbol\n    a letter, then letters, digits and single _, 40 bytes at most"},
		{"step collides with input", step("1") + further("x", "formula='1'"), "f.toml:23:10: c.step.x.symbol: x is declared already, on line 4\n    choose another symbol"},
		{"never reached", step("1") + further("y", "formula='2'"), "f.toml:22:5: c.step.y: is never reached: the step for it on line 15 has no condition\n    give the earlier step a when"},
		{"two units of one symbol", step("1") + "when = 'x > 1'\n[[c.step]]\nsymbol = 'y'\nunit = 'mm'\nformula = '2'\nclause = '1'\nbasis = 'read'\n", "f.toml:25:8: c.step.y.unit: is \"mm\", the first step for y has \"\"\n    all steps for one symbol have one unit"},
		{"two kinds of one symbol", step("1") + "when = 'x > 1'\n" + further("y", "formula='zone'"), "f.toml:29:10: c.step.y.formula: gives a word, the first step for y gives a number"},
		{"unknown key of a step", step("1") + "wen = 'x > 1'\n", "f.toml:22:1: c.step.y.wen: is not a key of a method sheet\n    did you mean when?"},
		{"no name of a record value", strings.Replace(step("1"), "panel.zone", "zone", 1), "f.toml:13:8: c.input.zone.from: \"zone\" is no name of a record value\n    write it as kind.key, e.g. \"boat.loaded_mass_kg\""},
		{"range turned round", strings.Replace(step("1"), "unit = \"mm\"\n", "unit = \"mm\"\nleast = 5\nmost = 3\n", 1), "f.toml:8:9: c.input.x.least: is 5, above most, which is 3"},
		{"not a number", strings.Replace(step("1"), "unit = \"mm\"\n", "unit = \"mm\"\nleast = nan\n", 1), "f.toml:8:9: c.input.x.least: is the number NaN, must be a finite number"},
		{"words with a unit", strings.Replace(step("1"), "words =", "unit = 'm'\nwords =", 1), "f.toml:13:9: c.input.zone.words: stand beside a unit or a range\n    an input is either a word or a number"},

		// order
		{"itself", step("y + 1"), "f.toml:15:5: c.step.y: needs itself: y needs y\n    one of these must be reckoned without the others"},
		{"ring", step("a + 1") + further("a", "formula='b'") + further("b", "formula='1'\nrange='y > 0'"), "f.toml:15:5: c.step.y: needs itself: y needs a needs b needs y\n    one of these must be reckoned without the others"},
		{"ring told once", step("a") + further("a", "formula='b'") + further("b", "formula='a'"), "f.toml:22:5: c.step.a: needs itself: a needs b needs a\n    one of these must be reckoned without the others"},

		// scopes
		{"no scope above", step("1") + "[p]\nabove = 'd'\n[[p.input]]\nsymbol='q'\nname='q'\nunit=''\nfrom='panel.q'\n", "f.toml:23:9: p.above: d is no scope of this sheet\n    known here: c, p"},
		{"scopes in a ring", step("1") + "[c]\nabove = 'c'\n", "f.toml:23:9: c.above: the scopes stand above each other in a ring: c, c"},
		{"symbol of a scope below", step("q") + "[p]\nabove = 'c'\n[[p.input]]\nsymbol='q'\nname='q'\nunit=''\nfrom='panel.q'\n", "f.toml:19:12: c.step.y.formula: q is no symbol of scope c\n    it stands in scope p, which c does not see; above = \"p\" would show it"},
		{"symbol of the scope above", step("1") + "[p]\nabove = 'c'\n[[p.input]]\nsymbol='y'\nname='q'\nunit=''\nfrom='panel.q'\n", "f.toml:25:8: p.input.y.symbol: y is declared already, on line 15\n    choose another symbol"},
		{"empty scope", step("1") + "[p]\n", "f.toml:22:2: p: has neither input nor step\n    write [[p.step]]"},
		{"unknown answer", step("1") + "[c.gives]\nneeded = ['z']\n", "f.toml:23:10: c.gives.needed: z is no symbol of scope c\n    known here: x, y, zone"},

		// tables
		{"rows without values", step("1") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\ny=[1]\n", "f.toml:22:8: table.K.y: has 1 values for 2 rows"},
		{"rows that fall", step("1") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[2,1]\ny=[1,2]\n", "f.toml:26:3: table.K.x: does not rise: 1 after 2\n    write the rows in rising order"},
		{"x and words", step("1") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\nwords=['a','b']\ny=[1,2,3,4]\n", "f.toml:22:8: table.K: must have either x or words"},
		{"table without source", step("1") + "[table.K]\ntitle='t'\nx=[1,2]\ny=[1,2]\n", "f.toml:22:8: table.K.basis: is missing\n    one of read, derived, yard, practice, recalled\nf.toml:22:8: table.K.clause: is missing\n    name clause, table or page of the work"},
		{"row that is not there", step("K(\"c\")") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nwords=['a','b']\ny=[1,2]\n", "f.toml:19:14: c.step.y.formula: table K has no row \"c\"\n    known here: a, b"},
		{"table of numbers read by word", step("K(zone)") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\ny=[1,2]\n", "f.toml:19:14: c.step.y.formula: zone is a word, here must stand a number"},
		{"table read with two", step("K(x, 1)") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\ny=[1,2]\n", "f.toml:19:12: c.step.y.formula: table K is read with one value, here are 2"},
		{"table without brackets", step("K*2") + "[table.K]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\ny=[1,2]\n", "f.toml:19:12: c.step.y.formula: K is no symbol of scope c\n    a function or table is read as K(value)"},
		{"table named like a function", step("1") + "[table.max]\ntitle='t'\nclause='1'\nbasis='read'\nx=[1,2]\ny=[1,2]\n", "f.toml:22:8: table.max: max is the name of a function\n    choose another name"},
	}
	for _, r := range rows {
		s, err := Load("f.toml", []byte(r.text))
		var faults finding.Faults
		if s != nil || !errors.As(err, &faults) {
			t.Errorf("%s: loaded, error %v; want %s", r.name, err, r.want)
			continue
		}
		if got := err.Error(); got != r.want {
			t.Errorf("%s:\n got %s\nwant %s", r.name, got, r.want)
		}
	}
}

func TestFaultsAllAtOnce(t *testing.T) {
	text := step("x + w") + further("z", "formula='sin(x)'\nbass='read'") + further("u", "formula='zone + 1'")
	_, err := Load("f.toml", []byte(text))
	var faults finding.Faults
	if !errors.As(err, &faults) || len(faults) != 4 {
		t.Fatalf("want four faults, got %v", err)
	}
	for i := 1; i < len(faults); i++ {
		if faults[i].Place.Before(faults[i-1].Place) {
			t.Errorf("fault %d stands before fault %d: %v", i, i-1, err)
		}
	}
}

func TestPlacesInOtherForms(t *testing.T) {
	rows := []struct{ name, text, want string }{
		{"byte order mark and CRLF", "\ufeff" + strings.ReplaceAll(step("x + w"), "\n", "\r\n"), "f.toml:19:16: "},
		{"multi-line text names its start", strings.Replace(step("1"), "formula = '1'", "formula = '''\nx +\nw'''", 1), "f.toml:19:11: "},
		{"escapes name the start", strings.Replace(step("1"), "formula = '1'", `formula = "x\u0020+ w"`, 1), "f.toml:19:11: "},
		{"inline tables", inputs + "[c]\nstep = [{symbol='y', name='n', unit='', formula='w', clause='1', basis='read'}]\n", "f.toml:16:52: "},
		{"leading spaces", step("   x + w"), "f.toml:19:19: "},
	}
	for _, r := range rows {
		if r.name == "inline tables" { // a table may be opened only once
			r.text = strings.Replace(r.text, "[[c.input]]", "[[d.input]]", -1)
			r.text = strings.Replace(r.text, "[c]\n", "[c]\nabove='d'\n", 1)
			r.want = "f.toml:17:50: "
		}
		_, err := Load("f.toml", []byte(r.text))
		if err == nil || !strings.HasPrefix(err.Error(), r.want) || !strings.Contains(err.Error(), "w is no symbol") {
			t.Errorf("%s: got %v, want it at %s", r.name, err, r.want)
		}
	}
}
