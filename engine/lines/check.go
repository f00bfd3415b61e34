package lines

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/unit"
)

// fewest is the least number of stations that make a hull: aft, middle and fore.
const fewest = 3

// Check looks for what cannot be a hull: stations out of order, edges that cross, a sheer under the chine, recesses and
// openings outside the hull; and for what is no hull yet. A hull with any finding must not be floated.
func (h *Hull) Check() []finding.Finding {
	if len(h.Stations) == 0 {
		return nil
	}
	var out []finding.Finding
	if n := len(h.Stations); n < fewest {
		out = append(out, finding.Finding{Kind: finding.Gap, Rule: "lines-few", Subject: "lines", Places: []finding.Place{h.Stations[0].Place},
			Says: "the lines have " + unit.Count(n, "station", "stations") + "; at least three are needed to make a hull", Settle: "write more stations"})
	}
	for i, s := range h.Stations {
		if i > 0 && s.X <= h.Stations[i-1].X {
			out = append(out, wrong("lines-order", "station "+s.ID, s.Place,
				fmt.Sprintf("station %s at x %.3f m does not lie forward of station %s at x %.3f m", s.ID, s.X, h.Stations[i-1].ID, h.Stations[i-1].X),
				"write the stations from aft to forward"))
		}
		out = append(out, s.check()...)
	}
	return append(out, h.checkHoles()...)
}

func (s Station) check() []finding.Finding {
	var out []finding.Finding
	say := func(rule, text, settle string) {
		out = append(out, wrong(rule, "station "+s.ID, s.Place, text, settle))
	}
	k, c, sh := s.At[Keel], s.At[Chine], s.At[Sheer]
	if c.Z < k.Z {
		say("lines-chine-low", fmt.Sprintf("at station %s the chine (z %.3f m) lies under the keel (z %.3f m)", s.ID, c.Z, k.Z), "measure chine_z_m and keel_z_m again")
	}
	if sh.Z <= c.Z && sh.Y > 0.005 {
		say("lines-sheer-low", fmt.Sprintf("at station %s the sheer (z %.3f m) does not lie above the chine (z %.3f m)", s.ID, sh.Z, c.Z), "measure sheer_z_m and chine_z_m again")
	}
	if a, b, crossed := s.crossing(); crossed {
		say("lines-cross", fmt.Sprintf("at station %s the stretch from the %s crosses the stretch from the %s", s.ID, a, b), "hold the heights and half breadths of this station against the lines plan")
	}
	return out
}

// crossing looks for two stretches of the half section that cross, other than neighbours.
func (s Station) crossing() (a, b Edge, crossed bool) {
	for i := Keel; i < Sheer; i++ {
		for j := i + 2; j < Sheer; j++ {
			if cross(s.At[i], s.At[i+1], s.At[j], s.At[j+1]) {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

func cross(a, b, c, d hydrostatics.Point) bool {
	side := func(p, q, r hydrostatics.Point) float64 {
		return float64((q.Y-p.Y)*(r.Z-p.Z)) - float64((q.Z-p.Z)*(r.Y-p.Y))
	}
	const hair = 1e-12
	return side(a, b, c)*side(a, b, d) < -hair && side(c, d, a)*side(c, d, b) < -hair
}

func (h *Hull) checkHoles() []finding.Finding {
	var out []finding.Finding
	aft, fore := h.Stations[0].X, h.Stations[len(h.Stations)-1].X
	for _, r := range h.Recesses {
		s := h.Section((r.Aft + r.Fore) / 2)
		switch {
		case r.Fore <= r.Aft:
			out = append(out, wrong("recess-ends", "recess "+r.ID, r.Place, fmt.Sprintf("recess %s ends at x %.2f m, aft of where it begins, %.2f m", r.ID, r.Fore, r.Aft), "write from_x_m aft and to_x_m forward"))
		case r.Aft < aft-0.01 || r.Fore > fore+0.01:
			out = append(out, wrong("recess-outside", "recess "+r.ID, r.Place, fmt.Sprintf("recess %s from x %.2f to %.2f m reaches beyond the hull, x %.2f to %.2f m", r.ID, r.Aft, r.Fore, aft, fore), "measure from_x_m and to_x_m again"))
		case r.Sole <= s.At[Keel].Z:
			out = append(out, wrong("recess-sole", "recess "+r.ID, r.Place, fmt.Sprintf("the sole of recess %s at z %.2f m lies under the keel, z %.2f m", r.ID, r.Sole, s.At[Keel].Z), "measure sole_z_m again"))
		}
	}
	for i, f := range h.Frames {
		switch {
		case f.X < h.AftEnd()-0.01 || f.X > fore+0.01:
			out = append(out, wrong("frame-outside", "frame "+f.ID, f.Place, fmt.Sprintf("frame %s at x %.2f m lies beyond the hull, x %.2f to %.2f m", f.ID, f.X, h.AftEnd(), fore), "measure x_m again"))
		case i > 0 && f.X <= h.Frames[i-1].X:
			out = append(out, wrong("frame-order", "frame "+f.ID, f.Place, fmt.Sprintf("frame %s at x %.2f m does not lie forward of frame %s at x %.2f m", f.ID, f.X, h.Frames[i-1].ID, h.Frames[i-1].X), "write the frames from aft to forward"))
		}
	}
	for _, o := range h.Openings {
		p := o.At[0]
		if p.X < aft-0.5 || p.X > fore+0.5 {
			out = append(out, wrong("opening-outside", "opening "+o.ID, o.Place, fmt.Sprintf("%s at x %.2f m lies beyond the hull, x %.2f to %.2f m", o.Name, p.X, aft, fore), "measure x_m again"))
		}
	}
	return out
}

func wrong(rule, subject string, at finding.Place, says, settle string) finding.Finding {
	return finding.Finding{Kind: finding.Contradiction, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: []finding.Place{at}}
}
