package section

import (
	"math"
	"testing"

	"hullfile/engine/finding"
)

// dwight is the rule that the tests use: annealed over parent for 5083-H116, one inch each way.
var dwight = Heat{Half: 25, Bar: 125.0 / 215, Plate: 125.0 / 215, Source: "Dwight, Aluminium Design and Construction, 1999: one-inch rule; factor annealed/parent", Basis: finding.Read}

func TestHeatAtTheFootOfAFlatBar(t *testing.T) {
	bar, err := must(t, Shape{Kind: FlatBar, Height: 50, Web: 5}).With(6, 200)
	if err != nil {
		t.Fatal(err)
	}
	soft, err := bar.Heated(dwight)
	if err != nil {
		t.Fatal(err)
	}
	f := 125.0 / 215
	a1, a2, a3, a4 := 150*6.0, 50*6*f, 25*5*f, 25*5.0 // plating sound and soft, web soft and sound
	z := ((a1+a2)*3 + a3*18.5 + a4*43.5) / (a1 + a2 + a3 + a4)
	i := (a1+a2)*36/12 + (a3+a4)*625/12 + (a1+a2)*math.Pow(3-z, 2) + a3*math.Pow(18.5-z, 2) + a4*math.Pow(43.5-z, 2)
	p := soft.Properties()
	hold(t, "own arithmetic: 25 mm up the web and 25 mm each way in the plating", row{"A", float64(p.Area), (a1 + a2 + a3 + a4) / 100},
		row{"neutral", float64(p.Neutral), z}, row{"I", float64(p.I), i / 1e4}, row{"web", float64(p.Web), (a3 + a4) / 100})
	if len(soft.Zones) != 2 || soft.Zones[0].Part != "web" || soft.Zones[0].From != 6 || soft.Zones[0].To != 31 || soft.Zones[1].From != -25 || soft.Zones[1].To != 25 {
		t.Errorf("zones %+v", soft.Zones)
	}
	if want := "web from 6.0 to 31.0 mm, 125 mm², keeps 0.58 of its strength"; soft.Zones[0].Says() != want {
		t.Errorf("says %q", soft.Zones[0].Says())
	}
}

// A flange out of reach of the foot stays sound; joined by a weld of its own it does not.
func TestHeatAtTheFlange(t *testing.T) {
	shape := Shape{Kind: Tee, Height: 80, Web: 6, Flange: 50, FlangeThickness: 8}
	for _, row := range []struct {
		joined bool
		zones  int
	}{{false, 2}, {true, 4}} {
		shape.Joined = row.joined
		on, err := must(t, shape).With(6, 200)
		if err != nil {
			t.Fatal(err)
		}
		soft, err := on.Heated(dwight)
		if err != nil {
			t.Fatal(err)
		}
		if len(soft.Zones) != row.zones {
			t.Errorf("joined %v: %d zones, want %d: %+v", row.joined, len(soft.Zones), row.zones, soft.Zones)
		}
	}
}

// A pipe softened at the foot, against a sum over many small pieces of its wall.
func TestHeatOfAPipe(t *testing.T) {
	pipe := must(t, Shape{Kind: Pipe, Diameter: 60, Wall: 4})
	soft, err := pipe.Heated(dwight, Root{"foot", 0, 0})
	if err != nil {
		t.Fatal(err)
	}
	f, half := 125.0/215, 25.0/28
	var a, az, azz float64
	const n = 720000
	for k := 0; k < n; k++ {
		at := 2 * math.Pi * (float64(k) + 0.5) / n
		d := (math.Pow(30, 2) - math.Pow(26, 2)) / 2 * 2 * math.Pi / n
		r3, r4 := (math.Pow(30, 3)-math.Pow(26, 3))/3*2*math.Pi/n, (math.Pow(30, 4)-math.Pow(26, 4))/4*2*math.Pi/n
		left := 1.0
		if math.Abs(at-1.5*math.Pi) < half {
			left = f
		}
		a, az, azz = a+left*d, az+left*(d*30+r3*math.Sin(at)), azz+left*(d*900+60*r3*math.Sin(at)+r4*math.Pow(math.Sin(at), 2))
	}
	p := soft.Properties()
	for _, r := range []row{{"A", float64(p.Area), a / 100}, {"neutral", float64(p.Neutral), az / a}, {"I", float64(p.I), (azz - az*az/a) / 1e4}} {
		if math.Abs(r.got-r.want) > 1e-4*r.want {
			t.Errorf("own sum of %d pieces: %s %.6f, want %.6f", n, r.what, r.got, r.want)
		}
	}
	if len(soft.Zones) != 1 || math.Abs(float64(soft.Zones[0].To-soft.Zones[0].From)-2*half*180/math.Pi) > 1e-9 {
		t.Errorf("zones %+v", soft.Zones)
	}
}

func TestHeatRefuses(t *testing.T) {
	_, err := must(t, Shape{Kind: FlatBar, Height: 50, Web: 5}).Heated(Heat{Half: -1, Bar: 0, Plate: 1.2})
	want := "reach of the heat: -1 mm, must be above nought\nstrength left in the bar: 0, must be above nought and at most one\nstrength left in the plating: 1.2, must be above nought and at most one"
	if err == nil || err.Error() != want {
		t.Errorf("%v, want\n%s", err, want)
	}
}
