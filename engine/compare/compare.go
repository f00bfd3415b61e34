// Package compare holds two technical files against each other: two issues of one, two hulls, or a hull and its design.
// It knows only the machine copies that every file carries, results.json and tables/values.csv, so that files of many
// years, and of other versions of the program, can be compared.
//
//   - Question: what must a surveyor look at again?
//   - In: the machine copies of two files.
//   - Out: changes of records, results, checks and papers, in groups.
//   - Source: own.
//
// The way through:
//
//	machine copies -> Side -> Between -> Comparison, grouped by what a surveyor must look at again
package compare

// Comparison is what changed from an old file to a new one.
type Comparison struct {
	Old    Head    `json:"old"`
	New    Head    `json:"new"`
	Counts Counts  `json:"counts"`
	Groups []Group `json:"groups"` // those in which something changed, in the order of groups
}

// Head says of which boat and issue a side is, and how it stands.
type Head struct {
	Hull     string `json:"hull"`
	Title    string `json:"title,omitempty"`
	Design   string `json:"design,omitempty"`
	Builder  string `json:"builder,omitempty"`
	Invented bool   `json:"invented,omitempty"` // made up for demonstration
	Issue    int    `json:"issue,omitempty"`
	Date     string `json:"date,omitempty"`
	Standing string `json:"standing"`
	Version  string `json:"version,omitempty"` // of the program
}

// Counts is how much changed.
type Counts struct {
	Records   int `json:"records"`
	Results   int `json:"results"`
	Standings int `json:"standings"`
	Findings  int `json:"findings"`
	Documents int `json:"documents"`
}

// Any reports whether anything changed.
func (c Counts) Any() bool { return c != Counts{} }

// Group is what changed in one part of the file, and what to look at again because of it.
type Group struct {
	Key       string     `json:"key"`
	Name      string     `json:"name"`
	Again     string     `json:"look_again"`
	Records   []Change   `json:"records"`
	Results   []Change   `json:"results"`
	Standings []Standing `json:"standings"`
	Findings  []Told     `json:"findings"`
	Documents []Paper    `json:"documents"`
}

// How something changed.
const (
	Changed = "changed"
	Added   = "added"
	Gone    = "gone"
)

// Change is one value of a record, or one result. A number that changed says by how much.
type Change struct {
	How     string   `json:"how"`
	What    string   `json:"what"` // record key, or the path of a result
	Old     string   `json:"old,omitempty"`
	New     string   `json:"new,omitempty"`
	Unit    string   `json:"unit,omitempty"`
	By      *float64 `json:"by,omitempty"`
	Percent *float64 `json:"percent,omitempty"` // of the old value
	At      string   `json:"at,omitempty"`      // record line, in the new file where it stands there
}

// Standing is a check with another outcome than before.
type Standing struct {
	Rule    string `json:"rule"`
	Subject string `json:"subject"`
	Old     string `json:"old,omitempty"` // empty: it was not asked
	New     string `json:"new,omitempty"` // empty: it is not asked any more
	Says    string `json:"says"`          // of the new file; of the old one where there is none
}

// Told is a finding that appeared, went, or reads otherwise.
type Told struct {
	How     string `json:"how"`
	Kind    string `json:"kind"`
	Rule    string `json:"rule"`
	Subject string `json:"subject"`
	Old     string `json:"old,omitempty"`
	New     string `json:"new,omitempty"`
}

// Paper is a document that came, went, or is another file than before.
type Paper struct {
	How   string `json:"how"`
	Key   string `json:"key"`
	Title string `json:"title"`
	Says  string `json:"says"`
}

// Between compares two sides. Both are only read.
func Between(old, new *Side) Comparison {
	c := Comparison{Old: old.Head, New: new.Head}
	by := map[string]*Group{}
	at := func(key string) *Group {
		if by[key] == nil {
			by[key] = &Group{Key: key, Records: []Change{}, Results: []Change{}, Standings: []Standing{}, Findings: []Told{}, Documents: []Paper{}}
		}
		return by[key]
	}
	for _, r := range records(old, new) {
		g := at(groupOfRecord(r.What))
		g.Records = append(g.Records, r)
		c.Counts.Records++
	}
	for _, r := range results(old, new) {
		g := at(groupOfResult(r.What))
		g.Results = append(g.Results, r)
		c.Counts.Results++
	}
	for _, s := range standings(old, new) {
		g := at(groupOfSubject(s.Subject, s.Rule))
		g.Standings = append(g.Standings, s)
		c.Counts.Standings++
	}
	for _, f := range findings(old, new) {
		g := at(groupOfSubject(f.Subject, f.Rule))
		g.Findings = append(g.Findings, f)
		c.Counts.Findings++
	}
	for _, d := range documents(old, new) {
		g := at("documents")
		g.Documents = append(g.Documents, d)
		c.Counts.Documents++
	}
	c.Groups = []Group{}
	for _, known := range groups() {
		if g := by[known.Key]; g != nil {
			g.Name, g.Again = known.Name, known.Again
			c.Groups = append(c.Groups, *g)
		}
	}
	return c
}
