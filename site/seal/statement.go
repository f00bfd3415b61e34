package seal

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// statementForm is the number of the form of a statement.
const statementForm = "1"

// Walls for what a seal may hold.
const (
	mostStatement = 16 << 10 // bytes of a whole statement
	mostLine      = 200      // characters of a name
	mostText      = 4000     // characters of what is said
	mostAfter     = 50       // earlier seals that one may name
)

// Statement is what a seal says.
type Statement struct {
	Hull   string
	Issue  int    // nought where the file tells none
	Issued string // day of the issue, 2026-04-11; empty where the file tells none
	Sums   string // SHA-256 of SHA256SUMS, which covers every file
	Root   string // SHA-256 of contents.sha256, which the cover prints
	Role   string
	Name   string
	Date   string // 2026-04-20
	Key    string // fingerprint of the key that signs, SHA256:...
	After  []Earlier
	Says   string // in the signer's own words; may run over several lines
}

// Earlier is a seal that lay there already when a statement was signed.
type Earlier struct {
	Name string // 1-builder.txt
	Hash string // SHA-256 of it
}

// Text gives the statement as it is signed: a line for each thing said, an empty line, and the words.
func (s *Statement) Text() []byte {
	var b bytes.Buffer
	line := func(key, value string) { b.WriteString(key + ": " + value + "\n") }
	line("hullfile-seal", statementForm)
	line("hull", s.Hull)
	if s.Issue > 0 {
		line("issue", strconv.Itoa(s.Issue))
	}
	if s.Issued != "" {
		line("issued", s.Issued)
	}
	line("list", SumsName)
	line("sha256", s.Sums)
	line("root", s.Root)
	line("role", s.Role)
	line("name", s.Name)
	line("date", s.Date)
	line("key", s.Key)
	for _, a := range s.After {
		line("after", a.Hash+"  "+a.Name)
	}
	b.WriteString("\n" + s.Says + "\n")
	return b.Bytes()
}

// ParseStatement reads a statement. It takes only what Text writes, byte for byte, so that nothing in it reads in two ways.
// The error says what is wrong first.
func ParseStatement(text []byte) (Statement, error) {
	if len(text) > mostStatement {
		return Statement{}, fmt.Errorf("it is longer than %d bytes", mostStatement)
	}
	if !utf8.Valid(text) {
		return Statement{}, errors.New("it is not valid text")
	}
	head, says, ok := strings.Cut(string(text), "\n\n")
	if !ok || !strings.HasSuffix(says, "\n") {
		return Statement{}, errors.New("it breaks off; it was not written to its end")
	}
	s := Statement{Says: strings.TrimSuffix(says, "\n")}
	for i, line := range strings.Split(head, "\n") {
		key, value, ok := strings.Cut(line, ": ")
		if !ok {
			return Statement{}, fmt.Errorf("line %d has no key and value", i+1)
		}
		if err := s.take(key, value); err != nil {
			return Statement{}, fmt.Errorf("line %d: %w", i+1, err)
		}
	}
	if err := s.Check(); err != nil {
		return Statement{}, err
	}
	if !bytes.Equal(s.Text(), text) {
		return Statement{}, errors.New("it is not in the form of a statement; each line stands once, in its order")
	}
	return s, nil
}

// take sets one line of the head. What stands in the wrong order, or twice, is found when the text is made again.
func (s *Statement) take(key, value string) (err error) {
	words := map[string]*string{"hull": &s.Hull, "issued": &s.Issued, "sha256": &s.Sums, "root": &s.Root, "role": &s.Role, "name": &s.Name, "date": &s.Date, "key": &s.Key}
	switch to, known := words[key]; {
	case known:
		*to = value
	case key == "hullfile-seal":
		if value != statementForm {
			return fmt.Errorf("form %q is not known here", value)
		}
	case key == "list":
		if value != SumsName {
			return fmt.Errorf("the list is %q, want %s", value, SumsName)
		}
	case key == "issue":
		s.Issue, err = strconv.Atoi(value)
	case key == "after":
		hash, name, _ := strings.Cut(value, "  ")
		s.After = append(s.After, Earlier{Name: name, Hash: hash})
	default:
		return fmt.Errorf("%q is no key of a statement", key)
	}
	return err
}

// Check says what is wrong with a statement, all at once.
// The error joins all of it; nil where nothing is wrong.
func (s *Statement) Check() error {
	var all []error
	bad := func(format string, args ...any) { all = append(all, fmt.Errorf(format, args...)) }
	if !isLine(s.Hull) {
		bad("the hull %q is not a line of plain text", s.Hull)
	}
	if s.Issue < 0 {
		bad("issue %d is none", s.Issue)
	}
	if s.Issued != "" && !isDay(s.Issued) {
		bad("the day of issue %q is not a day as 2026-04-11", s.Issued)
	}
	if !isHash(s.Sums) || !isHash(s.Root) {
		bad("a hash is not 64 hexadecimal digits")
	}
	if !slices.Contains(Roles(), s.Role) {
		bad("the role %q is none; it is %s", s.Role, strings.Join(Roles(), " or "))
	}
	if !isLine(s.Name) {
		bad("the name %q is not a line of plain text", s.Name)
	}
	if !isDay(s.Date) {
		bad("the date %q is not a day as 2026-04-20", s.Date)
	}
	if s.Issued != "" && isDay(s.Date) && s.Date < s.Issued {
		bad("it is dated %s, before the issue of %s that it stands for", s.Date, s.Issued)
	}
	if !strings.HasPrefix(s.Key, "SHA256:") || !isLine(s.Key) {
		bad("the key %q is not a fingerprint as SHA256:…", s.Key)
	}
	if len(s.After) > mostAfter {
		bad("it names %d earlier seals, more than %d", len(s.After), mostAfter)
	}
	for _, a := range s.After {
		if !isHash(a.Hash) || !sealName.MatchString(a.Name) {
			bad("the earlier seal %q is none", a.Name)
		}
	}
	if !isText(s.Says) {
		bad("the statement is empty, too long, or holds characters that cannot be seen")
	}
	return errors.Join(all...)
}

// sealName is the form of the name of a statement: its place among the seals, and the role.
var sealName = regexp.MustCompile(`^[1-9][0-9]{0,3}-(builder|surveyor)\.txt$`)

func isHash(s string) bool {
	raw, err := hex.DecodeString(s)
	return err == nil && len(raw) == 32 && s == strings.ToLower(s)
}

func isDay(s string) bool {
	day, err := time.Parse(time.DateOnly, s)
	return err == nil && day.Format(time.DateOnly) == s
}

func isLine(s string) bool {
	return s != "" && utf8.RuneCountInString(s) <= mostLine && strings.TrimSpace(s) == s && !strings.ContainsFunc(s, unseen)
}

// isText reports whether words may stand in a statement: lines of plain text, none of which reads like another thing
// than it is.
func isText(s string) bool {
	plain := strings.ReplaceAll(s, "\n", "")
	return plain != "" && utf8.RuneCountInString(s) <= mostText && strings.TrimSpace(s) == s && !strings.ContainsFunc(plain, unseen)
}

// unseen reports a character that cannot be seen or turns the direction of reading.
func unseen(r rune) bool {
	return !unicode.IsGraphic(r) || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r)
}
