package tracklog

import "math"

const (
	usualGap  = 5.0    // longest time between samples that is no gap, where the record names none (practice)
	leap      = 3600.0 // a step of the clock that the next sample must confirm
	mostSpeed = 120.0  // knots beyond which a figure is no speed of a boat
	mostStray = 30.0   // metres by which a position may be off beside the way made
)

// order lets samples through whose time goes forward. It marks gaps, drops what goes back or repeats, and holds a sample
// whose clock leaps until the next one confirms it: a single wrong moment must not shut out the rest of the log.
type order struct {
	*told
	out  func(*Sample)
	gap  float64
	last Sample
	any  bool
	held Sample
	wait bool // held is a sample that waits to be confirmed
}

func (o *order) take(s *Sample) {
	if !known(s.Time) {
		o.add(NoTime, s.Line, nil)
		return
	}
	o.clean(s)
	if !o.any && !o.wait {
		o.held, o.wait = *s, true
		return
	}
	if o.wait {
		o.decide(s)
	}
	if o.wait {
		return
	}
	o.step(s)
}

// decide is what the sample after one that leapt says about it.
func (o *order) decide(s *Sample) {
	ahead := s.Time - o.held.Time
	if math.Abs(ahead) <= leap {
		o.wait = false
		held := o.held
		o.pass(&held)
		return
	}
	o.add(Spikes, o.held.Line, nil)
	o.wait = ahead > leap || !o.any
	if o.wait {
		o.held = *s
	}
}

// step takes a sample that follows on the last.
func (o *order) step(s *Sample) {
	ahead := s.Time - o.last.Time
	switch {
	case ahead == 0:
		o.add(Repeated, s.Line, nil)
	case ahead < 0:
		o.add(Backwards, s.Line, nil)
	case ahead > leap:
		o.held, o.wait = *s, true
	default:
		o.pass(s)
	}
}

// pass hands a sample on, with its gap marked.
func (o *order) pass(s *Sample) {
	if o.any {
		if s.Break {
			o.add(Segments, s.Line, nil)
		}
		if s.Time-o.last.Time > o.gap {
			o.add(Gaps, s.Line, nil)
			s.Break = true
		}
		o.moved(s)
	}
	o.any, o.last = true, *s
	o.out(s)
}

// end passes on what still waits, where it is all there is.
func (o *order) end() {
	if !o.wait {
		return
	}
	o.wait = false
	if o.any {
		o.add(Spikes, o.held.Line, nil)
		return
	}
	held := o.held
	o.pass(&held)
}

// clean takes away values that cannot be.
func (o *order) clean(s *Sample) {
	n := blank()
	if s.Lat > 90 || s.Lat < -90 || s.Lon > 360 || s.Lon < -180 {
		o.add(BadPositions, s.Line, nil)
		s.Lat, s.Lon = n.Lat, n.Lon
	}
	if s.Lon > 180 {
		s.Lon -= 360
	}
	if s.Speed > mostSpeed || s.Speed < 0 {
		o.add(TooFast, s.Line, nil)
		s.Speed = n.Speed
	}
	if s.Course < 0 || s.Course > 360 {
		s.Course = n.Course
	}
}

// moved looks at the way from the last sample: a jump loses its position, and a log that has no speed gets that between
// two positions.
func (o *order) moved(s *Sample) {
	if s.Break || !s.placed() || !o.last.placed() {
		return
	}
	way, seconds := near(o.last.Lat, o.last.Lon, s.Lat, s.Lon), s.Time-o.last.Time
	if way > mostStray+float64(mostSpeed*metresPerSecond*seconds) {
		o.add(Jumps, s.Line, nil)
		n := blank()
		s.Lat, s.Lon = n.Lat, n.Lon
		return
	}
	if kn := way / seconds / metresPerSecond; !known(s.Speed) && seconds > 0 && kn <= mostSpeed {
		s.Speed, s.Derived = kn, true
		if !known(s.Course) && way > 0 {
			s.Course = Bearing(o.last.Lat, o.last.Lon, s.Lat, s.Lon)
		}
	}
}
