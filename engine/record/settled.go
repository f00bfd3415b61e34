package record

import (
	"reflect"
	"sync"
)

// Settled gives the yard as one that nobody changes any more. What a trade gathers from all of its hulls (Once) is then
// gathered once and not once for every hull, which for a whole fleet would be the square of it.
func (y *Yard) Settled() *Yard {
	settled := *y
	settled.gathered = &gathered{hulls: settled.Hulls}
	return &settled
}

// gathered is what trades gathered from the hulls of a settled yard.
type gathered struct {
	hulls []*Hull
	made  sync.Map // reflect.Type -> func() T
}

// holds reports whether it is about these hulls: a copy of the yard may have been given others.
func (g *gathered) holds(hulls []*Hull) bool {
	return g != nil && len(g.hulls) == len(hulls) && (len(hulls) == 0 || &g.hulls[0] == &hulls[0])
}

// Once gives what gather finds in all hulls of a yard; every T is gathered in one way only. A settled yard keeps it, for
// all goroutines; from one that may still change it is gathered anew each time.
func Once[T any](y *Yard, gather func(hulls []*Hull) T) T {
	if !y.gathered.holds(y.Hulls) {
		return gather(y.Hulls)
	}
	made, _ := y.gathered.made.LoadOrStore(reflect.TypeFor[T](), sync.OnceValue(func() T { return gather(y.Hulls) }))
	return made.(func() T)()
}
