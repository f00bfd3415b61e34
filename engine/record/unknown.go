package record

import (
	"strings"
)

// unknown tells of a key that nobody reads, and which one was most likely meant.
func (c *checker) unknown(t *table, name string, n *node, way *trail) {
	if c.fs.full(n.key.File) {
		c.spoil(n, n.key, way, "", "unknown key")
		return
	}
	says, hint := c.meantKey(t, name)
	if n.shape == branch && says == "unknown key" {
		says = "unknown table"
	}
	c.spoil(n, n.key, way, hint, "%s", says)
}

// meantKey says why a key is unknown and what to write instead, for a key of TOML and for the head of a CSV column.
func (c *checker) meantKey(t *table, name string) (says, hint string) {
	for _, f := range t.fields {
		if strings.EqualFold(f.key, name) {
			return "wrong letter case", "write " + f.key
		}
	}
	if f := otherUnit(t, name); f != nil {
		return "unknown key; this value is kept in " + f.unit.Sign, "write " + f.key + ", with the value in " + f.unit.Sign
	}
	if where := c.homes(name); len(where) > 0 {
		return "unknown key here", name + " belongs in " + said(where, "or")
	}
	return "unknown key", meant(name, t.keys())
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

// homes lists the headings of the tables of this record that do have the key.
func (c *checker) homes(name string) []string {
	root := hullTable
	if c.what == "yard" {
		root = builderTable
	}
	return homesIn(root, name, "")
}

func homesIn(t *table, name, heading string) []string {
	var where []string
	if t.byKey[name] != nil {
		where = append(where, bracket(heading))
	}
	for _, f := range t.fields {
		switch f.kind {
		case plain:
			where = append(where, homesIn(f.sub, name, heading+"."+f.key)...)
		case entries:
			where = append(where, homesIn(f.sub, name, heading+"."+f.key+".KEY")...)
		}
	}
	return where
}

func bracket(heading string) string {
	if heading == "" {
		return "the top of the record, before the first heading"
	}
	return "[" + heading[1:] + "]"
}
