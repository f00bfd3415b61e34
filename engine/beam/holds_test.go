package beam

// Point is a single force across a member, kN.
func Point(at, across float64) Load {
	return Load{Point: true, From: at, To: at, Across: [2]float64{across, 0}}
}

// Fixed holds a node in every way.
func Fixed(node int) Support { return Support{Node: node, Fixed: [3]bool{true, true, true}} }

// Pinned holds a node of a frame in place and lets it turn.
func Pinned(node int) Support { return Support{Node: node, Fixed: [3]bool{true, true, false}} }

// Roller holds a node of a frame along y alone.
func Roller(node int) Support { return Support{Node: node, Fixed: [3]bool{false, true, false}} }

// Held holds a node of a grillage along z and lets it turn.
func Held(node int) Support { return Support{Node: node, Fixed: [3]bool{true, false, false}} }
