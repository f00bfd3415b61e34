package tracklog

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Result is all logs of one hull.
type Result struct {
	Logs        []Log // in the order of the records
	Runs        []Run // those that name a log, in the order of the records
	Moves       []Move
	Strays      []string // files in the folder logs that no record names, relative to the yard folder
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Log is one log with what was found in it.
type Log struct {
	Trial   *record.Trial
	Record  *record.Log
	Path    string // relative to the yard folder, forward slashes; empty where it was not opened
	Out     string // path inside the technical file, e.g. logs/T1-L1.nmea
	Present bool
	Why     string // why it is not there, or why not all of it could be read
	Bytes   int64
	SHA256  string
	Matches bool // it is there, and the hash on record agrees or none is on record
	Report  Report
}

// Subject is the log in the words of checks and findings.
func (l *Log) Subject() string { return "trial " + l.Trial.ID + " log " + l.Record.ID }

// Run is one run of a trial that lies in a log.
type Run struct {
	Trial  *record.Trial
	Record *record.Run
	Place
	Held []Held
}

// Place is a stretch of a log that a record names.
type Place struct {
	Log    int      // index into Logs, -1 where the log is not on record
	Window *Window  // nil without both moments
	Beside []Beside // the same stretch in the other logs of the trial
	Why    string   // why nothing is taken from the log
}

// Beside is a stretch of another log.
type Beside struct {
	Log    int
	Window *Window
}

// Subject is the run in the words of checks and findings.
func (r *Run) Subject() string { return "trial " + r.Trial.ID + " run " + r.Record.ID }

// Held is one value of a run as it is written and as the log has it.
type Held struct {
	Log         int // index into Logs
	At          int // line of the log where the window begins
	Name        string
	Sign        string
	Written     float64
	HasWritten  bool
	Mean        float64 // of the log
	Least, Most float64 // of single samples in the window
	N           int
	Decimals    int  // with which the value is shown
	Taken       bool // not written, and taken from the log
	Agrees      bool // written and within what the log shows
}

// Move is the window of a manoeuvre, for the trade that reduces it.
type Move struct {
	Trial *record.Trial
	Kind  string // "acceleration", "turning", "stopping"
	ID    string
	Place
}

// Find gives the window of a manoeuvre, nil where it has none.
func (r *Result) Find(t *record.Trial, kind, id string) *Move {
	for i := range r.Moves {
		m := &r.Moves[i]
		if m.Trial.ID == t.ID && m.Kind == kind && m.ID == id {
			return m
		}
	}
	return nil
}
