package seal

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"hullfile/engine/finding"
)

// Given is what a reader brings from elsewhere to hold a file against. Either may be missing; what rests on it is then
// not shown.
type Given struct {
	Signers *Signers
	Root    string // the 64 digits that somebody kept on paper
}

// Report is what was found out about a technical file.
type Report struct {
	Hull    string          `json:"hull"`
	Issue   int             `json:"issue,omitempty"`
	Issued  string          `json:"issued,omitempty"`
	Version string          `json:"version,omitempty"` // of the program that made it
	Sums    string          `json:"sums"`              // hash of SHA256SUMS
	Root    string          `json:"root"`              // hash of contents.sha256
	Files   Files           `json:"files"`
	Seals   []Seal          `json:"seals"`
	Checks  []finding.Check `json:"checks"`
}

// Standing is that of all checks together.
func (r *Report) Standing() finding.Standing {
	var all []finding.Standing
	for _, c := range r.Checks {
		all = append(all, c.Standing)
	}
	return finding.Worst(all...)
}

// ErrNoFile is met by the error of Verify where the folder is no technical file.
var ErrNoFile = errors.New("it is no technical file of a hull")

// Verify holds a technical file against its own lists, its seals, and what the reader brings. The error says why nothing
// could be found out; what is wrong with the file is in the report.
func Verify(ctx context.Context, from fs.FS, given Given) (*Report, error) {
	text, err := readFile(from, SumsName, mostSums)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%w: %s is not in it", ErrNoFile, SumsName)
	}
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", SumsName, err)
	}
	r := &Report{Sums: hashOf(text)}
	r.facts(from)
	list, wrong := ReadSums(text)
	if r.Files, err = hold(ctx, from, list); err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	r.Checks = append(r.Checks, r.filesCheck(wrong))
	r.Checks = append(r.Checks, r.contents(from, list), r.held(given.Root))
	r.seals(from, given.Signers)
	return r, nil
}

// facts reads of which hull and issue the file is. What cannot be read is left empty, and the seals then tell.
func (r *Report) facts(from fs.FS) {
	text, err := readFile(from, ResultsName, mostSums)
	if err != nil {
		return
	}
	var head struct {
		Hull struct {
			Number string `json:"number"`
			Issue  int    `json:"issue"`
			Date   string `json:"date"`
		} `json:"hull"`
		Version string `json:"version"`
	}
	if json.Unmarshal(text, &head) == nil {
		r.Hull, r.Issue, r.Issued, r.Version = head.Hull.Number, head.Hull.Issue, head.Hull.Date, head.Version
	}
}

func (r *Report) filesCheck(wrong []string) finding.Check {
	c := finding.Check{Rule: "files", Subject: "every file", Asks: "each file is there once and has the hash that " + SumsName + " lists, and no other file is there"}
	n := map[string]int{}
	for _, t := range r.Files.Troubles {
		n[t.Kind]++
	}
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("%d files are as listed; none is missing, none was added", r.Files.Listed)
	if len(r.Files.Troubles) > 0 {
		c.Standing, c.Settle = finding.Short, "ask the builder for the file again, and hold that one against the root on paper"
		var parts []string
		for _, kind := range []string{Altered, Missing, Added, Unreadable} {
			if n[kind] > 0 {
				parts = append(parts, fmt.Sprintf("%d %s", n[kind], kind))
			}
		}
		c.Says = fmt.Sprintf("of %d files listed: %s", r.Files.Listed, strings.Join(parts, ", "))
	}
	if len(wrong) > 0 {
		c.Standing = finding.Short
		c.Says += "; " + SumsName + " is not as it was written: " + strings.Join(atMost(wrong, 5), "; ")
	}
	return c
}

// contents holds the list whose hash is the root against the list of all files, and the cover against the root.
func (r *Report) contents(from fs.FS, list []Listed) finding.Check {
	c := finding.Check{Rule: "root", Subject: ContentsName, Asks: "the list of contents agrees with " + SumsName + ", and the cover prints its hash", Standing: finding.Short}
	text, err := readFile(from, ContentsName, mostSums)
	if err != nil {
		c.Says = ContentsName + " is not there or cannot be read"
		return c
	}
	r.Root = hashOf(text)
	contents, wrong := ReadSums(text)
	all := map[Listed]bool{}
	for _, l := range list {
		all[l] = true
	}
	for _, l := range contents {
		if !all[l] {
			wrong = append(wrong, fmt.Sprintf("it lists another hash of %q than %s", l.Path, SumsName))
		}
	}
	if cover, err := readFile(from, coverName, mostSums); err != nil || !strings.Contains(string(cover), r.Root) {
		wrong = append(wrong, "the cover prints another root")
	}
	if len(wrong) > 0 {
		c.Says = strings.Join(atMost(wrong, 5), "; ")
		return c
	}
	c.Standing, c.Says = finding.Met, fmt.Sprintf("%d of the files are under the root that the cover prints", len(contents))
	return c
}

// held holds the root against the one that the reader brings.
func (r *Report) held(root string) finding.Check {
	c := finding.Check{Rule: "root-held", Subject: "root", Asks: "the root is the one that was kept elsewhere", Standing: finding.NotShown, Needed: root, Has: r.Root}
	switch {
	case root == "":
		c.Says, c.Settle = "nobody brought a root from elsewhere", "compare the 64 digits with those on paper, or give them with --root"
	case strings.EqualFold(root, r.Root):
		c.Standing, c.Says = finding.Met, "the root is the one that was brought"
	default:
		c.Standing, c.Says, c.Settle = finding.Short, "the root is another than the one that was brought: this is another file, or another issue of it", "ask for the issue with that root"
	}
	return c
}

// atMost keeps the first n and says how many more there are.
func atMost(all []string, n int) []string {
	if len(all) <= n {
		return all
	}
	return append(all[:n:n], fmt.Sprintf("and %d more", len(all)-n))
}
