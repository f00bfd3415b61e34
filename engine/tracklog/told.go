package tracklog

// Trouble is one kind of thing in a log that could not be used or must be known.
type Trouble string

// What a log can suffer from. The words stand behind a count: "3 sentences whose checksum is wrong".
const (
	BadChecksum  Trouble = "sentences whose checksum is wrong"
	NoChecksum   Trouble = "sentences without a checksum"
	ShortFields  Trouble = "sentences with too few fields, their checksum right"
	BadFields    Trouble = "sentences with a field that cannot be read, their checksum right"
	NoFix        Trouble = "sentences that say themselves that they are not to be used"
	NoDay        Trouble = "sentences before the first that carries a day"
	OverLong     Trouble = "lines longer than any line of a log"
	CutOff       Trouble = "last lines that break off"
	BadRows      Trouble = "rows with fewer cells than the head"
	NotNumbers   Trouble = "cells that are no number"
	NoTime       Trouble = "samples without a time"
	BadTimes     Trouble = "times that cannot be read"
	NoZone       Trouble = "times without a zone"
	BadPositions Trouble = "positions that do not exist on earth"
	TooFast      Trouble = "speeds of more than 120 kn"
	Jumps        Trouble = "positions that jump further than any boat goes"
	Backwards    Trouble = "samples whose time goes backwards"
	Repeated     Trouble = "samples with the time of the one before"
	Spikes       Trouble = "single samples whose clock is far from those around it"
	Gaps         Trouble = "gaps in time"
	Segments     Trouble = "breaks that the log marks itself"
	BadMarkup    Trouble = "places where the markup breaks off"
	Unplaced     Trouble = "points without a position"
)

// Note is a trouble with how often it came, where first, and what stood there.
type Note struct {
	Trouble Trouble
	Count   int
	Line    int    // of the first
	Word    string // what stood there, where that says something
}

// longestWord is how much of a log is quoted.
const longestWord = 40

// told collects the troubles of one log, in the order in which they first came. It holds one note a kind, however long
// the log is.
type told struct{ notes []Note }

func (t *told) add(what Trouble, line int, word []byte) {
	for i := range t.notes {
		if t.notes[i].Trouble == what {
			t.notes[i].Count++
			return
		}
	}
	word = word[:min(len(word), longestWord)]
	t.notes = append(t.notes, Note{Trouble: what, Count: 1, Line: line, Word: plain(word)})
}

// plain keeps of a log what can be printed in ASCII; the rest becomes a point in the middle of the line.
func plain(word []byte) string {
	out := make([]rune, 0, len(word))
	for _, c := range word {
		if c < 0x20 || c > 0x7e {
			out = append(out, '·')
			continue
		}
		out = append(out, rune(c))
	}
	return string(out)
}
