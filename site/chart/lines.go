package chart

import (
	"math"
	"sort"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
)

// drawnStations is how many stations a picture of the lines draws; of more, evenly many are left out.
const drawnStations = 60

// shape is a hull as the pictures of its lines need it: what can be drawn of it, and the water where it floats.
type shape struct {
	*lines.Hull
	stations  []lines.Station
	afloat    lines.Afloat
	floats    bool
	low, high float64 // least and greatest height, metres
	half      float64 // greatest half breadth
}

// shapeOf takes the stations that are numbers; ok is false where there is nothing that could be drawn.
func shapeOf(r lines.Result) (v shape, ok bool) {
	if r.Hull == nil {
		return v, false
	}
	v = shape{Hull: r.Hull, afloat: r.Afloat, floats: r.HasAfloat && level(r.Afloat)}
	tall, wide := extent{}, extent{}
	for _, s := range r.Hull.Stations {
		if !sane(s) {
			continue
		}
		v.stations = append(v.stations, s)
		for _, p := range s.At {
			tall.take(p.Z)
			wide.take(p.Y)
		}
	}
	sort.SliceStable(v.stations, func(i, j int) bool { return v.stations[i].X < v.stations[j].X })
	n := len(v.stations)
	v.low, v.high, v.half = tall.lo, tall.hi, wide.hi
	return v, n >= 2 && v.stations[n-1].X-v.stations[0].X > 0.01 && v.half > 0.01 && v.high-v.low > 0.01
}

// sane reports whether all coordinates of a station are those of a boat.
func sane(s lines.Station) bool {
	for _, p := range s.At {
		if !near0(p.Y) || !near0(p.Z) {
			return false
		}
	}
	return near0(s.X) && near0(s.Round)
}

// level reports whether the attitude of a boat afloat upright can be drawn.
func level(a lines.Afloat) bool {
	at := a.Rest.Attitude
	return usable(at.Level) && math.Abs(at.Level) <= 1000 && math.Abs(at.Trim) < 1 && math.Abs(at.Heel) < 0.01
}

// shown gives the stations to draw, the first and the last among them.
func (v shape) shown() []lines.Station {
	n := len(v.stations)
	if n <= drawnStations {
		return v.stations
	}
	out := make([]lines.Station, 0, drawnStations)
	for k := range drawnStations {
		out = append(out, v.stations[k*(n-1)/(drawnStations-1)])
	}
	return out
}

func (v shape) aft() float64  { return v.stations[0].X }
func (v shape) fore() float64 { return v.stations[len(v.stations)-1].X }

// water is the height of the water at x.
func (v shape) water(x float64) float64 { return lines.Surface(v.afloat.Rest.Attitude, x) }

// edges are the edges that the hull has, from the keel up.
func (v shape) edges() []lines.Edge {
	all := []lines.Edge{lines.Keel, lines.Chine}
	if v.HasOuter {
		all = append(all, lines.Outer)
	}
	if v.HasSide {
		all = append(all, lines.Knuckle)
	}
	return append(all, lines.Sheer)
}

// wetHalf gives the half breadth of the waterline at a station; ok is false where the station is dry or under water.
func (v shape) wetHalf(s lines.Station) (y, z float64, ok bool) {
	if !v.floats {
		return 0, 0, false
	}
	z = v.water(s.X)
	y, ok = s.Breadth(z)
	return y, z, ok
}

// points turns the half section of a station into places.
func points(half []hydrostatics.Point, at func(y, z float64) point) []point {
	out := make([]point, len(half))
	for i, p := range half {
		out[i] = at(p.Y, p.Z)
	}
	return out
}
