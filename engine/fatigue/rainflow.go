// Package fatigue counts cycles and adds up damage. What comes out is a ranking of where to look, not a life: loads,
// details and corrosion are known too roughly for that.
//
//   - Question: which cycles lie in a record of loads, and how much damage do they add up to?
//   - In: turning points of any quantity; the slope and the level of a detail.
//   - Out: cycles (range and count), Miner's sum, an equivalent range.
//   - Source: counting by ASTM E1049-85, 5.4.4, whose worked example is a test; damage by Miner.
package fatigue

import (
	"fmt"
	"math"
	"sort"
)

// Cycle is one counted range: its size, its mean, and whether it is a whole cycle or half of one.
type Cycle struct {
	Range, Mean float64
	Count       float64 // 1 or 0.5
}

// Counter counts ranges by the rainflow method of ASTM E1049-85 (5.4.4) as values come in, so that a log of any length
// can be counted in little memory: what is kept is the residue of ranges that are not closed yet.
type Counter struct {
	Cycles []Cycle
	stack  []float64
	last   float64 // last value seen
	rising int     // direction of the last change: 1, -1, or 0 before the first
	begun  bool
	each   func(Cycle)
}

// NewCounter makes a counter that hands each cycle to each as it is closed; nil keeps them in Cycles.
func NewCounter(each func(Cycle)) *Counter {
	c := &Counter{each: each}
	if each == nil {
		c.each = func(k Cycle) { c.Cycles = append(c.Cycles, k) }
	}
	return c
}

// Add takes the next value of the history. A value that is no number is an error and is left out.
func (c *Counter) Add(v float64) error {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return fmt.Errorf("value %g in a history", v)
	}
	if !c.begun {
		c.begun, c.last = true, v
		c.stack = append(c.stack, v)
		return nil
	}
	switch {
	case v > c.last && c.rising < 0, v < c.last && c.rising > 0:
		c.reversal(c.last)
	case v == c.last:
		return nil
	}
	if v > c.last {
		c.rising = 1
	} else {
		c.rising = -1
	}
	c.last = v
	return nil
}

// reversal takes a turning point: X is the last range and Y the one before it.
func (c *Counter) reversal(v float64) {
	c.stack = append(c.stack, v)
	for len(c.stack) >= 3 {
		n := len(c.stack)
		x := math.Abs(c.stack[n-1] - c.stack[n-2])
		y := math.Abs(c.stack[n-2] - c.stack[n-3])
		if x < y {
			return
		}
		if n == 3 { // Y holds the starting point
			c.each(cycle(c.stack[0], c.stack[1], 0.5))
			c.stack = append(c.stack[:0], c.stack[1:]...)
			continue
		}
		c.each(cycle(c.stack[n-3], c.stack[n-2], 1))
		c.stack[n-3] = c.stack[n-1]
		c.stack = c.stack[:n-2]
	}
}

// End closes the history: the last value is a turning point, and every range left over is half a cycle.
func (c *Counter) End() {
	if !c.begun {
		return
	}
	if c.rising != 0 {
		c.reversal(c.last)
	}
	for i := 1; i < len(c.stack); i++ {
		c.each(cycle(c.stack[i-1], c.stack[i], 0.5))
	}
	c.stack, c.begun, c.rising = nil, false, 0
}

func cycle(a, b, count float64) Cycle {
	return Cycle{Range: math.Abs(a - b), Mean: (a + b) / 2, Count: count}
}

// Count counts a whole history at once.
// The cycles come by range, the smallest first. Error: a value that is no number.
func Count(history []float64) ([]Cycle, error) {
	c := NewCounter(nil)
	for _, v := range history {
		if err := c.Add(v); err != nil {
			return nil, err
		}
	}
	c.End()
	sort.SliceStable(c.Cycles, func(i, j int) bool { return c.Cycles[i].Range < c.Cycles[j].Range })
	return c.Cycles, nil
}
