package site

import (
	"encoding/json"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/site/results"
)

// line is what the register and the report say of one hull. It is all that is kept of a hull once its book is closed,
// in memory as in the state of the output.
type line struct {
	Number   string               `json:"number"`
	Title    string               `json:"title,omitempty"`
	Design   string               `json:"design,omitempty"`
	State    string               `json:"state,omitempty"`
	Issue    string               `json:"issue,omitempty"`
	Builder  string               `json:"builder,omitempty"`
	Invented bool                 `json:"invented,omitempty"`
	Standing finding.Standing     `json:"standing"`
	Counts   map[finding.Kind]int `json:"counts"`
	Weighed  *weighed             `json:"weighed,omitempty"` // the last weighing
	Least    *least               `json:"least,omitempty"`   // the panel with the least margin
	Sums     string               `json:"sums"`
	Root     string               `json:"root"`
	Pages    int                  `json:"pages"`
	Files    int                  `json:"files"`
	Bytes    int64                `json:"bytes"`
}

// weighed is a weighing beside what was reckoned for it, kg.
type weighed struct {
	Key      string  `json:"key"`
	Mass     float64 `json:"mass"`
	Reckoned float64 `json:"reckoned"`
}

// least is a panel and what it has above what is needed, as a part of what is needed.
type least struct {
	Panel  string  `json:"panel"`
	Margin float64 `json:"margin"`
}

func (b *book) line(sums string) line {
	h := b.hull
	n := line{
		Number: h.Number, Title: h.Title.V, Design: h.Design.V, State: h.Identity.State.V, Builder: b.dossier.Builder.Name.V, Invented: b.dossier.Builder.Invented.V,
		Standing: b.dossier.Standing(), Counts: tellKinds(b.findings), Sums: sums, Root: b.root, Pages: b.pages, Files: len(b.folder.sums), Bytes: b.folder.bytes,
	}
	if h.Issue.Number.Set {
		n.Issue = strconv.Itoa(h.Issue.Number.V)
	}
	for i := range b.dossier.Weight.Weighings {
		w := &b.dossier.Weight.Weighings[i]
		n.weigh(w.Record.ID, float64(w.Mass), float64(w.Reckoned.Mass))
	}
	for i := range b.dossier.Structure.Panels {
		if p := &b.dossier.Structure.Panels[i]; p.Standing != finding.NotShown {
			n.panel(p.Record.ID, float64(p.Margin))
		}
	}
	n.copied()
	return n
}

// copied copies the texts of the line: those of a record are cut out of the text of the whole file, which they would hold in memory.
func (n *line) copied() {
	all := []*string{&n.Title, &n.Design, &n.State, &n.Builder}
	if n.Weighed != nil {
		all = append(all, &n.Weighed.Key)
	}
	if n.Least != nil {
		all = append(all, &n.Least.Panel)
	}
	for _, text := range all {
		*text = strings.Clone(*text)
	}
}

// weigh takes a weighing; the last one counts.
func (n *line) weigh(key string, mass, reckoned float64) {
	if mass > 0 && reckoned > 0 {
		n.Weighed = &weighed{key, results.Round(mass), results.Round(reckoned)}
	}
}

// panel takes a panel; the one with the least margin counts, the first of several.
func (n *line) panel(key string, margin float64) {
	if margin = results.Round(margin); n.Least == nil || margin < n.Least.Margin {
		n.Least = &least{key, margin}
	}
}

// resultsHead is what the register needs of a file that an earlier run wrote.
type resultsHead struct {
	Form     int                  `json:"form"`
	Hull     results.Head         `json:"hull"`
	Invented bool                 `json:"invented"`
	Standing finding.Standing     `json:"standing"`
	Counts   map[finding.Kind]int `json:"counts"`
	Panels   []struct {
		Key    string   `json:"key"`
		Margin *float64 `json:"margin"`
	} `json:"panels"`
	Weight struct {
		Weighings []struct {
			Key      string  `json:"key"`
			Mass     float64 `json:"mass_kg"`
			Reckoned struct {
				Mass float64 `json:"mass_kg"`
			} `json:"reckoned"`
		} `json:"weighings"`
	} `json:"weight"`
}

// earlier reads what the file of a hull that lies there says of itself.
func earlier(dir, number string) (line, bool) {
	from := document.Plain(os.DirFS(dir))
	text, err := fs.ReadFile(from, results.Name)
	if err != nil {
		return line{}, false
	}
	sums, err := fs.ReadFile(from, sumsName)
	if err != nil {
		return line{}, false
	}
	var head resultsHead
	if json.Unmarshal(text, &head) != nil || head.Form != results.Form {
		return line{}, false
	}
	return head.line(number, hashOf(sums)), true
}

func (head *resultsHead) line(number, sums string) line {
	n := line{
		Number: number, Title: head.Hull.Title, Design: head.Hull.Design, State: head.Hull.State, Builder: head.Hull.Builder, Invented: head.Invented,
		Standing: head.Standing, Counts: head.Counts, Sums: sums,
	}
	if head.Hull.Issue > 0 {
		n.Issue = strconv.Itoa(head.Hull.Issue)
	}
	for _, w := range head.Weight.Weighings {
		n.weigh(w.Key, w.Mass, w.Reckoned.Mass)
	}
	for _, p := range head.Panels {
		if p.Margin != nil {
			n.panel(p.Key, *p.Margin)
		}
	}
	return n
}
