package main

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"hullfile/engine/trace"
	"hullfile/engine/unit"
)

func traceCommand(d *desk) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "trace [YARD] MARK",
		Short: "Follow a cast, lot, welder, procedure or other mark through all hulls.",
		Long: `Follows one mark through a yard folder (this folder if none is named), both ways: what carries it, where that comes ` +
			`from, and which hulls, parts and seams it touches, with the metres of seam. A mark is a cast, lot, certificate, part, ` +
			`joint, procedure, welder, inspector, instrument, lot of filler or document, by key, number or name. HULL/MARK looks ` +
			`at one hull only.`,
		Annotations: ends("something carries the mark", "nothing carries the mark", "the records cannot be read, or misuse"),
		Example: `  hullfile trace 48117                  which hulls and seams hold this cast
  hullfile trace skerry HL74-012/C1P    what stands behind one seam
  hullfile trace skerry orme --json     the same for a machine, of one person`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse(cmd, errors.New("no mark is named"))
			}
			return atMost(2)(cmd, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			return followMark(d, folderOf(args[:len(args)-1]), args[len(args)-1], asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON document with what carries the mark, what is behind it, and the hulls it touches")
	return cmd
}

func followMark(d *desk, folder, mark string, asJSON bool) error {
	r, err := openYard(folder)
	if err != nil {
		return err
	}
	defer r.close()
	found := trace.Find(r.yard, mark)
	if asJSON {
		err = d.json(machineTrace(found))
	} else {
		d.out.traced(found)
	}
	if err == nil && len(found.Is) == 0 {
		return errFindings
	}
	return err
}

// traced prints what a mark is and touches: first how much, then hull by hull.
func (s *screen) traced(r trace.Result) {
	if len(r.Is) == 0 {
		s.paragraph("", fmt.Sprintf("Nothing on record carries the mark %q.", r.Mark))
		if len(r.Near) > 0 {
			s.paragraph("  ", "written almost like it: "+strings.Join(r.Near, ", "))
		}
		return
	}
	s.paragraph("", fmt.Sprintf("%s: %s, %s, %s m of seam", r.Mark, count(len(r.Hulls), "hull", "hulls"), count(seamsOf(r), "seam", "seams"), unit.Text(r.Metres, 1)))
	s.nodes("is", r.Is)
	s.nodes("comes from", r.Behind)
	for _, t := range r.Hulls {
		s.touched(t)
	}
}

func seamsOf(r trace.Result) int {
	n := 0
	for _, t := range r.Hulls {
		n += len(t.Joints)
	}
	return n
}

func (s *screen) touched(t trace.Touch) {
	s.line("")
	s.head("%s", strings.TrimSpace(t.Hull+"  "+t.Title))
	s.paragraph("  ", strings.Join(without(t.State, count(len(t.Parts), "part", "parts"), count(len(t.Joints), "seam", "seams"), unit.Text(t.Metres, 1)+" m"), ", "))
	if t.Owner != "" {
		s.paragraph("  owner  ", strings.Join(without(t.Owner, cmp.Or(t.Reach, "how to reach them is not on record: identity.owner_contact")), ", "))
	}
	s.nodes("parts", t.Parts)
	if len(t.Joints) > 0 {
		s.line("  seams")
	}
	for _, j := range t.Joints {
		s.paragraph("    "+j.Key+"  ", strings.Join(without(unit.Text(j.Metres, 2)+" m", j.Says, j.Where, "through "+j.Why), "; "))
		if len(t.Joints) == 1 {
			s.nodes("behind it", j.Chain)
		}
	}
	s.nodes("also", t.Others)
}

func (s *screen) nodes(title string, all []trace.Node) {
	if len(all) == 0 {
		return
	}
	s.line("  %s", title)
	for _, n := range all {
		text := n.Subject()
		if n.Says != "" {
			text += ": " + n.Says
		}
		s.paragraph("    ", text+" ("+n.At.String()+")")
	}
}

// without leaves out what is empty.
func without(all ...string) []string {
	var out []string
	for _, text := range all {
		if text != "" {
			out = append(out, text)
		}
	}
	return out
}

// machineTrace makes empty lists of none.
func machineTrace(r trace.Result) trace.Result {
	r.Is, r.Behind, r.Hulls, r.Near = list(r.Is), list(r.Behind), list(r.Hulls), list(r.Near)
	for i := range r.Hulls {
		t := &r.Hulls[i]
		t.Parts, t.Joints, t.Others = list(t.Parts), list(t.Joints), list(t.Others)
		for k := range t.Joints {
			t.Joints[k].Chain = list(t.Joints[k].Chain)
		}
	}
	return r
}
