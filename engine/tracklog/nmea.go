package tracklog

import (
	"bytes"
	"errors"
	"io"
)

// Fewest fields of a sentence behind its name. RMC had eleven before its mode was added, VTG eight, GGA has fourteen.
// Source: NMEA 0183 as described on the field lists of cypress.bc.ca (RMC) and Hochschule Augsburg (read).
const (
	rmcFields = 11
	vtgFields = 8
	ggaFields = 14
	mostField = 24
)

// nmea reads NMEA 0183. RMC carries time, day, position, speed and course; VTG speed and course; GGA time and position.
// Sentences of one moment become one sample: RMC or GGA with another time begins the next. Only RMC carries a day, so what
// comes before the first is told and not used.
type nmea struct {
	*told
	out   func(*Sample)
	s     Sample
	open  bool    // s is being put together
	tod   float64 // time of day of s in seconds
	day   float64 // start of the day of the last RMC, in seconds since 1970
	dated bool
	field [mostField][]byte
	n     int // fields behind the name
	read  int // sentences that were used
}

// readNMEA hands every moment of the log to out and gives the number of lines and of sentences that were used.
// What stands before the "$" is noise of a recorder and is passed over.
func readNMEA(r io.Reader, t *told, out func(*Sample)) (count, used int, err error) {
	m := &nmea{told: t, out: out}
	in := newLines(r, t)
	for {
		line, err := in.next()
		if errors.Is(err, io.EOF) {
			m.flush()
			return in.at - 1, m.read, nil
		}
		if err != nil {
			return in.at, m.read, err
		}
		m.line(line, in)
	}
}

// line takes one line: what stands between its last "$" and its checksum.
func (m *nmea) line(line []byte, in *lines) {
	from := bytes.LastIndexByte(line, '$')
	if from < 0 {
		return
	}
	body := line[from+1:]
	star := bytes.IndexByte(body, '*')
	kind := kindOf(body)
	if kind == 0 {
		return
	}
	switch {
	case star < 0 && in.cut:
		m.add(CutOff, in.at, body)
		return
	case star < 0:
		m.add(NoChecksum, in.at, body)
		return
	}
	want, ok := hexByte(body[star+1:])
	if !ok && in.cut {
		m.add(CutOff, in.at, body)
		return
	}
	if !ok || want != checksum(body[:star]) {
		m.add(BadChecksum, in.at, body)
		return
	}
	m.split(body[:star])
	m.sentence(kind, in.at, body)
}

// kindOf gives the last letter of the three sentences that are used, nought for all others. Any talker will do.
func kindOf(body []byte) byte {
	if len(body) < 6 || body[5] != ',' {
		return 0
	}
	switch {
	case body[2] == 'R' && body[3] == 'M' && body[4] == 'C':
		return 'C'
	case body[2] == 'V' && body[3] == 'T' && body[4] == 'G':
		return 'G'
	case body[2] == 'G' && body[3] == 'G' && body[4] == 'A':
		return 'A'
	}
	return 0
}

// checksum is the exclusive or of all bytes between "$" and "*".
func checksum(body []byte) byte {
	sum := byte(0)
	for _, c := range body {
		sum ^= c
	}
	return sum
}

func hexByte(b []byte) (byte, bool) {
	if len(b) < 2 {
		return 0, false
	}
	high, ok1 := hexDigit(b[0])
	low, ok2 := hexDigit(b[1])
	return high<<4 | low, ok1 && ok2
}

func hexDigit(c byte) (byte, bool) {
	switch {
	case c >= '0' && c <= '9':
		return c - '0', true
	case c >= 'A' && c <= 'F':
		return c - 'A' + 10, true
	case c >= 'a' && c <= 'f':
		return c - 'a' + 10, true
	}
	return 0, false
}

// split cuts a sentence at its commas; field 1 is the first behind the name, as the field lists count.
func (m *nmea) split(body []byte) {
	m.n = -1
	for m.n < mostField-2 {
		cut := bytes.IndexByte(body, ',')
		m.n++
		if cut < 0 {
			m.field[m.n] = body
			return
		}
		m.field[m.n] = body[:cut]
		body = body[cut+1:]
	}
}

