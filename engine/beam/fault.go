package beam

import (
	"fmt"
	"math"
	"strings"
)

// Fault is one thing that makes a model impossible to solve.
type Fault struct {
	Subject string // "member 3 (bottom frame)"
	Says    string
}

// Faults is all that is wrong with a model. It is an error.
type Faults []Fault

// Error gives every fault on a line of its own.
func (fs Faults) Error() string {
	all := make([]string, len(fs))
	for i, f := range fs {
		all[i] = f.Subject + ": " + f.Says
	}
	return strings.Join(all, "\n")
}

func (fs *Faults) add(subject, format string, values ...any) {
	*fs = append(*fs, Fault{subject, fmt.Sprintf(format, values...)})
}

// mostNodes bounds a model: beyond it a list is a slip, and solving would take long.
const mostNodes = 5000

// faults lists all that is wrong with a model before it is solved.
func (m Model) faults() Faults {
	var fs Faults
	if m.Kind != Frame && m.Kind != Grillage {
		fs.add("model", "kind %q is not known; write %s or %s", m.Kind, Frame, Grillage)
	}
	if n := len(m.Nodes); n < 2 || n > mostNodes {
		fs.add("model", "%d nodes, must be 2 to %d", n, mostNodes)
	}
	if len(m.Members) == 0 || len(m.Members) > 4*mostNodes {
		fs.add("model", "%d members, must be 1 to %d", len(m.Members), 4*mostNodes)
	}
	for i, n := range m.Nodes {
		if !finite(n.X, n.Y) {
			fs.add(m.node(i), "lies at (%v, %v), which is no place", n.X, n.Y)
		}
	}
	for i := range m.Members {
		m.memberFaults(i, &fs)
	}
	for _, s := range m.Supports {
		if m.known(s.Node, "support", &fs) && !(finite(s.Spring[:]...) && s.Spring[0] >= 0 && s.Spring[1] >= 0 && s.Spring[2] >= 0) {
			fs.add("support of "+m.node(s.Node), "springs %v, none may be below nought", s.Spring)
		}
	}
	for _, l := range m.Loads {
		if m.known(l.Node, "load", &fs) && !finite(l.Force[:]...) {
			fs.add("load on "+m.node(l.Node), "%v is no force", l.Force)
		}
	}
	return fs
}

// memberFaults lists what is wrong with one member and its loads.
func (m Model) memberFaults(i int, fs *Faults) {
	b, name := m.Members[i], m.member(i)
	if !m.known(b.From, name, fs) || !m.known(b.To, name, fs) {
		return
	}
	length := m.length(b)
	if !(length > 1e-9) {
		fs.add(name, "has no length: %s and %s lie in one place", m.node(b.From), m.node(b.To))
	}
	if !(b.EI > 0) || !finite(b.EI) {
		fs.add(name, "bending stiffness %v kN·m², must be above nought", b.EI)
	}
	if m.Kind == Frame && (!(b.EA > 0) || !finite(b.EA)) {
		fs.add(name, "stiffness along it %v kN, must be above nought", b.EA)
	}
	if !(b.GA >= 0 && b.GJ >= 0) || !finite(b.GA, b.GJ) {
		fs.add(name, "shear stiffness %v kN and torsional stiffness %v kN·m², neither may be below nought", b.GA, b.GJ)
	}
	for k, l := range b.Loads {
		if !finite(l.From, l.To, l.Across[0], l.Across[1], l.Along[0], l.Along[1]) {
			fs.add(name, "load %d is no number", k+1)
			continue
		}
		slack := float64(1e-9 * length)
		if l.From < -slack || l.To > length+slack || l.From > l.To || (!l.Point && l.From == l.To) {
			fs.add(name, "load %d lies from %v to %v m, the member from 0 to %.6g m", k+1, l.From, l.To, length)
		}
		if m.Kind == Grillage && l.Along != [2]float64{} {
			fs.add(name, "load %d acts along the member, which a grillage does not carry", k+1)
		}
	}
}

// known adds a fault where a node is not there.
func (m Model) known(node int, subject string, fs *Faults) bool {
	if node >= 0 && node < len(m.Nodes) {
		return true
	}
	fs.add(subject, "node %d is not there; there are %d", node, len(m.Nodes))
	return false
}

// node and member name one for people, counted from one.
func (m Model) node(i int) string { return named("node", i, m.Nodes[i].Name) }

func (m Model) member(i int) string { return named("member", i, m.Members[i].Name) }

func named(what string, i int, name string) string {
	if name == "" {
		return fmt.Sprintf("%s %d", what, i+1)
	}
	return fmt.Sprintf("%s %d (%s)", what, i+1, name)
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
