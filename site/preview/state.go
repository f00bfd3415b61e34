package preview

import (
	"crypto/rand"
	"fmt"
	"net/http"
	"sync"
	"time"

	"hullfile/engine/finding"
)

// Outcome is how the last reading of the records ended. Without faults and error the pages are those of the records.
type Outcome struct {
	Faults finding.Faults // what is wrong in the records
	Err    error          // what else kept the pages from being made
	Pages  string         // the list of hashes of all pages

	making bool // before the first: the pages are being made
}

func (o Outcome) sound() bool { return len(o.Faults) == 0 && o.Err == nil && !o.making }

// mostWaiting is how many browser tabs may wait for news; a page that opens more is none of ours.
const mostWaiting = 64

// state is what the pages are made of now. Every change has a name of its own, also across runs at the same port, so that
// a page knows by comparing whether it is behind.
type state struct {
	mu      sync.Mutex
	run     string
	turn    int
	outcome Outcome
	changed chan struct{} // closed at the next change
	waiting int
}

func newState() *state {
	return &state{run: rand.Text(), outcome: Outcome{making: true}, changed: make(chan struct{})}
}

// Show makes an outcome known to every page that is open. Good pages that are the same as before are no news.
func (s *Server) Show(o Outcome) {
	s.state.mu.Lock()
	defer s.state.mu.Unlock()
	if before := s.state.outcome; before.sound() && o.sound() && o.Pages == before.Pages {
		return
	}
	s.state.turn++
	s.state.outcome = o
	close(s.state.changed)
	s.state.changed = make(chan struct{})
}

func (s *state) name() string {
	name, _, _ := s.now()
	return name
}

// now gives the name of the state, the outcome, and what is closed when they are no longer true.
func (s *state) now() (name string, o Outcome, changed <-chan struct{}) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return fmt.Sprintf("%s-%d", s.run, s.turn), s.outcome, s.changed
}

// enter takes a place among those who wait, while there is one.
func (s *state) enter() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.waiting >= mostWaiting {
		return false
	}
	s.waiting++
	return true
}

func (s *state) leave() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.waiting--
}

// events tells a page the state now and each time it changes, as server-sent events named "sound" or "faults", at first "making". A line
// now and then finds out whether anybody still listens.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	if !s.state.enter() {
		http.Error(w, "too many pages wait for news", http.StatusServiceUnavailable)
		return
	}
	defer s.state.leave()
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	out := http.NewResponseController(w)
	pulse := time.NewTicker(20 * time.Second)
	defer pulse.Stop()
	for told := ""; ; {
		name, o, changed := s.state.now()
		word := ": still here\n\n"
		if name != told {
			word = fmt.Sprintf("event: %s\ndata: %s\n\n", o.word(), name)
		}
		if _, err := w.Write([]byte(word)); err != nil || out.Flush() != nil {
			return
		}
		told = name
		select {
		case <-r.Context().Done():
			return
		case <-changed:
		case <-pulse.C:
		}
	}
}

func (o Outcome) word() string {
	switch {
	case o.making:
		return "making"
	case o.sound():
		return "sound"
	}
	return "faults"
}
