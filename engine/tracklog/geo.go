package tracklog

import "math"

// earthRadius is the mean radius of the earth in metres: that of WGS 84, (2a + b)/3.
const earthRadius = 6371008.8

const (
	metresPerMile   = 1852.0
	metresPerSecond = metresPerMile / 3600.0 // one knot, by definition
	radian          = math.Pi / 180
)

// Distance gives metres between two positions in degrees by the haversine formula on a sphere of the mean radius. On the
// real earth it is right within 0.6 % (own arithmetic on the two radii of curvature). Source: own derivation.
func Distance(lat1, lon1, lat2, lon2 float64) float64 {
	half := math.Sin((lat2 - lat1) * radian / 2)
	side := math.Sin((lon2 - lon1) * radian / 2)
	h := float64(half*half) + float64(math.Cos(lat1*radian)*math.Cos(lat2*radian))*float64(side*side)
	return 2 * earthRadius * math.Asin(math.Sqrt(min(1, h)))
}

// Bearing gives the direction of the second position from the first in degrees, 0 to 360.
func Bearing(lat1, lon1, lat2, lon2 float64) float64 {
	d := (lon2 - lon1) * radian
	y := math.Sin(d) * math.Cos(lat2*radian)
	x := float64(math.Cos(lat1*radian)*math.Sin(lat2*radian)) - float64(math.Sin(lat1*radian)*math.Cos(lat2*radian))*math.Cos(d)
	return round360(math.Atan2(y, x) / radian)
}

// near gives metres between two positions that lie close together, on a plane that touches the earth there.
func near(lat1, lon1, lat2, lon2 float64) float64 {
	north := (lat2 - lat1) * radian
	east := math.Remainder(lon2-lon1, 360) * radian * math.Cos(lat1*radian)
	return earthRadius * math.Sqrt(float64(north*north)+float64(east*east))
}

// round360 brings a direction into 0 to 360.
func round360(deg float64) float64 {
	if deg >= 0 && deg < 360 {
		return deg
	}
	deg = math.Mod(deg, 360)
	if deg < 0 {
		deg += 360
	}
	return deg
}

// turned gives how far b is turned from a, -180 to 180 degrees.
func turned(a, b float64) float64 {
	if d := b - a; d > -180 && d < 180 {
		return d
	}
	return math.Remainder(b-a, 360)
}

// Plane is a flat chart around a position: metres east and north of it.
type Plane struct {
	lat, lon, shrink float64
}

// PlaneAt gives the chart that touches the earth at a position. Over the few miles of a trial it is true within a few
// parts of a thousand.
func PlaneAt(lat, lon float64) Plane { return Plane{lat, lon, math.Cos(lat * radian)} }

// At gives metres east and north.
func (p Plane) At(lat, lon float64) (east, north float64) {
	return earthRadius * radian * math.Remainder(lon-p.lon, 360) * p.shrink, earthRadius * radian * (lat - p.lat)
}
