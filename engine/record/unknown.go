package record

import (
	"strings"
)

// unknown tells of a key that nobody reads, and which one was most likely meant. That one does not count as missing then.
func (c *checker) unknown(t *table, in *node, name string, n *node, way *trail) {
	if c.fs.full(n.key.File) {
		c.spoil(n, n.key, way, "", "unknown key")
		return
	}
	g := c.guess(t, name, n.shape == branch)
	c.spoil(n, n.key, way, g.hint, "%s", g.says)
	if g.f != nil && in.kid(g.f.key) == nil {
		in.put(g.f.key, &node{shape: broken, key: n.key, at: n.at})
	}
}

// guess is what an unknown key was most likely meant to be.
type guess struct {
	says, hint string
	f          *field // nil if nothing is near enough
}

// guess holds an unknown key of TOML against the keys of its table and of the other tables.
func (c *checker) guess(t *table, name string, isTable bool) guess {
	what := "unknown key"
	if isTable {
		what = "unknown table"
	}
	if g, ok := t.spelled(name, what); ok {
		return g
	}
	if where := c.homes(name); len(where) > 0 {
		return guess{says: what + " here", hint: name + " belongs " + said(where, "or")}
	}
	return t.similar(name, what)
}

// spelled finds the key that differs in letter case or in its unit only.
func (t *table) spelled(name, what string) (guess, bool) {
	for _, f := range t.fields {
		if strings.EqualFold(f.key, name) {
			return guess{"wrong letter case", "write " + f.key, f}, true
		}
	}
	if f := otherUnit(t, name); f != nil {
		return guess{what + "; this value is kept in " + f.unit.Sign, "write " + f.key + ", with the value in " + f.unit.Sign, f}, true
	}
	if f := t.otherWord(name); f != nil {
		return guess{what + "; this is called otherwise here", "write " + f.key + ", which is: " + f.doc, f}, true
	}
	return guess{}, false
}

// similar finds the key with the most alike spelling.
func (t *table) similar(name, what string) guess {
	near, _ := nearest(name, t.keys())
	return guess{what, meant(name, t.keys()), t.byKey[near]}
}

// otherUnit finds the field that a key would name but for its unit: thickness, thickness_m or thickness_in for thickness_mm.
func otherUnit(t *table, name string) *field {
	low := strings.ToLower(name)
	stems := []string{low}
	for range 2 {
		if cut := strings.LastIndexByte(low, '_'); cut > 0 {
			low = low[:cut]
			stems = append(stems, low)
		}
	}
	for _, stem := range stems {
		for _, f := range t.fields {
			if f.unit.Suffix != "" && strings.TrimSuffix(f.key, "_"+f.unit.Suffix) == stem {
				return f
			}
		}
	}
	return nil
}

// homes lists the places of this record where the key does belong.
func (c *checker) homes(name string) []string {
	switch c.what {
	case "yard":
		return homesIn(builderTable, name, "")
	case stockDir:
		return homesIn(stockTable, name, "")
	case proceduresDir:
		return homesIn(proceduresTable, name, "")
	}
	return homesIn(hullTable, name, "")
}

func homesIn(t *table, name, heading string) []string {
	var where []string
	for _, f := range t.fields {
		below := heading + "." + f.key
		if f.kind == entries {
			below += ".KEY"
		}
		switch {
		case f.key == name && f.sub != nil:
			where = append(where, "under ["+below[1:]+"]")
		case f.key == name && heading == "":
			where = append(where, "at the top of the record, before the first heading")
		case f.key == name:
			where = append(where, "under ["+heading[1:]+"]")
		}
		if f.sub != nil {
			where = append(where, homesIn(f.sub, name, below)...)
		}
	}
	return where
}
