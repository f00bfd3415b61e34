package site

// fewFiles is how many files of an earlier output a run looks at one by one, beside the folders of all.
const fewFiles = 4000

// round says whose turn it is to be looked at file by file. A small output is looked at whole in every run; of one with more
// files each run looks at some books, and the next goes on where it ended.
type round struct {
	turn map[string]bool
	all  bool
	next string // number of the hull at which the next run begins
}

func newRound(hulls []string, was *state, every bool) round {
	r := round{all: every, turn: map[string]bool{}}
	begin := 0
	for i, number := range hulls {
		if number == was.next {
			begin = i
		}
	}
	files := 0
	for i := range hulls {
		number := hulls[(begin+i)%len(hulls)]
		files += was.books[number].Line.Files
		if files > fewFiles && i > 0 {
			r.next = number
			break
		}
		r.turn[number] = true
	}
	return r
}

func (r *round) has(number string) bool { return r.all || r.turn[number] }
