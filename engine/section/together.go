package section

import (
	"fmt"

	"hullfile/engine/unit"
)

// together lists what is wrong with dimensions that are each possible.
func (s Shape) together() Faults {
	var f Faults
	switch s.Kind {
	case FlatBar:
		f = f.unless(s.Height > s.Web, "height", "%v mm is not above the web thickness, %v mm: the bar would lie flat", s.Height, s.Web)
	case Angle, Tee:
		f = f.unless(s.Height > s.FlangeThickness, "height", "%v mm leaves no web under a flange of %v mm", s.Height, s.FlangeThickness)
		f = f.unless(s.Flange > s.Web, "flange breadth", "%v mm is not above the web thickness, %v mm", s.Flange, s.Web)
	case Bulb:
		f = s.bulbFaults()
	case TopHat:
		f = s.hatFaults()
	case Box:
		f = f.unless(s.Height > 2*s.FlangeThickness, "height", "%v mm leaves no side between top and bottom of %v mm", s.Height, s.FlangeThickness)
		f = f.unless(s.Flange > 2*s.Web, "flange breadth", "%v mm leaves no hollow between two sides of %v mm", s.Flange, s.Web)
	case Pipe:
		f = f.unless(s.Wall < s.Diameter/2, "wall thickness", "%v mm is not below the radius, %v mm", s.Wall, s.Diameter/2)
	case BuiltUp:
		f = s.pieceFaults()
	}
	return f
}

// unless adds a fault where a condition does not hold.
func (fs Faults) unless(holds bool, dimension, format string, values ...any) Faults {
	if holds {
		return fs
	}
	return append(fs, Fault{dimension, fmt.Sprintf(format, values...)})
}

// bulbFaults: a bulb of the maker must leave metal beside the web, in the upper half of the bar.
func (s Shape) bulbFaults() Faults {
	var f Faults
	f = f.unless(s.Height > s.Web, "height", "%v mm is not above the web thickness, %v mm", s.Height, s.Web)
	if s.Area == 0 && s.Centroid == 0 {
		return f.unless(s.Height > 2*9.2, "height", "%v mm is too low for the approximation of the bulb; give area and centroid of the maker", s.Height)
	}
	if s.Area == 0 || s.Centroid == 0 {
		return f.unless(false, "area", "of area and centroid only one is given; give both or neither")
	}
	web := unit.MM2(s.Height * s.Web)
	if s.Area <= web {
		return f.unless(false, "area", "%v mm² is not above that of the web alone, %v mm²", s.Area, web)
	}
	z := (float64(float64(s.Area)*float64(s.Centroid)) - float64(float64(web)*float64(s.Height))/2) / float64(s.Area-web)
	return f.unless(z > float64(s.Height)/2 && z < float64(s.Height), "centroid",
		"%v mm puts the bulb at %.1f mm above the foot, which is not in the upper half of the bar", s.Centroid, z)
}

// hatFaults: crown and base must span both webs, and feet have a breadth and a thickness.
func (s Shape) hatFaults() Faults {
	var f Faults
	f = f.unless(s.Height > s.FlangeThickness, "height", "%v mm leaves no web under a crown of %v mm", s.Height, s.FlangeThickness)
	f = f.unless(s.Flange > 2*s.Web, "flange breadth", "%v mm leaves no hollow between two webs of %v mm", s.Flange, s.Web)
	f = f.unless(s.base() > 2*s.Web, "base breadth", "%v mm leaves no hollow between two webs of %v mm", s.base(), s.Web)
	f = f.unless((s.Foot > 0) == (s.FootThickness > 0), "foot breadth", "%v mm with a thickness of %v mm: give both or neither", s.Foot, s.FootThickness)
	return f.unless(s.FootThickness < s.Height-s.FlangeThickness || s.Foot == 0, "foot thickness", "%v mm is not below the height of the webs, %v mm", s.FootThickness, s.Height-s.FlangeThickness)
}
