package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"hullfile/engine/finding"
	"hullfile/engine/handbook"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Every name of the closed set has a maker, and nothing is made that has no name.
func TestOwnerNamesAndValuesAreTheSame(t *testing.T) {
	job := demoJob(t)
	b := newBook(mustPress(t, job), job.open(job.Hulls[0], newShelf(job.Yard)), nil)
	o := b.ownerBook()
	l := o.leaf(o.cover)
	values := l.ownerValues()
	for _, n := range handbook.Names() {
		if _, made := values[n.Key]; !n.Block && !made {
			t.Errorf("nobody makes {%s}", n.Key)
		}
		if n.Block && l.ownerBlock(n.Key).None == ownerLacks("", "") && !slices.Contains([]string{"papers"}, strings.Fields(n.Key)[0]) {
			t.Errorf("nobody makes {%s}", n.Key)
		}
	}
	for key := range values {
		if _, known := handbook.Find(key); !known {
			t.Errorf("{%s} is made and not in the set", key)
		}
	}
}

func mustPress(t *testing.T, job Job) *press {
	t.Helper()
	p, err := newPress(job)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// ownerTexts reads the owner's book of a hull: all its files, markup and index alike.
func ownerTexts(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	root := filepath.Join(dir, ownerDir)
	err := filepath.WalkDir(root, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || strings.Contains(name, "papers"+string(filepath.Separator)) {
			return err
		}
		text, err := os.ReadFile(name)
		rel, _ := filepath.Rel(root, name)
		out[filepath.ToSlash(rel)] = html.UnescapeString(string(text))
		return err
	})
	if err != nil || len(out) < 20 {
		t.Fatalf("%d files in the owner's book: %v", len(out), err)
	}
	return out
}

// private gathers what the owner's book must not hold: every text of the records of people, of what they may do and did,
// of procedures, of decisions about the work and of the stages of the build.
func private(y *record.Yard, h *record.Hull) []string {
	var out []string
	take := func(v any) { texts(reflect.ValueOf(v), &out) }
	b := &y.Builder
	for i := range b.People {
		out = append(out, b.People[i].Name.V)
		out = append(out, strings.Fields(b.People[i].Name.V)...)
	}
	take(b.Qualifications)
	take(b.Inspectors)
	take(y.Welding)
	take(h.Nonconformities)
	take(h.Repairs)
	take(h.Stages)
	take(h.Imperfections)
	take(h.Issue)
	for i := range h.Welds {
		out = append(out, h.Welds[i].Procedure.V, h.Welds[i].Filler.V, h.Welds[i].Gas.V, h.Welds[i].ID)
	}
	slices.Sort(out)
	return slices.DeleteFunc(slices.Compact(out), func(s string) bool { return common(s) || s == b.Name.V })
}

// common reports texts that are nobody's secret: short ones, numbers, and single words of the trade in small letters.
func common(s string) bool {
	return len(s) < 4 || regexp.MustCompile(`^([\d. -]+|[a-z]+)$`).MatchString(s) || slices.Contains(ordinary, s)
}

// ordinary are words of the trade that a record may hold and a chapter too.
var ordinary = []string{"use as it is", "ISO 9606-2", "single side", "fitting out", "dye penetrant", "ground out"}

// texts gathers every written text below a value.
func texts(v reflect.Value, out *[]string) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[finding.Place]() {
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				texts(v.Field(i), out)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			texts(v.Index(i), out)
		}
	case reflect.String:
		*out = append(*out, v.String())
	}
}

// TestOwnerBook looks at the books of the demo.
func TestOwnerBook(t *testing.T) {
	job := demoJob(t)
	dir := rendered(t, job)
	t.Run("KeepsWhatIsPrivate", func(t *testing.T) { keepsWhatIsPrivate(t, job, dir) })
	t.Run("IsWholeInItself", func(t *testing.T) { isWholeInItself(t, dir) })
	t.Run("SaysWhatIsMissing", func(t *testing.T) { saysWhatIsMissing(t, dir) })
	t.Run("SaysWhatIsShort", func(t *testing.T) { saysWhatIsShort(t, dir) })
	t.Run("IsPrintedAlone", func(t *testing.T) {
		if _, err := os.Stat(filepath.Join(dir, "HL74-012", printName)); err == nil {
			t.Error("the print edition of the whole file was written without being asked for")
		}
		if _, err := os.Stat(filepath.Join(dir, "HL74-012", ownerDir, printName)); err != nil {
			t.Error(err)
		}
	})
}

