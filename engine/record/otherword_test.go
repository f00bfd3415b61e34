package record

import (
	"strings"
	"testing"
)

// Every key that a word of the trade leads to is one that some table has: a word that leads to nothing would never help.
func TestOtherWordsLeadToKeys(t *testing.T) {
	keys := map[string]bool{}
	var walk func(*table)
	walk = func(tab *table) {
		for _, f := range tab.fields {
			keys[f.key] = true
			if f.sub != nil {
				walk(f.sub)
			}
		}
	}
	for _, tab := range []*table{hullTable, builderTable, stockTable, proceduresTable} {
		walk(tab)
	}
	for word, to := range otherWords {
		for key := range strings.FieldsSeq(to) {
			if !keys[key] {
				t.Errorf("%s leads to %s, which no table has", word, key)
			}
		}
	}
	if len(keys) < 200 {
		t.Errorf("only %d keys", len(keys))
	}
}
