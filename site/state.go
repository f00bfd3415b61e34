package site

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// stateName is the file in which the output remembers what its books were made of, so that the next run leaves alone
// what would come out the same. It belongs to no technical file, no list of hashes names it, and it may be deleted at
// any time: everything is then written anew.
const stateName = ".hullfile-state"

// stateForm is the number of the form of the state.
const stateForm = 1

// state is what is remembered. On disk it is one JSON value a line: the head, the papers, the books.
type state struct {
	began  int64 // when the run began that wrote it, by the disk's clock, nanoseconds since 1970
	papers map[string]paper
	books  map[string]volume
}

// volume is one book that a run wrote.
type volume struct {
	Key  key    `json:"key"`
	Tree string `json:"tree"` // footprint of its folder
	Line line   `json:"line"`
}

type stateHead struct {
	Form   int   `json:"form"`
	Began  int64 `json:"began"`
	Papers int   `json:"papers"`
	Books  int   `json:"books"`
}

func newState() *state { return &state{papers: map[string]paper{}, books: map[string]volume{}} }

// readState reads what an earlier run remembered. A state that is not there, not whole, or of another form remembers
// nothing: it is never a reason to fail.
func readState(out string) *state {
	f, err := os.Open(filepath.Join(out, stateName))
	if err != nil {
		return newState()
	}
	defer f.Close()
	s, err := decodeState(bufio.NewReader(f))
	if err != nil {
		return newState()
	}
	return s
}

func decodeState(from io.Reader) (*state, error) {
	dec := json.NewDecoder(from)
	var head stateHead
	if err := dec.Decode(&head); err != nil || head.Form != stateForm {
		return newState(), err
	}
	s := newState()
	s.began = head.Began
	for range head.Papers {
		var p paper
		if err := dec.Decode(&p); err != nil {
			return nil, err
		}
		s.papers[p.Path] = p
	}
	for range head.Books {
		var w volume
		if err := dec.Decode(&w); err != nil {
			return nil, err
		}
		s.books[w.Line.Number] = w
	}
	return s, nil
}

// text gives the state as it is written, in order of name.
func (s *state) text() ([]byte, error) {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	if err := enc.Encode(stateHead{stateForm, s.began, len(s.papers), len(s.books)}); err != nil {
		return nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(s.papers)) {
		if err := enc.Encode(s.papers[name]); err != nil {
			return nil, err
		}
	}
	for _, number := range slices.Sorted(maps.Keys(s.books)) {
		if err := enc.Encode(s.books[number]); err != nil {
			return nil, err
		}
	}
	return out.Bytes(), nil
}

// after gives the state of the output once a run is through: the books of this run, the books of hulls that it had
// nothing to do with, and the papers that it saw.
func (s *state) after(job Job, began int64, papers *papers, made []volume) *state {
	next := newState()
	next.began = began
	if len(job.Hulls) < len(job.Yard.Hulls) {
		maps.Copy(next.papers, s.papers)
	}
	maps.Copy(next.papers, papers.seen)
	for _, h := range job.Yard.Hulls {
		if w, known := s.books[h.Number]; known {
			next.books[h.Number] = w
		}
	}
	for _, w := range made {
		next.books[w.Line.Number] = w
	}
	return next
}