// keepsWhatIsPrivate: the owner's book holds nothing of what is the yard's own. Each private text of the demo is looked for
// in every file of it.
func keepsWhatIsPrivate(t *testing.T, job Job, dir string) {
	for _, h := range job.Yard.Hulls {
		secrets := private(job.Yard, h)
		if h.Number == "HL74-012" && len(secrets) < 60 {
			t.Fatalf("only %d private texts: %q", len(secrets), secrets)
		}
		files := ownerTexts(t, filepath.Join(dir, h.Number))
		whole := wholeText(t, filepath.Join(dir, h.Number))
		found := 0
		for _, s := range secrets {
			word := regexp.MustCompile(`(^|[^\pL\pN])` + regexp.QuoteMeta(s) + `($|[^\pL\pN])`)
			if strings.Contains(whole, s) && word.MatchString(whole) {
				found++
			}
			for name, text := range files {
				if strings.Contains(text, s) && word.MatchString(text) {
					t.Errorf("%s: owner/%s holds %q", h.Number, name, s)
				}
			}
		}
		if found < len(secrets)/6 {
			t.Errorf("%s: only %d of %d private texts are found in the technical file: the search finds nothing", h.Number, found, len(secrets))
		}
	}
}

// wholeText is the technical file beside the owner's book.
func wholeText(t *testing.T, dir string) string {
	t.Helper()
	var all strings.Builder
	for _, name := range []string{"welding.html", "inspections/repairs.html", "boat.html", "index.html", "records/yard.toml", "seams.html", "materials.html"} {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err == nil {
			all.WriteString(html.UnescapeString(string(text)) + "\n")
		}
	}
	return all.String()
}

// isWholeInItself: no link, picture or script of the owner's book leads out of its folder, and none leads to nothing.
func isWholeInItself(t *testing.T, dir string) {
	links := regexp.MustCompile(`(?:href|src)="([^"]*)"`)
	n := 0
	for name, text := range ownerTexts(t, filepath.Join(dir, "HL74-012")) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		for _, m := range links.FindAllStringSubmatch(text, -1) {
			to, _, _ := strings.Cut(m[1], "#")
			if to == "" || strings.HasPrefix(to, "data:") {
				continue
			}
			n++
			if strings.Contains(to, "..") || strings.Contains(to, ":") {
				t.Errorf("owner/%s leads to %s", name, m[1])
				continue
			}
			if _, err := os.Stat(filepath.Join(dir, "HL74-012", ownerDir, to)); err != nil {
				t.Errorf("owner/%s leads to nothing: %s", name, m[1])
			}
		}
	}
	if n < 400 {
		t.Errorf("only %d links", n)
	}
}

// saysWhatIsMissing: a value that nobody wrote prints as not shown; none prints empty, and no brace is left over.
func saysWhatIsMissing(t *testing.T, dir string) {
	files := ownerTexts(t, filepath.Join(dir, "HL74-013"))
	missing := 0
	for name, text := range files {
		missing += strings.Count(text, `<b class="none">not shown</b>`)
		if strings.Contains(text, "<b></b>") {
			t.Errorf("owner/%s prints an empty value", name)
		}
		for _, r := range text {
			if r >= handbook.First && r <= '\uf8ff' {
				t.Errorf("owner/%s: a value was not put in", name)
				break
			}
		}
	}
	if missing < 5 {
		t.Errorf("the hull in build has only %d values that are not shown", missing)
	}
	_, list, told := strings.Cut(files["index.html"], "Not yet known</h2>")
	for _, lack := range []string{"greatest load on the plate", "heel with everybody to one side", "whom to call in an emergency", "day of the launch", "papers of the gas system"} {
		if !told || strings.Count(list, lack) != 1 {
			t.Errorf("the first page of the hull in build does not tell once: %s", lack)
		}
	}
	if loading := files["05-loading.html"]; !strings.Contains(loading, `persons: <b class="none">not shown</b>`) {
		t.Error("how many persons the boat may carry is not known, and the page on loading does not say so")
	}
	if afloat := files["06-afloat.html"]; strings.Contains(afloat, "Heel with everybody") {
		t.Error("a heel that is not known has a line of its own")
	}
}

