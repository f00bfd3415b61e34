package hydrostatics

import (
	"math"
	"testing"
)

// TestSecondReckoning holds a launch that narrows and rises forward, floating heeled and free to trim, against a reckoning
// by other means: thin slices cut by the surface as polygons, with the level and the trim halved until they fit. It shares
// nothing with the package but the sections. Own arithmetic; no published boat of this kind was found.
func TestSecondReckoning(t *testing.T) {
	sections := chineBoat()
	b, err := NewBody(sections, 8)
	if err != nil {
		t.Fatal(err)
	}
	load := Load{Mass: 2100, Centre: Vector{2.43, 0, 0.89}, Density: 1025}
	for _, heel := range []float64{5, 15, 30, 50} {
		got, err := b.Balance(load, heel*deg, Attitude{}, false)
		if err != nil {
			t.Fatal(err)
		}
		s := slices{sections: sections, heel: heel * deg}
		trim := halved(-12*deg, 12*deg, func(trim float64) bool { fore, _ := s.arms(load, trim); return fore > 0 })
		_, lever := s.arms(load, trim)
		near(t, "righting lever by slices", got.Lever, lever, 5e-5)
		near(t, "trim by slices, degrees", got.Trim/deg, trim/deg, 0.003)
	}
}

// chineBoat is a hard-chine boat of 7.4 m, invented.
func chineBoat() []Section {
	var out []Section
	for _, s := range [][6]float64{ // x, keel z, chine y z, sheer y z
		{0, 0, 0.91, 0.287, 1.19, 1.13}, {2.4, 0, 1.03, 0.334, 1.248, 1.179}, {4.2, 0.02, 0.983, 0.417, 1.209, 1.263},
		{5.4, 0.207, 0.778, 0.619, 1.004, 1.34}, {6.6, 0.653, 0.383, 0.928, 0.545, 1.431}, {7.4, 1.12, 0.02, 1.138, 0.063, 1.5},
	} {
		out = append(out, Section{X: s[0], Outline: []Point{{0, s[1]}, {s[2], s[3]}, {s[4], s[5]}, {-s[4], s[5]}, {-s[2], s[3]}}})
	}
	return out
}

// slices cuts a boat of straight-lined sections into slices of equal thickness between each two of them.
type slices struct {
	sections []Section
	heel     float64
}

// arms gives how far the centre of what is under water lies forward of the centre of gravity, and to the low side of it,
// measured along the surface, when the boat floats its mass at this trim, bow up.
func (s slices) arms(load Load, trim float64) (fore, low float64) {
	up := [3]float64{math.Sin(trim), -math.Sin(s.heel) * math.Cos(trim), math.Cos(s.heel) * math.Cos(trim)}
	level := halved(-3, 4, func(level float64) bool { v, _ := s.under(up, level); return v < load.Mass/load.Density })
	_, c := s.under(up, level)
	r := [3]float64{c[0] - load.Centre.X, c[1] - load.Centre.Y, c[2] - load.Centre.Z}
	ahead := [3]float64{1 - up[0]*up[0], -up[0] * up[1], -up[0] * up[2]}
	size := math.Sqrt(dot(ahead, ahead))
	side := [3]float64{up[1]*ahead[2] - up[2]*ahead[1], up[2]*ahead[0] - up[0]*ahead[2], up[0]*ahead[1] - up[1]*ahead[0]}
	return dot(r, ahead) / size, dot(r, side) / size
}

// under gives volume and centre of what lies below a level along the upward direction.
func (s slices) under(up [3]float64, level float64) (volume float64, centre [3]float64) {
	const n = 60
	for i := range s.sections[1:] {
		a, b := s.sections[i], s.sections[i+1]
		for k := range n {
			part := (float64(k) + 0.5) / n
			x, thick := a.X+(b.X-a.X)*part, (b.X-a.X)/n
			outline := make([]Point, len(a.Outline))
			for j, p := range a.Outline {
				q := b.Outline[j]
				outline[j] = Point{p.Y + (q.Y-p.Y)*part, p.Z + (q.Z-p.Z)*part}
			}
			area, my, mz := wet(outline, up[1], up[2], level-up[0]*x)
			volume += area * thick
			centre[0] += area * x * thick
			centre[1] += my * thick
			centre[2] += mz * thick
		}
	}
	for i := range centre {
		centre[i] /= volume
	}
	return volume, centre
}

// wet gives area and moments of the part of a polygon where ny y + nz z is not above level.
func wet(outline []Point, ny, nz, level float64) (area, my, mz float64) {
	var kept []Point
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		hp, hq := ny*p.Y+nz*p.Z-level, ny*q.Y+nz*q.Z-level
		if hp <= 0 {
			kept = append(kept, p)
		}
		if hp*hq < 0 {
			f := hp / (hp - hq)
			kept = append(kept, Point{p.Y + (q.Y-p.Y)*f, p.Z + (q.Z-p.Z)*f})
		}
	}
	for i, p := range kept {
		q := kept[(i+1)%len(kept)]
		k := p.Y*q.Z - q.Y*p.Z
		area += k / 2
		my += (p.Y + q.Y) * k / 6
		mz += (p.Z + q.Z) * k / 6
	}
	return area, my, mz
}

// halved finds where low turns false between two bounds.
func halved(from, to float64, low func(float64) bool) float64 {
	for range 34 {
		if mid := (from + to) / 2; low(mid) {
			from = mid
		} else {
			to = mid
		}
	}
	return (from + to) / 2
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
