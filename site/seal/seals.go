package seal

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// mostSeals is the number of seals above which a folder of seals is not taken for one.
const mostSeals = 200

// Seal is one seal as it lies in a file.
type Seal struct {
	Name      string           `json:"name"` // 1-builder.txt
	Statement Statement        `json:"statement"`
	Who       string           `json:"who,omitempty"` // principals of the list of signers
	Standing  finding.Standing `json:"standing"`
	Says      []string         `json:"says"` // what is wrong or not shown

	text, signature []byte
}

// seals reads the folder of seals, if there is one, and makes a check of each.
func (r *Report) seals(from fs.FS, signers *Signers) {
	entries, err := fs.ReadDir(from, Folder)
	if errors.Is(err, fs.ErrNotExist) || err == nil && len(entries) == 0 {
		r.unsealed(signers)
		return
	}
	if err != nil || len(entries) > mostSeals {
		r.Checks = append(r.Checks, finding.Check{Rule: "seals", Subject: Folder, Asks: "the folder holds seals", Standing: finding.Short, Says: "the folder of seals cannot be read, or holds more than seals"})
		return
	}
	r.strangers(entries)
	for _, name := range statementsIn(entries) {
		r.Seals = append(r.Seals, readSeal(from, name))
	}
	for i := range r.Seals {
		s := &r.Seals[i]
		s.judge(r, signers)
		c := finding.Check{Rule: "seal", Subject: "seal " + s.Name, Asks: "the seal is whole, signed by somebody of the list of signers, and of this file", Standing: s.Standing, Says: strings.Join(s.Says, "; ")}
		if c.Says == "" {
			c.Says = fmt.Sprintf("%s, %s, signed on %s by %s", s.Statement.Name, s.Statement.Role, unit.Day(s.Statement.Date), s.Who)
		}
		r.Checks = append(r.Checks, c)
	}
}

// unsealed tells that nobody signed. Where the reader brought a list of signers, he expects that somebody did.
func (r *Report) unsealed(signers *Signers) {
	c := finding.Check{Rule: "seals", Subject: Folder, Asks: "somebody signed the file", Standing: finding.NotShown, Says: "nobody signed this file", Settle: "ask the builder for the sealed file, or hold the root against the one on paper"}
	if signers != nil {
		c.Standing, c.Says = finding.Short, "nobody signed this file, and a list of signers was brought"
	}
	r.Checks = append(r.Checks, c)
}

// strangers tells of what lies among the seals and is none: nothing covers it.
func (r *Report) strangers(entries []fs.DirEntry) {
	var odd []string
	for _, e := range entries {
		base := strings.TrimSuffix(e.Name(), ".sig")
		_, paired := find(entries, base)
		if !sealName.MatchString(base) || !e.Type().IsRegular() || base != e.Name() && !paired {
			odd = append(odd, strconv.Quote(e.Name()))
		}
	}
	if len(odd) > 0 {
		r.Checks = append(r.Checks, finding.Check{Rule: "seals", Subject: Folder, Asks: "nothing lies among the seals that is none", Standing: finding.Short,
			Says: "no seals, or only half of one: " + strings.Join(atMost(odd, 5), ", "), Settle: "take it away; a seal that was broken off can be made again"})
	}
}

func find(entries []fs.DirEntry, name string) (fs.DirEntry, bool) {
	i := slices.IndexFunc(entries, func(e fs.DirEntry) bool { return e.Name() == name })
	if i < 0 {
		return nil, false
	}
	return entries[i], true
}

// statementsIn gives the names of the statements, in order of their number.
func statementsIn(entries []fs.DirEntry) []string {
	var names []string
	for _, e := range entries {
		if sealName.MatchString(e.Name()) && e.Type().IsRegular() {
			names = append(names, e.Name())
		}
	}
	slices.SortFunc(names, func(a, b string) int {
		if d := placeOf(a) - placeOf(b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	return names
}

// placeOf is the number at the beginning of the name of a seal.
func placeOf(name string) int {
	digits, _, _ := strings.Cut(name, "-")
	n, err := strconv.Atoi(digits)
	if err != nil {
		return 0 // the form of the name was looked at before
	}
	return n
}

// readSeal reads a statement and its signature. What keeps them from being read is said.
func readSeal(from fs.FS, name string) Seal {
	s := Seal{Name: name, Standing: finding.Met}
	var err error
	if s.text, err = readFile(from, inFolder(name), mostStatement); err != nil {
		s.short("the statement cannot be read")
		return s
	}
	if s.Statement, err = ParseStatement(s.text); err != nil {
		s.short("the statement is none: " + strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	s.signature, err = readFile(from, inFolder(signatureOf(name)), mostSignature)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		s.short("there is no signature beside it: the seal was begun and not ended")
	case err != nil:
		s.short("the signature cannot be read")
	}
	return s
}

func (s *Seal) short(says string) { s.Standing, s.Says = finding.Short, append(s.Says, says) }

// judge holds a seal against the file, the other seals, and the list of signers.
func (s *Seal) judge(r *Report, signers *Signers) {
	if s.Standing == finding.Short {
		return
	}
	st := &s.Statement
	if st.Hull != r.Hull {
		s.short(fmt.Sprintf("it is a seal of hull %s", st.Hull))
	}
	if st.Sums != r.Sums || st.Root != r.Root {
		s.short("it stands for another state of the file than this one: the file was written anew after it was signed on " + unit.Day(st.Date) + ", or the seal was taken from elsewhere")
	} else if st.Issue != r.Issue || st.Issued != r.Issued {
		s.short("it names another issue than the file")
	}
	for _, a := range st.After {
		i := slices.IndexFunc(r.Seals, func(o Seal) bool { return o.Name == a.Name })
		switch {
		case i < 0:
			s.short("it was set beside " + a.Name + ", which is not there any more")
		case hashOf(r.Seals[i].text) != a.Hash:
			s.short("it was set beside another " + a.Name + " than the one that lies there")
		}
	}
	s.signer(signers)
}

func (s *Seal) signer(signers *Signers) {
	key, err := signedBy(s.text, s.signature)
	if err != nil {
		s.short(err.Error())
		return
	}
	if print := Fingerprint(key); print != s.Statement.Key {
		s.short("it names the key " + s.Statement.Key + " and was signed by " + print)
		return
	}
	if signers == nil {
		if s.Standing == finding.Met {
			s.Standing = finding.NotShown
		}
		s.Says = append(s.Says, "the signature is one of key "+s.Statement.Key+"; whose key that is was not shown, because no list of signers was brought")
		return
	}
	who, why := signers.find(key, s.Statement.Date)
	if why != "" {
		s.short("signed by " + s.Statement.Key + ": " + why)
		return
	}
	s.Who = who
}

func hashOf(text []byte) string {
	h := sha256.Sum256(text)
	return hex.EncodeToString(h[:])
}
