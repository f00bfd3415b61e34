package results

import (
	"hullfile/engine"
	"hullfile/engine/document"
	"hullfile/engine/seam"
)

// seamResults is the build record for machines: each joint with what stands behind it, and how far all of them are covered.
func seamResults(d *engine.Dossier) object {
	joints, categories := []object{}, []object{}
	if d.Seams == nil {
		return object{{"joints", joints}, {"coverage", categories}}
	}
	for _, j := range d.Seams.Joints {
		joints = append(joints, jointResult(d.Seams, j))
	}
	for i := range d.Coverage.Categories {
		c := &d.Coverage.Categories[i]
		methods := []object{}
		for _, s := range c.Methods {
			methods = append(methods, object{{"method", s.Method}, {"metres", full(s.Metres)}, {"part", full(s.Part)}})
		}
		categories = append(categories, object{{"category", c.Name}, {"joints", c.Joints}, {"metres", full(c.Metres)}, {"methods", methods}})
	}
	c := &d.Coverage
	return object{{"joints", joints}, {"coverage", categories}, {"metres", full(c.Metres)}, {"welded_m", full(c.Welded)}, {"shell_m", full(c.Shell)}, {"shell_whole_m", full(c.Whole)}, {"open_nonconformities", len(c.Open)}}
}

func jointResult(m *seam.Map, j *seam.Joint) object {
	r := j.Record
	lacks, parts, seen := []string{}, []string{}, object{}
	for _, l := range m.Lacks(j) {
		lacks = append(lacks, l.Says)
	}
	for _, p := range j.Parts {
		if p != nil {
			parts = append(parts, p.ID)
		}
	}
	for _, method := range seam.Methods() {
		if metres := m.SeenBy(j, method); metres > 0 {
			seen.add(method, full(metres))
		}
	}
	stamps, last := j.WeldedBy()
	return object{
		{"key", r.ID}, {"type", r.Type.V}, {"category", r.Category.V}, {"where", r.Where.V}, {"length_m", full(r.Length.V)}, {"standing", m.Standing(j)}, {"parts", parts}, {"lacks", lacks},
		{"welds", len(j.Welds)}, {"stamps", stamps}, {"last_weld", last}, {"seen_m", seen}, {"repairs", len(j.Repairs)}, {"nonconformities", len(j.Nonconformities)},
	}
}

// documentResults is the papers for machines, each with the hash of what lies there.
func documentResults(r *document.Result) []object {
	out := []object{}
	for i := range r.Documents {
		d := &r.Documents[i]
		o := object{{"key", d.Record.ID}, {"title", d.Record.Title.V}, {"kind", d.Record.Kind.V}, {"number", d.Record.Number.V}, {"present", d.Present}, {"agrees", d.Matches}}
		if d.Record.Date.Set {
			o.add("date", d.Record.Date.V.ISO())
		}
		if d.Present {
			o.add("path", d.Out)
			o.add("sha256", d.SHA256)
			o.add("bytes", d.Bytes)
			o.add("type", d.Type)
		}
		out = append(out, o)
	}
	return out
}
