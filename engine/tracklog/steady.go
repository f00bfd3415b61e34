package tracklog

import "math"

// The rule for a steady stretch. All of it is practice, and a page that shows a proposal shows the rule.
const (
	steadyBin     = 5.0  // seconds over which samples are averaged first
	SteadyLeast   = 60.0 // seconds that a stretch must last
	SteadyKnots   = 1.0  // knots by which the averages may differ
	SteadyPart    = 0.05 // or this part of their mean, whichever is more
	SteadyDegrees = 12.0 // degrees by which the direction may differ
	SteadySlowest = 1.5  // knots below which the boat is not under way
	mostSteady    = 500  // stretches that are kept of one log
)

// Steady is a stretch of a log in which speed and direction hardly changed.
type Steady struct {
	From, To float64
	At       int // line of its first sample
	Speed    Measure
	Toward   Direction
	RPM      Measure
	Fuel     Measure
	Trim     Measure
}

// Seconds is how long the stretch is.
func (s *Steady) Seconds() float64 { return s.To - s.From }

// bin is the mean of a few seconds.
type bin struct {
	from, to               float64
	at                     int
	speed, rpm, fuel, trim Measure
	toward                 Direction
}

// finder looks for steady stretches. It holds no more than a minute of bins: once a stretch is long enough only its
// limits matter.
type finder struct {
	open  bin
	any   bool
	queue []bin
	run   Steady
	long  bool // run is a stretch that is long enough, and the queue is empty
	found []Steady
	more  int
}

func (f *finder) take(s *Sample) {
	if s.Break || !known(s.Speed) {
		f.stop()
	}
	if !known(s.Speed) {
		return
	}
	if f.any && s.Time-f.open.from >= steadyBin {
		f.shut()
	}
	if !f.any {
		f.open, f.any = bin{from: s.Time, at: s.Line}, true
	}
	b := &f.open
	b.to = s.Time
	b.speed.take(s.Speed)
	b.toward.take(s.toward())
	b.rpm.take(s.RPM)
	b.fuel.take(s.Fuel)
	b.trim.take(s.Trim)
}

// stop ends what is open at a gap and at the end of the log.
func (f *finder) stop() {
	if f.any {
		f.shut()
	}
	f.emit()
	f.queue = f.queue[:0]
}

// shut closes a bin and sees whether the stretch still holds with it.
func (f *finder) shut() {
	b := f.open
	f.any = false
	if f.long {
		if f.fits(f.run, b) {
			f.run.join(b)
			return
		}
		f.emit()
	}
	f.queue = append(f.queue, b)
	for len(f.queue) > 1 && !f.holds() {
		f.queue = append(f.queue[:0], f.queue[1:]...)
	}
	if f.queue[len(f.queue)-1].to-f.queue[0].from >= SteadyLeast-steadyBin/2 && f.holds() {
		f.run = f.whole()
		f.long = f.run.Speed.Mean >= SteadySlowest
		f.queue = f.queue[:0]
	}
}

// whole joins the bins of the queue.
func (f *finder) whole() Steady {
	s := Steady{From: f.queue[0].from, At: f.queue[0].at}
	for _, b := range f.queue {
		s.join(b)
	}
	return s
}

func (f *finder) holds() bool {
	s := f.whole()
	return s.calm()
}

func (f *finder) fits(s Steady, b bin) bool {
	s.join(b)
	return s.calm()
}

// join adds the mean of a bin.
func (s *Steady) join(b bin) {
	s.To = b.to
	s.Speed.take(b.speed.Mean)
	if b.toward.Has() {
		s.Toward.take(b.toward.Mean())
	}
	take := func(m *Measure, of Measure) {
		if of.Has() {
			m.take(of.Mean)
		}
	}
	take(&s.RPM, b.rpm)
	take(&s.Fuel, b.fuel)
	take(&s.Trim, b.trim)
}

// calm reports whether speed and direction stay within the rule.
func (s *Steady) calm() bool {
	return s.Speed.Spread() <= math.Max(SteadyKnots, SteadyPart*s.Speed.Mean) && s.Toward.Spread() <= SteadyDegrees
}

// emit keeps the stretch that has ended.
func (f *finder) emit() {
	if !f.long {
		return
	}
	f.long = false
	if len(f.found) == mostSteady {
		f.more++
		return
	}
	f.found = append(f.found, f.run)
}
