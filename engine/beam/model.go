package beam

// Kind is how a structure is loaded.
type Kind string

// The kinds, with the three ways in which a node of each can move, in the order of all arrays of three.
const (
	Frame    Kind = "frame"    // along x, along y, turn in the plane
	Grillage Kind = "grillage" // along z, turn about x, turn about y
)

// Model is a structure and its loads.
type Model struct {
	Kind     Kind
	Nodes    []Node
	Members  []Member
	Supports []Support
	Loads    []NodeLoad
}

// Node is a point where members meet.
type Node struct {
	Name string
	X, Y float64
}

// Member is a straight bar of one section between two nodes. Its own axes: x from From to To, y to the left of it in a
// frame, and along z in a grillage. A pin at an end carries no bending moment.
type Member struct {
	Name     string
	From, To int     // places in Nodes
	EI       float64 // bending stiffness, kN·m²
	EA       float64 // stiffness along the member, kN; frames only
	GA       float64 // shear stiffness, kN; nought where shear is taken as stiff
	GJ       float64 // torsional stiffness, kN·m²; grillages only; nought where torsion is not counted
	PinFrom  bool
	PinTo    bool
	Loads    []Load
}

// Load acts along a member, across it along its own y and along it along its own x. A spread load runs evenly from
// the first value to the second between two distances from the start of the member; a point load stands at the first distance.
type Load struct {
	Point    bool
	From, To float64    // m from the start of the member
	Across   [2]float64 // kN/m at From and at To; kN in the first for a point load
	Along    [2]float64 // the same along the member; frames only
}

// Uniform is an even load across a whole member of a length, kN/m.
func Uniform(length, across float64) Load { return Varying(0, length, across, across) }

// Varying is a load across a member that runs from one value to another between two distances, kN/m.
func Varying(from, to, first, last float64) Load {
	return Load{From: from, To: to, Across: [2]float64{first, last}}
}

// NodeLoad is a force or moment at a node, kN and kN·m, in the order of the ways of its kind.
type NodeLoad struct {
	Node  int
	Force [3]float64
}

// Support holds a node: fixed in a way, or by a spring (kN/m, kN·m/rad), in the order of the ways of its kind.
type Support struct {
	Node   int
	Fixed  [3]bool
	Spring [3]float64
}
