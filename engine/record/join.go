package record

// join puts the rows of a CSV table into the record that it stands beside. An entry written in both is a fault: which
// of the two is right nobody can know.
func (c *checker) join(into, from *node, way *trail) {
	each := way.to("")
	for i, name := range from.names {
		kid, to := from.kids[i], each.turned(name)
		old := into.kid(name)
		switch {
		case old == nil:
			into.put(name, kid)
		case old.shape == broken || kid.shape == broken:
		case old.absent:
			c.fs.add(kid.key, to.String(), "take these rows out, or the line absent = true", "rows belong to an entry that is taken away at %s", old.key)
		case holds(way) && !kid.implied && !old.implied:
			c.fs.add(kid.key, to.String(), "keep one of the two, or give one another key", "the entry is written twice; first %s", written(old.key))
		case old.shape == branch && kid.shape == branch:
			old.implied = old.implied && kid.implied
			c.join(old, kid, to)
		}
	}
}

// holds reports whether the children of a table are entries: every second step of the way to a row is a key.
func holds(way *trail) bool {
	steps := 0
	for ; way != nil; way = way.up {
		steps++
	}
	return steps%2 == 1
}
