package record

import "hullfile/engine/unit"

// Extent is how much of the seams of one category is to be inspected by one method. It stands in the design, or in the
// hull where a surveyor asked for more.
type Extent struct {
	Entry
	Category Val[string]       `toml:"category" must:"yes" oneof:"shell|watertight|slamming zone|primary|secondary|all" doc:"seams that it is about"`
	Method   Val[string]       `toml:"method" must:"yes" oneof:"visual|penetrant|radiographic|ultrasonic" doc:"method of inspection"`
	Share    Val[unit.Percent] `toml:"share_percent" must:"yes" least:"0" most:"100" eg:"100" doc:"part of the length of those seams"`
	From     Val[string]       `toml:"asked_by" doc:"who or what asks for it: a rule, a surveyor, the yard"`
}
