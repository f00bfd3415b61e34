package beam

// press puts the pressure on one bay. Each field of plating between neighbouring lines and two stations hands its load
// to its four edges by the lines that halve its corners: the short edges take triangles, the long ones what is left.
// A field that narrows is taken with its mean width, so that the whole load is its area times the pressure.
func (g *grid) press(bay int) {
	length := g.x[bay+1] - g.x[bay]
	low := 0
	for j := 1; j <= g.last(); j++ {
		if !g.runs(j, bay) {
			continue
		}
		from, to := g.mean(bay, low), g.mean(bay, j)
		width := to - from
		g.total += float64(g.Pressure * length * width)
		along := shares(g.Pressure, length, width)
		across := shares(g.Pressure, width, length)
		g.onLine(low, bay, along, length)
		g.onLine(j, bay, along, length)
		g.onStation(bay, low, j, across, width)
		g.onStation(bay+1, low, j, across, width)
		low = j
	}
}

// mean is the offset of a line in the middle of a bay.
func (g *grid) mean(bay, line int) float64 {
	return (g.offset(bay, line) + g.offset(bay+1, line)) / 2
}

// share is a load over a part of an edge: from and to as parts of its length, and its values there, kN/m.
type share struct{ from, to, first, last float64 }

// shares gives what an edge of one length takes of a field whose other side has another length, under a pressure.
func shares(pressure, edge, other float64) []share {
	rise := min(edge, other) / 2
	top, part := pressure*rise, rise/edge
	if edge <= other {
		return []share{{0, 0.5, 0, top}, {0.5, 1, top, 0}}
	}
	return []share{{0, part, 0, top}, {part, 1 - part, top, top}, {1 - part, 1, top, 0}}
}

// sum of shares on an edge, kN.
func sum(all []share, edge float64) float64 {
	total := 0.0
	for _, s := range all {
		total += float64((s.first + s.last) / 2 * (s.to - s.from) * edge)
	}
	return total
}

// onLine gives shares to the member of a line in a bay; a line that is a support takes them at once.
func (g *grid) onLine(line, bay int, all []share, edge float64) {
	for k, at := range g.bays[line] {
		if at != bay {
			continue
		}
		m := &g.model.Members[g.lines[line][k]]
		length := g.model.length(*m) // longer than the bay where the chine slants: the sum stays
		for _, s := range all {
			scale := edge / length
			m.Loads = append(m.Loads, Varying(s.from*length, s.to*length, s.first*scale, s.last*scale))
		}
		return
	}
	g.direct += sum(all, edge)
}

// onStation gives shares to the frame of a station between two lines; a bulkhead takes them at once. The edge on the frame may
// be longer or shorter than the mean width: the sum stays.
func (g *grid) onStation(station, low, high int, all []share, width float64) {
	if station == 0 || station == len(g.x)-1 {
		g.direct += sum(all, width)
		return
	}
	from, to := g.offset(station, low), g.offset(station, high)
	edge := to - from
	for _, s := range all {
		g.spread(station, from+float64(s.from*edge), from+float64(s.to*edge), s.first*width/edge, s.last*width/edge)
	}
}

// spread puts an evenly running load on the members of a frame that lie under it.
func (g *grid) spread(station int, from, to, first, last float64) {
	slope := (last - first) / (to - from)
	for _, k := range g.frames[station-1] {
		m := &g.model.Members[k]
		low, high := g.model.Nodes[m.From].Y, g.model.Nodes[m.To].Y
		a, b := max(low, from), min(high, to)
		if b-a <= 1e-9 {
			continue
		}
		m.Loads = append(m.Loads, Varying(a-low, b-low, first+float64(slope*(a-from)), first+float64(slope*(b-from))))
	}
}
