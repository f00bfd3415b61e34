package compare

import (
	"cmp"
	"slices"
)

// name tells checks and findings of one kind and subject apart.
type name struct{ kind, rule, subject string }

// standings tells which checks have another outcome, came or went. Where one rule asks several things of one subject, the
// outcomes are held in their order.
func standings(old, new *Side) []Standing {
	was, is := checksOf(old), checksOf(new)
	var all []Standing
	for _, c := range firsts(new.checks, checkName) {
		before, now := was[c], is[c]
		for i := range max(len(before), len(now)) {
			s := Standing{Rule: c.rule, Subject: c.subject}
			if i < len(before) {
				s.Old, s.Says = before[i].Standing, before[i].Says
			}
			if i < len(now) {
				s.New, s.Says = now[i].Standing, now[i].Says
			}
			if s.Old != s.New {
				all = append(all, s)
			}
		}
	}
	for _, c := range firsts(old.checks, checkName) {
		if len(is[c]) > 0 {
			continue
		}
		for _, before := range was[c] {
			all = append(all, Standing{Rule: c.rule, Subject: c.subject, Old: before.Standing, Says: before.Says})
		}
	}
	slices.SortStableFunc(all, func(a, b Standing) int { return cmp.Compare(weight(a.New), weight(b.New)) })
	return all
}

// weight puts what is short before what is not shown, and both before what is met.
func weight(standing string) int {
	switch standing {
	case "short":
		return 0
	case "not shown":
		return 1
	case "met":
		return 2
	}
	return 3
}

func checkName(c check) name { return name{"", c.Rule, c.Subject} }
func toldName(t told) name   { return name{t.Kind, t.Rule, t.Subject} }

func checksOf(s *Side) map[name][]check {
	out := map[name][]check{}
	for _, c := range s.checks {
		out[checkName(c)] = append(out[checkName(c)], c)
	}
	return out
}

// firsts lists the names in the order in which they first stand.
func firsts[T any](all []T, of func(T) name) []name {
	var out []name
	seen := map[name]bool{}
	for _, one := range all {
		if n := of(one); !seen[n] {
			seen[n] = true
			out = append(out, n)
		}
	}
	return out
}

// findings tells which findings appeared, went, or read otherwise.
func findings(old, new *Side) []Told {
	gather := func(all []told) map[name][]string {
		out := map[name][]string{}
		for _, t := range all {
			out[toldName(t)] = append(out[toldName(t)], t.Says)
		}
		return out
	}
	was, is := gather(old.findings), gather(new.findings)
	var all []Told
	for _, n := range firsts(append(slices.Clone(new.findings), old.findings...), toldName) {
		gone, come := apart(was[n], is[n])
		for i := range max(len(gone), len(come)) {
			t := Told{How: Changed, Kind: n.kind, Rule: n.rule, Subject: n.subject}
			if i < len(gone) {
				t.Old = gone[i]
			} else {
				t.How = Added
			}
			if i < len(come) {
				t.New = come[i]
			} else {
				t.How = Gone
			}
			all = append(all, t)
		}
	}
	return all
}

// apart gives what only one of two lists holds.
func apart(a, b []string) (onlyA, onlyB []string) {
	left := slices.Clone(b)
	for _, text := range a {
		if i := slices.Index(left, text); i >= 0 {
			left = slices.Delete(left, i, i+1)
		} else {
			onlyA = append(onlyA, text)
		}
	}
	return onlyA, left
}

// documents tells which papers came, went, or are other files than before.
func documents(old, new *Side) []Paper {
	was := map[string]paper{}
	for _, p := range old.papers {
		was[p.Key] = p
	}
	var all []Paper
	is := map[string]bool{}
	for _, p := range new.papers {
		is[p.Key] = true
		before, there := was[p.Key]
		one := Paper{How: Changed, Key: p.Key, Title: p.Title}
		switch {
		case !there:
			one.How, one.Says = Added, present(p)
		case before.Present != p.Present:
			one.Says = "before: " + present(before) + "; now: " + present(p)
		case before.Hash != p.Hash:
			one.Says = "it is another file than before"
		case before.Title != p.Title || before.Number != p.Number || before.Date != p.Date:
			one.Says = "the file is the same; title, number or day on record are others"
		default:
			continue
		}
		all = append(all, one)
	}
	for _, p := range old.papers {
		if !is[p.Key] {
			all = append(all, Paper{How: Gone, Key: p.Key, Title: p.Title, Says: "it is on record no more"})
		}
	}
	return all
}

func present(p paper) string {
	if p.Present {
		return "it is there"
	}
	return "it is not there"
}
