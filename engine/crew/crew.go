// Package crew does work side by side so that a fault of the program in one hand is told and ends nothing else.
//
//   - Question: how is one fault kept from ending a preview, or a run of a thousand hulls?
//   - In: functions, each a piece of work.
//   - Out: a panic in one of them, where the others are waited for, with the place where it arose.
//   - Source: practice of the language, in which a panic that nobody catches ends the process.
package crew

import (
	"fmt"
	"runtime/debug"
	"sync"
)

// Crew does work side by side. The zero value is ready to use.
type Crew struct {
	hands sync.WaitGroup
	mu    sync.Mutex
	fault *Fault
}

// Fault is a panic that was caught, as an error.
type Fault struct {
	What  any
	Where string // the calls that led there
}

func (f *Fault) Error() string {
	return fmt.Sprintf("a fault of the program, not of your records: %v\n\n%s", f.What, f.Where)
}

// Go begins a piece of work.
func (c *Crew) Go(work func()) {
	c.hands.Go(func() {
		if f := Caught(work); f != nil {
			c.mu.Lock()
			defer c.mu.Unlock()
			if c.fault == nil {
				c.fault = f
			}
		}
	})
}

// Wait waits until all is done, and panics with the first Fault where there was one.
func (c *Crew) Wait() {
	c.hands.Wait()
	if c.fault != nil {
		panic(c.fault)
	}
}

// Caught does a piece of work and gives the panic with which it ended, nil where it ended as it should.
func Caught(work func()) (fault *Fault) {
	defer func() {
		switch what := recover().(type) {
		case nil:
		case *Fault: // caught before, by a crew within this one
			fault = what
		default:
			fault = &Fault{What: what, Where: string(debug.Stack())}
		}
	}()
	work()
	return nil
}
