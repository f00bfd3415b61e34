package held

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// confirm reads who held the rows. shipped is the mark of the rows of the program; rows says that the file has its own.
func (t *Table) confirm(s Source, shipped string) (rows bool, faults finding.Faults) {
	var all map[string]any
	if _, err := toml.Decode(string(s.Text), &all); err != nil {
		return false, finding.Faults{syntax(s.Path, err)}
	}
	fault := func(key, says, hint string) {
		faults = append(faults, finding.Fault{Place: Place(s.Path, s.Text, key), Key: key, Says: says, Hint: hint})
	}
	for key := range all {
		if !strings.HasPrefix(key, "confirmed_") {
			rows = true
		}
	}
	said := t.said(all, fault)
	mark, marked := all["confirmed_rows"]
	switch {
	case rows && marked:
		fault("confirmed_rows", "names rows of the program, and this file has rows of its own", "leave it out")
	case !rows && !said && len(faults) == 0:
		fault("", "the file has neither rows nor who confirmed those of the program", `write confirmed_by = "…", confirmed_edition = "…" and confirmed_on = 2026-01-12`)
	case !rows && said && !marked:
		fault("confirmed_rows", "is missing: which rows were held against the text", fmt.Sprintf("write confirmed_rows = %q if they were those that this program has", shipped))
	case !rows && said && mark != shipped:
		t.Stale = strings.Join(strings.Fields(fmt.Sprint(mark)), " ")
	}
	return rows, faults
}

// dayAlone is how the reader of TOML names the zone of a day that has no hour.
const dayAlone = "date-local"

// said reads by whom, by what and when; all three or none.
func (t *Table) said(all map[string]any, fault func(key, says, hint string)) bool {
	texts := map[string]*string{"confirmed_by": &t.By, "confirmed_edition": &t.Edition}
	written := 0
	for _, key := range []string{"confirmed_by", "confirmed_edition"} {
		v, ok := all[key]
		if !ok || v == "" {
			continue
		}
		text, is := v.(string)
		if !is || strings.TrimSpace(text) == "" {
			fault(key, fmt.Sprintf("%v is no text", v), `write words in "…"`)
			continue
		}
		*texts[key] = strings.Join(strings.Fields(text), " ")
		written++
	}
	if v, ok := all["confirmed_on"]; ok {
		day, is := v.(time.Time)
		if !is || day.Location().String() != dayAlone {
			fault("confirmed_on", fmt.Sprintf("%v is no day", v), "write confirmed_on = 2026-01-12, without quotes")
		} else {
			t.On = day.Format(time.DateOnly)
			written++
		}
	}
	for _, key := range slices.Sorted(maps.Keys(all)) {
		known := key == "confirmed_by" || key == "confirmed_edition" || key == "confirmed_on" || key == "confirmed_rows"
		if strings.HasPrefix(key, "confirmed_") && !known {
			fault(key, "unknown key", "confirmed_by, confirmed_edition, confirmed_on and confirmed_rows are known")
		}
	}
	if written == 0 || written == 3 {
		return written == 3
	}
	for _, one := range []struct{ key, has, eg string }{
		{"confirmed_by", t.By, `confirmed_by = "the name, and what the person is"`}, {"confirmed_edition", t.Edition, `confirmed_edition = "the standard and edition of the copy"`}, {"confirmed_on", t.On, "confirmed_on = 2026-01-12"},
	} {
		if one.has == "" && all[one.key] == nil {
			fault(one.key, "is missing: who held the rows, which edition and on which day belong together", "write "+one.eg)
		}
	}
	return false
}
