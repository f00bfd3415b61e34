package survey

import (
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// openSeams are the seams of which a link of the chain is missing or that were rejected, shell first, then by length. A seam
// that is on the weld map and has no weld yet is work to be done and not to be surveyed.
func (in *Input) openSeams() []Item {
	var out []Item
	for _, j := range in.ordered(func(j *seam.Joint) float64 { return j.Metres() }) {
		if len(j.Welds) == 0 || in.Seams.Standing(j) == finding.Met {
			continue
		}
		i := in.seamItem("seam", j, SeamOpen)
		i.Why = "what stands behind this seam is not whole"
		if lacks := in.Seams.Lacks(j); len(lacks) > 0 {
			i.Why = lacks[0].Says
			if len(lacks) > 1 {
				i.Why += ", and " + strconv.Itoa(len(lacks)-1) + " more"
			}
		}
		for _, n := range j.Nonconformities {
			if !n.Closed.Set {
				i.Why = joinWords(i.Why, "open: "+n.About.V)
			}
		}
		out = append(out, i)
	}
	return out
}

// mendedSeams are those with a repair on record, shell first, then by length repaired.
func (in *Input) mendedSeams() []Item {
	var out []Item
	for _, j := range in.ordered(repaired) {
		if len(j.Repairs) == 0 {
			continue
		}
		i := in.seamItem("repair", j, Mended)
		var said []string
		for _, r := range j.Repairs {
			said = append(said, repairWords(r))
			i.Places = append(i.Places, r.At)
		}
		i.Why = "repaired: " + strings.Join(said, "; ")
		out = append(out, i)
	}
	return out
}

func repairWords(r *record.Repair) string {
	s := r.ID
	if r.Length.Set {
		s += ", " + unit.Text(r.Length.V, 0) + " mm"
	}
	if r.Position.Set {
		s += " at " + unit.Text(r.Position.V, 2) + " m from its beginning"
	}
	return s
}

func repaired(j *seam.Joint) float64 {
	sum := 0.0
	for _, r := range j.Repairs {
		sum += float64(r.Length.V)
	}
	return sum
}

// ordered gives the joints, those of the shell first, then the greatest first.
func (in *Input) ordered(size func(*seam.Joint) float64) []*seam.Joint {
	if in.Seams == nil {
		return nil
	}
	all := slices.Clone(in.Seams.Joints)
	slices.SortStableFunc(all, func(a, b *seam.Joint) int {
		switch {
		case a.OfShell() != b.OfShell():
			if a.OfShell() {
				return -1
			}
			return 1
		case size(a) > size(b):
			return -1
		case size(a) < size(b):
			return 1
		}
		return 0
	})
	return all
}

func (in *Input) seamItem(class string, j *seam.Joint, c Class) Item {
	i := Item{Key: key(class, j.Record.ID), Class: c, Subject: "joint " + j.Record.ID, Places: []finding.Place{j.Record.At}}
	in.locate(&i)
	i.seamWork(j)
	return i
}

// seamWork asks for the throat of a fillet, and for a look at a butt. The least throat is the drawn one less a tenth of a
// millimetre, which is what a gauge can be read to (practice).
func (i *Item) seamWork(j *seam.Joint) {
	if t := j.Record.Throat; t.Set && (j.Record.Type.V == "fillet" || j.Record.Type.V == "lap") {
		i.Do, i.Unit = "look along the whole seam, measure the throat at three places and write the least", "mm"
		low := float64(t.V) - 0.1
		i.Expect = Expect{
			Says: "a throat of " + unit.Text(low, 1) + " mm or more, drawn " + unit.Text(t.V, 1) + " mm; no crack, no undercut to be felt", Low: low, HasLow: true,
			Source: "the weld map; 0.1 mm for the reading of the gauge", Basis: finding.Practice,
		}
		return
	}
	i.Do = "look along the whole seam from both sides where it can be reached"
	i.Expect = Expect{Says: "no crack, no pore open to the surface, no undercut to be felt, no misfit of the plates", Source: "practice", Basis: finding.Practice}
}
