package record

import (
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// refers checks that a text names something that the whole yard knows: an alloy, a method sheet, a person, an
// instrument, a design. What only a hull knows is looked at when its records are laid over each other.
func (c *checker) refers(f *field, s string, n *node, way *trail) {
	known, checked := c.names[f.ref]
	if f.ref == "" || !checked || slices.Contains(known, s) {
		return
	}
	hint := ""
	if !c.fs.full(n.at.File) {
		hint = c.refHint(f.ref, s, known)
	}
	c.spoil(n, n.at, way, hint, "%s is not %s", quoted(s), article(f.ref))
}

func (c *checker) refHint(ref, s string, known []string) string {
	tempers := withTemper(s, known)
	switch {
	case ref == "alloy" && len(tempers) > 0:
		return "write the temper too, as the certificate has it: " + strings.Join(tempers, ", ")
	case len(known) > 0:
		return meant(s, known)
	case ref == "design":
		return "put the design into designs/" + shown(s) + "/design.toml"
	case c.lone:
		return "people and instruments stand in yard.toml; write one, and put this record into hulls/ beside it"
	case ref == "person" || ref == "instrument" || ref == "inspector":
		return "add [" + ref + "." + quoteKey(s) + "] to yard.toml"
	}
	return ""
}

// withTemper lists the tempers in which an alloy is known, where only its number was written.
func withTemper(alloy string, known []string) []string {
	var all []string
	for _, k := range known {
		if strings.HasPrefix(k, alloy+"-") {
			all = append(all, k)
		}
	}
	return all
}

// article says what a text should have named.
func article(ref string) string {
	switch ref {
	case "list":
		return "a list of requirements that is known here"
	case "evidence":
		return "a word for evidence that is known here"
	case "alloy":
		return "an alloy that is known here"
	case "sheet":
		return "a method sheet that is known here"
	case "instrument", "inspector", "inspection", "imperfection":
		return "an " + ref + " on record"
	case "procedure_test", "leak_test":
		return "a " + strings.ReplaceAll(ref, "_", " ") + " on record"
	}
	return "a " + ref + " on record"
}

// namesIn lists the keys of a keyed table with their places left out; nil tables have none.
func namesIn(n *node) []string {
	names := []string{}
	if n == nil || n.shape != branch {
		return names
	}
	for i, name := range n.names {
		if !n.kids[i].absent {
			names = append(names, name)
		}
	}
	return names
}

// written gives a place in words for a sentence.
func written(p finding.Place) string { return "written at " + p.String() }
