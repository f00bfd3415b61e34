package seal

import (
	"bytes"
	"fmt"
	"strings"

	"golang.org/x/crypto/ssh"

	"hullfile/engine/finding"
)

// mostSigners is the greatest length of a list of signers in bytes.
const mostSigners = 1 << 20

// Signers is a list of who may sign, in the form of ssh-keygen: principals, options, key.
type Signers struct {
	name string
	all  []signer
}

type signer struct {
	who           string // principals as written
	key           ssh.PublicKey
	namespaces    []string // patterns; none means any
	after, before string   // days, 20260101; the rest of a time is not looked at
	line          int
}

// ReadSigners reads a list of signers. name is how faults call it. All faults are told at once.
func ReadSigners(name string, text []byte) (*Signers, error) {
	if len(text) > mostSigners {
		return nil, fmt.Errorf("%s is longer than %d bytes; it is no list of signers", name, mostSigners)
	}
	list := &Signers{name: name}
	var faults finding.Faults
	for i, line := range strings.Split(string(text), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		one, why := readSigner(line)
		if why != "" {
			faults = append(faults, finding.Fault{Place: finding.Place{File: name, Line: i + 1}, Says: why, Hint: `a line is: NAME namespaces="` + Namespace + `" ssh-ed25519 KEY`})
			continue
		}
		one.line = i + 1
		list.all = append(list.all, one)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	if len(list.all) == 0 {
		return nil, finding.Faults{{Place: finding.Place{File: name, Line: 1}, Says: "nobody is named in it", Hint: `a line is: NAME namespaces="` + Namespace + `" ssh-ed25519 KEY`}}
	}
	return list, nil
}

func readSigner(line string) (one signer, why string) {
	who, rest := firstWord(line)
	if who == "" || rest == "" {
		return one, "there is no key behind the name"
	}
	key, _, options, left, err := ssh.ParseAuthorizedKey([]byte(rest))
	if err != nil || len(bytes.TrimSpace(left)) > 0 {
		return one, "what stands behind the name is no public key"
	}
	if err := mayCount(key); err != nil {
		return one, err.Error()
	}
	one = signer{who: who, key: key}
	for _, o := range options {
		if why := one.option(o); why != "" {
			return one, why
		}
	}
	return one, ""
}

// option takes one option. One that is not known here is refused: to leave it out could let somebody sign who may not.
func (s *signer) option(text string) (why string) {
	name, value, _ := strings.Cut(text, "=")
	value = strings.Trim(value, `"`)
	switch strings.ToLower(name) {
	case "namespaces":
		s.namespaces = strings.Split(value, ",")
	case "valid-after", "valid-before":
		if len(value) < 8 || strings.Trim(value[:8], "0123456789") != "" || !isDay(value[:4]+"-"+value[4:6]+"-"+value[6:8]) {
			return fmt.Sprintf("%s is no day as 20260401", text)
		}
		if strings.EqualFold(name, "valid-after") {
			s.after = value[:8]
		} else {
			s.before = value[:8]
		}
	case "cert-authority":
		return "a key that vouches for others (cert-authority) is not taken; name each key itself"
	default:
		return fmt.Sprintf("the option %q is not known here", name)
	}
	return ""
}

// firstWord cuts the principals off a line; they may stand in quotes.
func firstWord(line string) (word, rest string) {
	if quoted, ok := strings.CutPrefix(line, `"`); ok {
		word, rest, _ = strings.Cut(quoted, `"`)
		return word, strings.TrimSpace(rest)
	}
	word, rest, _ = strings.Cut(strings.ReplaceAll(line, "\t", " "), " ")
	return word, strings.TrimSpace(rest)
}

// find says who signed by a key on a day, or why nobody of the list did.
func (l *Signers) find(key ssh.PublicKey, day string) (who, why string) {
	why = "the key is not in " + l.name
	for _, s := range l.all {
		if !bytes.Equal(s.key.Marshal(), key.Marshal()) {
			continue
		}
		if why = s.mayNot(strings.ReplaceAll(day, "-", "")); why == "" {
			return s.who, ""
		}
		why = fmt.Sprintf("%s, line %d: %s", l.name, s.line, why)
	}
	return "", why
}

// mayNot says why a signer of the list may not sign on a day. Days alone are compared: a seal knows no hour.
func (s *signer) mayNot(day string) string {
	switch {
	case len(s.namespaces) > 0 && !matchesAny(s.namespaces, Namespace):
		return s.who + " may sign other things, but no seal"
	case s.after != "" && day < s.after:
		return s.who + " may sign from " + s.after + ", and the seal is dated before"
	case s.before != "" && day > s.before:
		return s.who + " may sign until " + s.before + ", and the seal is dated after"
	}
	return ""
}

// matchesAny holds a word against patterns with * and ?; one that begins with ! and matches refuses the word.
func matchesAny(patterns []string, word string) bool {
	found := false
	for _, p := range patterns {
		p, not := strings.CutPrefix(strings.TrimSpace(p), "!")
		if !matches(p, word) {
			continue
		}
		if not {
			return false
		}
		found = true
	}
	return found
}

func matches(pattern, word string) bool {
	star, mark, i, k := -1, 0, 0, 0
	for k < len(word) {
		switch {
		case i < len(pattern) && (pattern[i] == '?' || pattern[i] == word[k]):
			i, k = i+1, k+1
		case i < len(pattern) && pattern[i] == '*':
			star, mark, i = i, k, i+1
		case star >= 0:
			mark++
			i, k = star+1, mark
		default:
			return false
		}
	}
	return strings.Trim(pattern[i:], "*") == ""
}
