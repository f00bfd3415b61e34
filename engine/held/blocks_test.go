package held

import (
	"os"
	"slices"
	"strings"
	"testing"
)

const small = `# What is held.
#
# over_mm  from here on

work  = "ISO 1"
basis = "recalled"

# Bends are cold.

[[bend]]
over_mm = 3
times   = 2.5
basis   = "read"
C = {no = true}
[[bend]]
over_mm = 6
times   = 4
basis   = "recalled"
note    = "own"
C = {times = 0.4, short = true}

# Life of a test.
[[scheme]]
standard = "ISO 2"
edition  = "2004"
basis    = "read"
groups   = {21 = ["21", "22"]}
[scheme.positions.butt]
PA = ["PA"]
`

// Rows come in the order of the file, with the comment above them, the basis last, and an entry that holds tables by itself.
func TestBlocks(t *testing.T) {
	about, blocks, err := (Table{File: "limits/small.toml", text: []byte(small)}).Blocks()
	if err != nil || !strings.HasPrefix(about, "What is held.\n\nover_mm") {
		t.Fatalf("%q, %v", about, err)
	}
	want := []Block{
		{Rows: [][]string{{"work", "ISO 1"}, {"basis", "recalled"}}},
		{Name: "bend", Notes: "Bends are cold.", Heads: []string{"over_mm", "times", "C", "basis", "note"}, Rows: [][]string{{"3", "2.5", "not permitted", "read", ""}, {"6", "4", "short, times 0.4", "recalled", "own"}}, Bases: []string{"read", "recalled"}},
		{Name: "ISO 2 2004", Notes: "Life of a test.", Rows: [][]string{{"standard", "ISO 2"}, {"edition", "2004"}, {"basis", "read"}, {"groups", "21: 21, 22"}}, Bases: []string{"read"}},
		{Name: "ISO 2 2004, positions", Rows: [][]string{{"butt", "PA: PA"}}},
	}
	if len(blocks) != len(want) {
		t.Fatalf("%d blocks: %+v", len(blocks), blocks)
	}
	for i, w := range want {
		b := blocks[i]
		if b.Name != w.Name || b.Notes != w.Notes || !slices.Equal(b.Heads, w.Heads) || !slices.Equal(b.Bases, w.Bases) || !slices.EqualFunc(b.Rows, w.Rows, slices.Equal[[]string]) {
			t.Errorf("block %d:\n%+v\nwant\n%+v", i, b, w)
		}
	}
}

// Every row of every shipped table is in its blocks: as many as the file begins, and each with the word by which it is known.
func TestShippedBlocksAreWhole(t *testing.T) {
	files := os.DirFS("../../content")
	for _, name := range []string{"certificates", "fillets", "iso-10042", "procedure-ranges", "welder-ranges"} {
		table, _, err := Read(files, "limits/"+name+".toml", nil, &map[string]any{})
		if err != nil {
			t.Fatal(err)
		}
		_, blocks, err := table.Blocks()
		if err != nil {
			t.Fatal(err)
		}
		entries := 0
		for _, b := range blocks {
			switch {
			case len(b.Heads) > 0:
				entries += len(b.Rows)
			case len(b.Bases) > 0 && strings.Contains(string(table.text), "[[scheme]]"):
				entries++
			}
			if slices.Contains(b.Bases, "") {
				t.Errorf("%s: a row of %s does not say how it is known", name, b.Name)
			}
		}
		if want := strings.Count(string(table.text), "\n[["); entries != want {
			t.Errorf("%s: %d rows shown, the file has %d", name, entries, want)
		}
	}
}