// sentence takes one sentence whose checksum is right. A damaged one may have that too, so fields are counted and read.
func (m *nmea) sentence(kind byte, line int, body []byte) {
	if m.n < fewest(kind) {
		m.add(ShortFields, line, body)
		return
	}
	ok := false
	switch kind {
	case 'C':
		ok = m.rmc(line)
	case 'G':
		ok = m.vtg(line)
	case 'A':
		ok = m.gga(line)
	}
	if !ok {
		m.add(BadFields, line, body)
	}
}

func fewest(kind byte) int {
	switch kind {
	case 'C':
		return rmcFields
	case 'G':
		return vtgFields
	}
	return ggaFields
}

// begin opens the sample of a moment, or gives the one that is open where its time is the same.
func (m *nmea) begin(tod float64, line int) *Sample {
	if m.open && tod == m.tod {
		return &m.s
	}
	m.flush()
	m.s, m.open, m.tod = blank(), true, tod
	m.s.Line = line
	return &m.s
}

// flush hands the open sample on.
func (m *nmea) flush() {
	if m.open {
		m.s.Time = m.day + m.tod
		m.out(&m.s)
	}
	m.open = false
}

// rmc: 1 time, 2 status, 3-4 latitude, 5-6 longitude, 7 speed in knots, 8 course, 9 day, 12 mode.
func (m *nmea) rmc(line int) bool {
	f := &m.field
	if !is(f[2], 'A') || m.n >= 12 && is(f[12], 'N') {
		m.add(NoFix, line, f[0])
		return true
	}
	tod, ok := timeOfDay(f[1])
	if !ok || !m.date(f[9]) {
		return false
	}
	lat, lon, okPosition := position(f[3], f[4], f[5], f[6])
	speed, okSpeed := optional(f[7])
	course, okCourse := optional(f[8])
	if !okPosition || !okSpeed || !okCourse {
		return false
	}
	s := m.begin(tod, line)
	s.Lat, s.Lon, s.Speed, s.Course = lat, lon, speed, course
	m.read++
	return true
}

// date takes a day as ddmmyy. Years from 80 on are of the last century: the system is not older.
func (m *nmea) date(b []byte) bool {
	if len(b) != 6 {
		return false
	}
	day, ok1 := twoDigits(b)
	month, ok2 := twoDigits(b[2:])
	year, ok3 := twoDigits(b[4:])
	if year >= 80 {
		year -= 100
	}
	days, ok4 := civil(2000+year, month, day)
	if !(ok1 && ok2 && ok3 && ok4) {
		return false
	}
	if start := float64(days) * daySeconds; start != m.day {
		m.flushBefore(start)
	}
	m.dated = true
	return true
}

// flushBefore closes what belongs to the day before.
func (m *nmea) flushBefore(start float64) {
	m.flush()
	m.day = start
}

// vtg: 1 course true, 5 speed in knots, 9 mode. It has no time and belongs to the moment that is open; what RMC says
// of the same moment stands.
func (m *nmea) vtg(line int) bool {
	f := &m.field
	if m.n >= 9 && is(f[9], 'N') {
		m.add(NoFix, line, f[0])
		return true
	}
	course, ok1 := optional(f[1])
	speed, ok2 := optional(f[5])
	if !ok1 || !ok2 {
		return false
	}
	m.read++
	if !m.open {
		return true
	}
	if !known(m.s.Speed) {
		m.s.Speed = speed
	}
	if !known(m.s.Course) {
		m.s.Course = course
	}
	return true
}

// gga: 1 time, 2-3 latitude, 4-5 longitude, 6 quality, nought for none.
func (m *nmea) gga(line int) bool {
	f := &m.field
	if is(f[6], '0') || len(f[6]) == 0 {
		m.add(NoFix, line, f[0])
		return true
	}
	if !m.dated {
		m.add(NoDay, line, f[0])
		return true
	}
	tod, ok := timeOfDay(f[1])
	lat, lon, okPosition := position(f[2], f[3], f[4], f[5])
	if !ok || !okPosition {
		return false
	}
	const noon = daySeconds / 2
	if m.open && tod < m.tod-noon { // past midnight, and RMC has not said so yet
		m.flush()
		m.day += daySeconds
	}
	s := m.begin(tod, line)
	if !s.placed() {
		s.Lat, s.Lon = lat, lon
	}
	m.read++
	return true
}
