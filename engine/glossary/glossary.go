// Package glossary holds the words that the pages use, as data, and finds them in a text.
//
//   - Question: what does this word mean here?
//   - In: the terms of content/glossary, and a text.
//   - Out: the terms that stand in it, whole words only.
//   - Source: each term names its own where it has one.
package glossary

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"unicode"

	"github.com/BurntSushi/toml"
)

// file is where the words stand in the content.
const file = "glossary/terms.toml"

// Term is one word with what it means.
type Term struct {
	Word   string   `toml:"word"`
	Also   []string `toml:"also"` // other forms that lead to it
	Means  string   `toml:"means"`
	Source string   `toml:"source"` // where a meaning is fixed by one
	Owner  bool     `toml:"owner"`  // it stands in the owner's book too
}

// Table is all terms in order of their words. It is read once and never changed.
type Table struct {
	Terms  []Term
	byForm map[string]int // every form, in lower case, words parted by one blank -> index of its term
	most   map[string]int // first word of a form -> words in the longest form that begins so
}

// Load reads the terms. A form that stands for two terms, an empty meaning, and a key that is not known are errors.
func Load(content fs.FS) (*Table, error) {
	text, err := fs.ReadFile(content, file)
	if err != nil {
		return nil, err
	}
	var all struct {
		Term []Term `toml:"term"`
	}
	meta, err := toml.Decode(string(text), &all)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return nil, fmt.Errorf("%s: unknown key %s", file, unknown[0])
	}
	return newTable(all.Term)
}

func newTable(terms []Term) (*Table, error) {
	t := &Table{Terms: slices.Clone(terms), byForm: map[string]int{}, most: map[string]int{}}
	slices.SortStableFunc(t.Terms, func(a, b Term) int {
		return strings.Compare(strings.ToLower(a.Word), strings.ToLower(b.Word))
	})
	for i, term := range t.Terms {
		if term.Word == "" || strings.TrimSpace(term.Means) == "" {
			return nil, fmt.Errorf("%s: term %q says nothing", file, term.Word)
		}
		for _, form := range append([]string{term.Word}, term.Also...) {
			parted := words(form)
			key := strings.Join(parted, " ")
			if other, taken := t.byForm[key]; taken {
				return nil, fmt.Errorf("%s: %q stands for both %s and %s", file, form, t.Terms[other].Word, term.Word)
			}
			t.byForm[key] = i
			if len(parted) > 0 {
				t.most[parted[0]] = max(t.most[parted[0]], len(parted))
			}
		}
	}
	return t, nil
}

// Within gives the terms whose words stand in a text, each once, in order of their words. The longest form is taken first:
// in "loaded mass" it is that and not mass.
func (t *Table) Within(text string) []Term {
	all := words(text)
	found := map[int]bool{}
	for i := 0; i < len(all); {
		step := 1
		for n := min(t.most[all[i]], len(all)-i); n > 0; n-- {
			if at, known := t.byForm[strings.Join(all[i:i+n], " ")]; known {
				found[at], step = true, n
				break
			}
		}
		i += step
	}
	var out []Term
	for i := range t.Terms {
		if found[i] {
			out = append(out, t.Terms[i])
		}
	}
	return out
}

// words parts a text into its words, in lower case. A hyphen inside a word belongs to it.
func words(text string) []string {
	all := make([]string, 0, len(text)/5)
	for word := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' }) {
		all = append(all, word)
	}
	return all
}