// saysWhatIsShort: an owner is told on the first page what his safety hangs on and does not reach what is asked, and beside the load of
// the plate what the checks leave; a boat in order has no such list. The faults are those planted in the demo.
func saysWhatIsShort(t *testing.T, dir string) {
	files := ownerTexts(t, filepath.Join(dir, "LT56-031"))
	for _, told := range []string{"Not in order</h2>", "the plate permits 775", "reckoned for 25.0", "Member bottom frame 6", "foam and chambers carry 410", "bracket to transom has not been looked at"} {
		if !strings.Contains(files["index.html"], told) {
			t.Errorf("the first page does not tell: %s", told)
		}
	}
	if !regexp.MustCompile(`checks leave: <b>3 persons</b> and <b>552`).MatchString(files["05-loading.html"]) {
		t.Error("the page on loading gives the load of the plate and not what the checks leave")
	}
	whole := ownerTexts(t, filepath.Join(dir, "HL74-012"))
	if strings.Contains(whole["index.html"], "Not in order") {
		t.Error("a boat in order is said not to be")
	}
	if !regexp.MustCompile(`Lifting point</th><td class="num">2.270</td><td class="num">30</td><td>4</td><td>met</td>`).MatchString(whole["14-trailer.html"]) {
		t.Error("the book does not tell which mass, at which angle, the lifting points were reckoned for")
	}
}

// A value is data: Markdown and markup in it stay text.
func TestValuesStayData(t *testing.T) {
	got, err := filled(&handbook.Part{Markdown: "A **\ue000** b", Names: []string{"hull.name"}}, map[string]Figure{"hull.name": {Text: "<i>x</i> *y* [z](http://a) \u202e"}})
	if err != nil {
		t.Fatal(err)
	}
	if want := "<p>A <strong><b>&lt;i&gt;x&lt;/i&gt; *y* [z](http://a) \ufffd</b></strong> b</p>\n"; string(got) != want {
		t.Errorf("own arithmetic: %q, want %q", got, want)
	}
}

// Own arithmetic: years from a day, with the end of a shorter month.
func TestWarrantiesEnd(t *testing.T) {
	for _, row := range []struct {
		from  record.Date
		years unit.Ratio
		want  string
	}{
		{record.Date{Year: 2026, Month: time.August, Day: 5}, 5, "2031-08-05"},
		{record.Date{Year: 2024, Month: time.February, Day: 29}, 1, "2025-02-28"},
		{record.Date{Year: 2026, Month: time.August, Day: 31}, 1.5, "2028-02-29"},
		{record.Date{Year: 2026, Month: time.December, Day: 31}, 2, "2028-12-31"},
	} {
		l := &leaf{book: &book{hull: &record.Hull{}}}
		w := &record.Warranty{Years: record.Written(row.years, finding.Place{}), From: record.Written(row.from, finding.Place{})}
		if got := l.warrantyEnd(w); got.Text != row.want {
			t.Errorf("own arithmetic: %s and %v years: %s, want %s", row.from, row.years, got.Text, row.want)
		}
	}
}

// The yard's own chapter takes the place of ours in the book and says so.
func TestTheYardsOwnChapter(t *testing.T) {
	dir := t.TempDir()
	demo := demoJob(t)
	if err := os.CopyFS(dir, demo.Root.FS()); err != nil {
		t.Fatal(err)
	}
	if err := os.MkdirAll(filepath.Join(dir, "owner"), 0o755); err != nil {
		t.Fatal(err)
	}
	text := "# Loading, as we say it\n\nNot more than {plate.persons}.\n"
	if err := os.WriteFile(filepath.Join(dir, "owner", "05-loading.md"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	out := rendered(t, jobIn(t, dir, filepath.Join(t.TempDir(), "out")))
	chapter, err := os.ReadFile(filepath.Join(out, "HL74-012", "owner", "05-loading.html"))
	if err != nil || !strings.Contains(string(chapter), "Loading, as we say it") || !strings.Contains(string(chapter), "<b>6 persons</b>") {
		t.Errorf("the yard's chapter is not there: %v", err)
	}
	page, err := os.ReadFile(filepath.Join(out, "HL74-012", "owner.html"))
	if err != nil || !strings.Contains(string(page), "<b>owner/05-loading.md</b>") {
		t.Errorf("the page does not say that the chapter is the yard's own: %v", err)
	}
}
