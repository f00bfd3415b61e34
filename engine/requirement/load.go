package requirement

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// vocabulary gathers words and facts of the files for evidence.
func (l *loader) vocabulary(files []record.EvidenceFile) {
	var inputs []*method.Input
	for i := range files {
		f := &files[i]
		l.addWords(f.Evidence)
		l.silent = append(l.silent, f.Silent.V...)
		for j := range f.Facts {
			fact := &f.Facts[j]
			if !isKey(fact.From.V) {
				l.fault(fact.From.At, "fact."+fact.ID+".from", fmt.Sprintf("%q is no record key", fact.From.V), "write it as table.key")
			}
			l.names[fact.From.V] = fact
			inputs = append(inputs, &method.Input{Symbol: fact.ID, Name: fact.Name.V, Unit: fact.Unit.V, From: fact.From.V, Words: fact.Words.V})
		}
	}
	facts, err := method.NewVocabulary(inputs)
	if err != nil {
		l.fault(finding.Place{File: "evidence"}, "fact", err.Error(), "")
		facts, _ = method.NewVocabulary(nil)
	}
	l.facts = facts
}

// addWords takes words in; one that stands for nothing, or for what no record knows, is a fault.
func (l *loader) addWords(all []record.Evidence) {
	for i := range all {
		w := &all[i]
		key := "evidence." + w.ID
		if before := l.words[w.ID]; before != nil {
			l.fault(w.At, key, "the word is taken; first "+before.At.String(), "choose another word")
			continue
		}
		if len(w.Rules.V)+len(w.Kinds.V)+len(w.Keys.V)+len(w.Tables.V) == 0 {
			l.fault(w.At, key, "nothing is said that could show it", "write rules, kinds, keys or tables")
		}
		for _, k := range w.Keys.V {
			if !isKey(k) {
				l.fault(w.Keys.At, key+".keys", fmt.Sprintf("%q is no record key", k), "write it as table.key, e.g. plate.seen_from")
			}
		}
		for _, t := range w.Tables.V {
			if _, _, ok := (&record.Hull{}).Entries(t); !ok {
				l.fault(w.Tables.At, key+".tables", fmt.Sprintf("%q is no table of the record of a hull", t), "write its heading, e.g. weld or trial.turning")
			}
		}
		l.words[w.ID] = w
	}
}

// isKey reports whether a record key exists: of the hull, of the yard, or made from one of them.
func isKey(key string) bool {
	if rest, ok := strings.CutPrefix(key, "day."); ok {
		key = rest
	}
	if law, ok := strings.CutPrefix(key, "law."); ok {
		return slices.Contains(laws, law)
	}
	if rest, ok := strings.CutPrefix(key, "yard."); ok {
		_, ok := record.Lookup(&record.Builder{}, rest)
		return ok
	}
	return record.Has(key)
}

// list compiles one list.
func (l *loader) list(of *record.List) {
	out := &list{List: of}
	out.when = l.condition("when", of.When, of.Else, true)
	if out.scope = l.condition("scope", of.Scope, record.Val[string]{}, false); of.Scope.Set != of.Beyond.Set {
		l.fault(finding.Place{File: of.Path, Line: 1, Col: 1}, "scope", "scope and beyond stand together", "write both, or neither")
	}
	if len(of.Items) == 0 {
		l.fault(finding.Place{File: of.Path, Line: 1, Col: 1}, "item", "the list has no item", `write [item."1"]`)
	}
	for i := range of.Items {
		it := &of.Items[i]
		key := "item." + it.ID
		out.items = append(out.items, l.condition(key+".when", it.When, it.Else, true))
		l.evidenceOf(it, key)
	}
	for i := range of.Routes {
		r := &of.Routes[i]
		out.routes = append(out.routes, l.condition("route."+r.ID+".when", r.When, record.Val[string]{}, false))
	}
	l.lists = append(l.lists, out)
}

// evidenceOf checks what an item asks for. An item that nothing can answer, and a statement that could stand in for a
// result or a document, are faults.
func (l *loader) evidenceOf(it *record.Requirement, key string) {
	words := l.Words()
	for _, v := range []record.Val[[]string]{it.Needed, it.Either, it.Supports} {
		for _, w := range v.V {
			if l.words[w] == nil {
				hint := "the words stand in content/evidence; a new one is a group [evidence." + w + "] there"
				if near, ok := finding.Nearest(w, words); ok {
					hint = "did you mean " + near + "?"
				}
				l.fault(v.At, key, fmt.Sprintf("%q is not a word for evidence that is known here", w), hint)
			}
		}
	}
	if len(it.Needed.V)+len(it.Either.V) == 0 {
		l.fault(it.At, key, "no evidence is named that would answer it", "write needed or either")
	}
	statements := 0
	for _, w := range it.Either.V {
		if e := l.words[w]; e != nil && e.How.V == "statement" {
			statements++
		}
	}
	if statements > 0 && statements < len(it.Either.V) {
		l.fault(it.Either.At, key+".either", "a statement may not stand in for a result or a document", "put it under needed or supports")
	}
}

// condition compiles one condition; nil where none is written.
func (l *loader) condition(key string, when, otherwise record.Val[string], says bool) *method.Condition {
	if !when.Set {
		if otherwise.Set {
			l.fault(otherwise.At, key, "otherwise stands without a condition", "write when, or take it out")
		}
		return nil
	}
	if says && !otherwise.Set {
		l.fault(when.At, key, "a condition needs the reason why it does not apply otherwise", `write otherwise = "..."`)
	}
	c, wrong := l.facts.Read(when.V)
	if wrong != nil {
		at := when.At
		at.Col += 1 + wrong.At
		l.fault(at, key, wrong.Says, wrong.Hint)
	}
	return c
}
