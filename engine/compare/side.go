package compare

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// Walls of the readers: a larger file is none of ours.
const (
	mostResults = 128 << 20 // bytes
	mostValues  = 64 << 20  // bytes
	form        = 1         // of results.json
)

// Side is one of the two files.
type Side struct {
	Head     Head
	results  map[string]any
	values   []value
	checks   []check
	findings []told
	papers   []paper
}

// value is one line of values.csv.
type value struct{ key, text, at string }

type check struct {
	Rule     string `json:"rule"`
	Subject  string `json:"subject"`
	Standing string `json:"standing"`
	Says     string `json:"says"`
}

type told struct {
	Kind    string `json:"kind"`
	Rule    string `json:"rule"`
	Subject string `json:"subject"`
	Says    string `json:"says"`
}

type paper struct {
	Key     string `json:"key"`
	Title   string `json:"title"`
	Number  string `json:"number"`
	Date    string `json:"date"`
	Present bool   `json:"present"`
	Hash    string `json:"sha256"`
}

// ReadSide reads the machine copies of a file: results.json, and tables/values.csv, which a file of an older version may
// lack. Errors say which of them cannot be read and why.
func ReadSide(results, values []byte) (*Side, error) {
	if len(results) > mostResults || len(values) > mostValues {
		return nil, errors.New("the machine copies are too long to be ours")
	}
	var head struct {
		Form int `json:"form"`
		Hull struct {
			Number  string `json:"number"`
			Title   string `json:"title"`
			Design  string `json:"design"`
			Builder string `json:"builder"`
			Issue   int    `json:"issue"`
			Date    string `json:"date"`
		} `json:"hull"`
		Invented  bool    `json:"invented"`
		Standing  string  `json:"standing"`
		Version   string  `json:"version"`
		Checks    []check `json:"checks"`
		Findings  []told  `json:"findings"`
		Documents []paper `json:"documents"`
	}
	if err := json.Unmarshal(results, &head); err != nil {
		return nil, fmt.Errorf("results.json cannot be read: %w", err)
	}
	if head.Form != form {
		return nil, fmt.Errorf("results.json has the form %d, which this program does not know", head.Form)
	}
	s := &Side{checks: head.Checks, findings: head.Findings, papers: head.Documents}
	s.Head = Head{Hull: head.Hull.Number, Title: head.Hull.Title, Design: head.Hull.Design, Builder: head.Hull.Builder, Invented: head.Invented, Issue: head.Hull.Issue, Date: head.Hull.Date, Standing: head.Standing, Version: head.Version}
	if err := json.Unmarshal(results, &s.results); err != nil {
		return nil, fmt.Errorf("results.json cannot be read: %w", err)
	}
	return s, s.readValues(values)
}

func (s *Side) readValues(text []byte) error {
	r := csv.NewReader(bytes.NewReader(text))
	r.FieldsPerRecord, r.ReuseRecord = 4, true
	seen := map[string]bool{}
	for n := 0; ; n++ {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return fmt.Errorf("tables/values.csv cannot be read: %w", err)
		}
		if n > 0 { // the first line is the head
			if seen[row[0]] {
				return fmt.Errorf("tables/values.csv cannot be read: %q stands in it twice", row[0])
			}
			seen[row[0]] = true
			s.values = append(s.values, value{row[0], row[1], row[2] + ":" + row[3]})
		}
	}
}
