package held_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/held"
)

// shipped is a table of our own making.
const shipped = "work = \"W\"\n[[row]]\nname = \"a\"\nmost = 2\n[[row]]\nname = \"b\"\nmost = 3\n"

type table struct {
	Work string `toml:"work"`
	Rows []struct {
		Name string  `toml:"name"`
		Most float64 `toml:"most"`
	} `toml:"row"`
}

func read(t *testing.T, own string) (table, held.Table, string) {
	t.Helper()
	files := fstest.MapFS{"limits/t.toml": {Data: []byte(shipped)}, "limits/u.toml": {Data: []byte(shipped)}}
	var sources []held.Source
	if own != "" {
		sources = append(sources, held.Source{Name: "t.toml", Path: "limits/t.toml", Text: []byte(own)})
	}
	var into table
	got, faults, err := held.Read(files, "limits/t.toml", sources, &into)
	if err != nil {
		t.Fatal(err)
	}
	told := ""
	for _, f := range faults {
		told += f.String() + "\n"
	}
	if got.Holds() != (got.Who() != "") {
		t.Errorf("Holds %t, Who %q", got.Holds(), got.Who())
	}
	return into, got, told
}

func TestWhoseRows(t *testing.T) {
	mark := held.Mark([]byte(shipped))
	who := "confirmed_by = \"A. Nobody\"\nconfirmed_edition = \"W:2001\"\nconfirmed_on = 2026-01-12\n"
	rows := "[[row]]\nname = \"c\"\nmost = 9\n"
	for _, c := range []struct {
		where, own string
		most       float64
		mine       bool
		says       string
	}{
		{"nothing of the yard's", "", 2, false, "rows of the program; held against the text by nobody yet"},
		{"the shipped rows confirmed", who + "confirmed_rows = \"" + mark + "\"\n", 2, false, "rows of the program; held against the text by A. Nobody on 12 January 2026, by W:2001"},
		{"other rows confirmed", who + "confirmed_rows = \"00000000\"\n", 2, false, "rows of the program; A. Nobody held other rows on 12 January 2026 (mark 00000000, in use are " + mark + ")"},
		{"own rows", rows, 9, true, "the yard's own rows, limits/t.toml; held against the text by nobody yet"},
		{"own rows, an empty name", "confirmed_by = \"\"\n" + rows, 9, true, "the yard's own rows, limits/t.toml; held against the text by nobody yet"},
		{"own rows confirmed", who + rows, 9, true, "the yard's own rows, limits/t.toml; held against the text by A. Nobody on 12 January 2026, by W:2001"},
	} {
		into, got, faults := read(t, c.own)
		if faults != "" {
			t.Errorf("%s: %s", c.where, faults)
			continue
		}
		if into.Rows[0].Most != c.most || got.Own != c.mine || got.Says() != c.says {
			t.Errorf("%s: most %v, own %t, %q", c.where, into.Rows[0].Most, got.Own, got.Says())
		}
	}
}

func TestFaultsOfAYardsTable(t *testing.T) {
	for _, c := range []struct{ where, own, fault string }{
		{"says nothing", "# nothing\n", "limits/t.toml:1:1: the file has neither rows nor who confirmed those of the program"},
		{"no copy and no day", "\nconfirmed_by = \"A\"\n", "confirmed_edition: is missing"},
		{"no mark", "confirmed_by = \"A\"\nconfirmed_edition = \"E\"\nconfirmed_on = 2026-01-12\n", "confirmed_rows: is missing"},
		{"a mark beside own rows", "confirmed_rows = \"1\"\n[[row]]\nname = \"c\"\n", "limits/t.toml:1:1: confirmed_rows: names rows of the program"},
		{"a day in quotes", "confirmed_by = \"A\"\nconfirmed_edition = \"E\"\n  confirmed_on = \"2026-01-12\"\n", "limits/t.toml:3:3: confirmed_on: 2026-01-12 is no day"},
		{"an hour", "confirmed_by = \"A\"\nconfirmed_edition = \"E\"\nconfirmed_on = 2026-01-12T08:00:00\n", "is no day"},
		{"a number for a name", "confirmed_by = 7\nconfirmed_edition = \"E\"\nconfirmed_on = 2026-01-12\n", "limits/t.toml:1:1: confirmed_by: 7 is no text"},
		{"a key that is not known", "confirmed_at = 1\n", "limits/t.toml:1:1: confirmed_at: unknown key"},
		{"a row with a key that is not known", "[[row]]\nname = \"c\"\n[[row]]\nname = \"d\"\nleast = 1\n", "row.least: unknown key"},
		{"a wrong type", "[[row]]\nname = 7\n", "name"},
		{"no TOML", "most = \n", "limits/t.toml:1:"},
	} {
		_, _, faults := read(t, c.own)
		if !strings.Contains(faults, c.fault) {
			t.Errorf("%s: %q, want %q", c.where, faults, c.fault)
		}
	}
}

func TestPlace(t *testing.T) {
	text := []byte("a = 1\n[b.c]\n  d = 2\n[[row]]\nx = 1\n[[row]]\nname = 1\nx = 2\n")
	for key, want := range map[string]string{
		"a": "f:1:1", "b.c.d": "f:3:3", "b.c": "f:2:1", "row[2].x": "f:8:1", "row[1].x": "f:5:1", "row[2]": "f:6:1", "row[2].y": "f:6:1", "none": "f:1:1", "": "f:1:1",
	} {
		if got := held.Place("f", text, key).String(); got != want {
			t.Errorf("%q stands at %s, want %s", key, got, want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("confirmed_by = \"A\"\nconfirmed_edition = \"E\"\nconfirmed_on = 2026-01-12\nconfirmed_rows = \"1\"\n")
	f.Add("[[row]]\nname = \"c\"\nmost = nan\n")
	f.Add("[a]\nb = [{c = 1}]\nconfirmed_on = 1979-05-27T07:32:00Z")
	f.Fuzz(func(t *testing.T, own string) {
		if len(own) == 0 || len(own) > 4000 || strings.Count(own, "[")+strings.Count(own, "{") > 20 {
			t.Skip("records keep out what is nested deeply")
		}
		_, got, faults := read(t, own)
		if faults == "" && !got.Own && got.By == "" {
			t.Errorf("%q does nothing and says nothing", own)
		}
	})
}
