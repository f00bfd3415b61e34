package results

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/stability"
)

// linesResult is the shape of the hull for machines.
func linesResult(r *lines.Result) object {
	o := object{{"floats", r.HasAfloat}}
	var compared, skins []object
	for _, c := range r.Compared {
		one := object{{"key", c.Key}, {"stated", full(c.Stated)}, {"allowed", full(c.Allowed)}, {"agrees", c.Agrees}}
		if c.HasLines {
			one.add("lines", full(c.Lines))
		}
		compared = append(compared, one)
	}
	for _, s := range r.Skins {
		skins = append(skins, object{{"zone", s.Zone}, {"area_m2", full(s.Area)}, {"x_m", full(s.Centre.X)}, {"z_m", full(s.Centre.Z)}})
	}
	o.add("compared", orEmpty(compared))
	o.add("skins", orEmpty(skins))
	form := []object{}
	for _, f := range r.Form {
		form = append(form, object{{"level_m", full(f.Level)}, {"mass_kg", full(f.Mass)}, {"lcb_m", full(f.LCB)}, {"kb_m", full(f.KB)}, {"plane_m2", full(f.Plane)},
			{"lcf_m", full(f.LCF)}, {"bm_m", full(f.BM)}, {"bml_m", full(f.BML)}, {"wetted_m2", full(f.Wetted)}})
	}
	o.add("form", form)
	return o
}

// afloatResult is the conditions with their righting levers.
func afloatResult(load *loading.Result, s *stability.Result) object {
	conditions := []object{}
	for i := range load.Conditions {
		c := &load.Conditions[i]
		o := object{{"key", c.ID}, {"kind", c.Kind}, {"whole", c.Whole}, {"floats", c.Floats}}
		if c.Whole {
			o.add("mass_kg", full(c.Mass))
			o.add("x_m", full(c.Centre.X))
			o.add("y_m", full(c.Centre.Y))
			o.add("z_m", full(c.Centre.Z))
		}
		if c.Floats {
			o.add("draught_m", full(c.Afloat.Draught))
			o.add("trim_deg", full(c.Afloat.Rest.Trim*180/math.Pi))
			o.add("heel_deg", full(c.Heel))
			o.add("least_freeboard_m", full(c.Least))
			o.add("gm_m", full(c.GM))
			o.add("gm_fluid_m", full(c.GMFluid))
		}
		conditions = append(conditions, o)
	}
	levers := []object{}
	for i := range s.Conditions {
		c := &s.Conditions[i]
		for k := range c.Sides {
			levers = append(levers, leverResult(c, &c.Sides[k]))
		}
	}
	return object{{"density_kg_m3", full(load.Density)}, {"conditions", conditions}, {"levers", levers}}
}

func leverResult(c *stability.Condition, s *stability.Side) object {
	o := object{{"side", s.Name}, {"limit_deg", full(s.Limit)}, {"greatest_m", full(s.Greatest)}, {"greatest_at_deg", full(s.GreatestA)}, {"points", leverPoints(s.Curve)}}
	if c.Loading != nil {
		o.add("condition", c.Loading.ID)
	}
	if !s.Flooding.Never {
		o.add("flooding_deg", full(s.Flooding.Heel))
		o.add("flooding_by", s.Flooding.Name)
	}
	return o
}

// leverPoints gives heel and lever, in degrees and metres.
func leverPoints(c hydrostatics.Curve) [][2]full {
	out := make([][2]full, 0, len(c.Points))
	for _, p := range c.Points {
		out = append(out, [2]full{full(p.Heel * 180 / math.Pi), toNanometre(p.Lever)})
	}
	return out
}

// toNanometre gives a length in metres to the nanometre. A lever that is nought in truth comes out as a difference of masses
// that nearly cancel: what is left of them differs from one make of processor to the next.
func toNanometre(metres float64) full { return full(math.Round(metres*1e9)/1e9 + 0) }
