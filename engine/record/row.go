package record

import (
	"math"
	"strconv"

	"hullfile/engine/finding"
)

// mostInRow is how many frames one entry may stand for: more than a boat of 24 m has at 150 mm.
const mostInRow = 160

// inRow makes single frames of entries that stand for a row of equal ones ("from here to there, every 500 mm"), so that
// everything else knows single frames only. A row whose key is a number counts on from it (4, 5, 6); another gets the
// count behind its key (main-1, main-2). Each frame keeps the places of the entry. The trees that go in are not changed.
func (r *reading) inRow(root *node) *node {
	frames := root.kid("frame")
	if frames == nil || frames.shape != branch || !anyRow(frames) {
		return root
	}
	laid := &node{shape: branch, key: frames.key, at: frames.at, implied: frames.implied}
	for i, name := range frames.names {
		if !isRow(frames.kids[i]) {
			r.stand(laid, name, frames.kids[i])
			continue
		}
		for _, one := range r.row(name, frames.kids[i]) {
			r.stand(laid, one.name, one.node)
		}
	}
	out := copyOf(root, root)
	out.put("frame", laid)
	return out
}

func isRow(n *node) bool {
	return n.shape == branch && (n.kid("spacing_mm") != nil || n.kid("to_x_m") != nil)
}

func anyRow(frames *node) bool {
	for _, kid := range frames.kids {
		if isRow(kid) {
			return true
		}
	}
	return false
}

// stand puts a frame into its place; two of one key are told, at the later one.
func (r *reading) stand(laid *node, name string, n *node) {
	if old := laid.kid(name); old != nil {
		r.faults.add(n.key, "frame."+quoteKey(name), "give the row a key that leaves the other frame its own",
			"frame %s comes out of a row of frames and stands on record by itself too, %s", shown(name), written(old.key))
		return
	}
	laid.put(name, n)
}

type called struct {
	name string
	node *node
}

// row gives the frames that one entry stands for.
func (r *reading) row(name string, n *node) []called {
	aft, fore, gap := sizeOf(n.kid("x_m")), sizeOf(n.kid("to_x_m")), sizeOf(n.kid("spacing_mm"))
	where := "frame." + quoteKey(name)
	switch {
	case n.kid("spacing_mm") == nil:
		r.faults.add(n.kid("to_x_m").key, where+".to_x_m", "add spacing_mm: distance from one frame to the next", "a row of frames without its spacing")
		return nil
	case n.kid("to_x_m") == nil:
		r.faults.add(n.kid("spacing_mm").key, where+".spacing_mm", "add to_x_m: position of the last frame of the row", "a row of frames without its end")
		return nil
	case n.kid("x_m") == nil || !(gap > 0):
		return []called{{name, single(n, aft, n.key)}} // told where single values are looked at
	case !(fore > aft):
		r.faults.add(n.kid("to_x_m").at, where+".to_x_m", "write the aft end of the row as x_m, its fore end as to_x_m", "the row ends at %s m, no further forward than it begins, %s m",
			strconv.FormatFloat(fore, 'g', -1, 64), strconv.FormatFloat(aft, 'g', -1, 64))
		return nil
	}
	count := int(math.Floor(float64((fore-aft)*1000)/gap+1e-6)) + 1
	if count > mostInRow {
		at := n.kid("spacing_mm")
		r.faults.add(at.at, where+".spacing_mm", "look at the unit: frames of a boat stand some hundred millimetres apart", "%d frames in one row, most is %d", count, mostInRow)
		return nil
	}
	out := make([]called, count)
	for i := range out {
		out[i] = called{inTurn(name, i), single(n, math.Round((aft+float64(float64(i)*gap)/1000)*1e6)/1e6, n.key)}
	}
	return out
}

// inTurn is the key of one frame of a row.
func inTurn(key string, i int) string {
	if first, err := strconv.Atoi(key); err == nil && first >= 0 && strconv.Itoa(first) == key {
		return strconv.Itoa(first + i)
	}
	return key + "-" + strconv.Itoa(i+1)
}

// single is a frame of the row, at its own place along the hull.
func single(n *node, x float64, key finding.Place) *node {
	out := &node{shape: branch, key: key, at: n.at, ordinal: n.ordinal, implied: n.implied, absent: n.absent}
	for i, name := range n.names {
		switch name {
		case "spacing_mm", "to_x_m":
		case "x_m":
			old := n.kids[i]
			out.put(name, &node{shape: leaf, value: x, key: old.key, at: old.at})
		default:
			out.put(name, n.kids[i])
		}
	}
	return out
}

// sizeOf is a checked number, zero where none is written.
func sizeOf(n *node) float64 {
	if n == nil {
		return 0
	}
	v, _ := n.value.(float64)
	return v
}
