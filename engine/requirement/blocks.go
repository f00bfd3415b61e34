package requirement

import "slices"

// blocks is what may not happen without an item, the gravest first. The record's own list of words is held to it by a test.
var blocks = []string{"sale", "signature", "plate", "handover", "next work", "nothing"}

// Blocks says in words what may not happen.
func Blocks(word string) string {
	switch word {
	case "sale":
		return "the boat may not be sold or put into use"
	case "signature":
		return "the declaration may not be signed"
	case "plate":
		return "the plate may not be fixed"
	case "handover":
		return "the boat may not be handed over"
	case "next work":
		return "the next work may not begin"
	}
	return "the file is not whole"
}

// Blocked names in a few words what waits for an item.
func Blocked(word string) string {
	switch word {
	case "sale":
		return "sale and use"
	case "signature":
		return "signing the declaration"
	case "plate":
		return "fixing the plate"
	case "nothing":
		return "nothing yet"
	}
	return word
}

// gravity orders items by how much they block, the gravest first.
func gravity(word string) int { return slices.Index(blocks, word) }
