package record

import (
	"fmt"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// Known is what records may name and the reader cannot find in the yard folder.
type Known struct {
	Alloys []string // alloy and temper, "5083-H116"
	Sheets []string // shipped method sheets, by file name without .toml; nil leaves the names of sheets unchecked
	Lists  []string // shipped lists of requirements, by file name without .toml; nil leaves the names of lists unchecked
	Words  []string // words for evidence that a paper may say it shows; nil leaves them unchecked
}

// Read reads a yard folder, or a folder with a lone hull.toml. The error is finding.Faults with all faults of all files,
// in file order, or an error of the folder itself. A yard is only given when there is no fault.
func Read(root *os.Root, known Known) (*Yard, error) {
	if _, err := root.Stat("."); err != nil {
		return nil, fmt.Errorf("the yard folder cannot be read: %w", bottom(err))
	}
	r := newReading(root, known)
	r.shared()
	r.readHulls()
	if all := r.faults.told(); len(all) > 0 {
		return nil, all
	}
	return r.yard(), nil
}

// reading is the reading of one yard folder. The records are looked at one by one, then the hulls laid over their
// designs; only if nothing is wrong are the structs filled.
type reading struct {
	faults            faults
	disk              *disk
	known             Known
	names             map[string][]string // what the whole yard knows, by kind of reference
	lone              bool
	builder           *node
	stock, procedures *node // nil where the yard has no such folder
	sheets            []SheetSource
	texts             []SheetSource // chapters of the owner's book
	tables            []SheetSource // tables of limits
	own               []List        // lists of requirements
	designs           map[string]*level
	faulty            bool     // faults were found in what is shared, such as a design, so that no struct is filled from it
	dirs              []string // folders of hulls
	hulls             []*laid
	doubts            []YardDoubt
	leave             func(file string) bool // of the stock, files that are not read
}

func newReading(root *os.Root, known Known) *reading {
	r := &reading{known: known, designs: map[string]*level{}}
	r.disk = &disk{root: root, fs: &r.faults}
	r.names = map[string][]string{"alloy": known.Alloys, "design": {}}
	return r
}

// The names of records and folders.
const (
	yardFile, hullFile, designFile     = "yard.toml", "hull.toml", "design.toml"
	hullsDir, designsDir, methodsDir   = "hulls", "designs", "methods"
	documentsDir, proceduresDir        = "documents", "procedures"
	stockDir, requirementsDir, logsDir = "stock", "requirements", "logs"
)

// shared reads everything but the folders of hulls, in the order in which one record needs another.
func (r *reading) shared() {
	found := r.disk.look(".", topFolder())
	r.lone = found[hullFile] && !found[yardFile]
	r.lists(found[requirementsDir] && !r.lone)
	if r.lone {
		r.loneHull(found)
		return
	}
	r.top(found)
	if found[logsDir] {
		r.disk.later = append(r.disk.later, logsDir)
	}
	if found[stockDir] {
		r.stock = r.store(stockDir, stockTable, "lot consumable")
	}
	if found[proceduresDir] {
		r.procedures = r.store(proceduresDir, proceduresTable, "procedure procedure_test")
	}
	if found[methodsDir] {
		r.methods()
	}
	if found[limitsDir] {
		r.limits()
	}
	if found[chaptersDir] {
		r.chapters()
	}
	if found[designsDir] {
		r.readDesigns()
	}
	if found[hullsDir] {
		r.listHulls()
	}
	r.unread()
}

// topFolder is what may lie in the yard folder itself; a lone hull brings its tables and documents.
func topFolder() folder {
	return folder{
		files:   append(append([]string{yardFile, hullFile}, csvFiles(builderTable)...), csvFiles(hullTable)...),
		folders: []string{hullsDir, designsDir, methodsDir, documentsDir, logsDir, stockDir, proceduresDir, requirementsDir, limitsDir, chaptersDir},
		instead: "a yard folder holds yard.toml, people.csv, instruments.csv and the folders designs, hulls, stock, procedures, methods, limits, requirements and owner",
	}
}

func csvFiles(t *table) []string {
	var names []string
	for _, s := range sources(t) {
		names = append(names, s.file)
	}
	return names
}

// top reads yard.toml and refuses records that lie beside it and belong into a hull folder.
func (r *reading) top(found map[string]bool) {
	for _, name := range append([]string{hullFile}, csvFiles(hullTable)...) {
		if found[name] {
			r.faults.add(placeAt(name), "", "move it into hulls/NUMBER/, with the number of the hull", "a hull's record lies beside %s", yardFile)
		}
	}
	if !found[yardFile] {
		r.noYard(found)
		return
	}
	l := r.level("", yardFile, builderTable, "yard", found)
	o := overlay{fs: &r.faults}
	r.builder = o.table(builderTable, nil, l.root, nil)
	if !l.whole {
		return
	}
	c := completer{fs: &r.faults, names: named(l.root, yardNames)}
	maps.Copy(r.names, c.names)
	c.table(builderTable, r.builder, nil)
	r.doubt("", c.doubts)
}

func (r *reading) noYard(found map[string]bool) {
	if found[hullsDir] || found[designsDir] {
		r.faults.add(placeAt(yardFile), "", `write yard.toml with at least: name = "…", the name of the yard`, "there is no yard.toml in this folder")
		return
	}
	r.faults.add(placeAt(yardFile), "", "name the folder that holds yard.toml, or a single hull.toml", "there is neither yard.toml nor hull.toml in this folder")
}

// methods keeps the yard's own method sheets as text.
func (r *reading) methods() {
	all, err := r.disk.list(methodsDir)
	if err != nil {
		r.faults.add(placeAt(methodsDir), "", "", "the folder cannot be read: %v", bottom(err))
	}
	for _, e := range all {
		name := methodsDir + "/" + e.Name()
		switch {
		case leftover(e.Name()):
		case !strings.HasSuffix(e.Name(), ".toml"):
			r.disk.stray(methodsDir, e, folder{strict: true, instead: "method sheets end in .toml"})
		case r.disk.usual(methodsDir, e, false):
			r.sheet(e.Name(), name)
		}
	}
	if r.known.Sheets != nil {
		r.names["sheet"] = slices.Clone(r.known.Sheets)
		for _, s := range r.sheets {
			r.names["sheet"] = append(r.names["sheet"], strings.TrimSuffix(s.Name, ".toml"))
		}
	}
}

func (r *reading) sheet(name, at string) {
	raw, ok := r.disk.text(at, mostTOML)
	if !ok {
		return
	}
	if text, ok := readable(at, raw, &r.faults); ok {
		r.sheets = append(r.sheets, SheetSource{Name: name, Path: at, Text: text})
	}
}

// unread keeps a doubt about every folder that belongs to a yard but that nobody reads.
func (r *reading) unread() {
	for _, dir := range r.disk.later {
		r.doubt("", []finding.Finding{{
			Kind: finding.Doubt, Rule: "folder-not-read", Subject: dir,
			Says:   "the folder " + dir + " is not read; nothing in it takes part in what this file shows",
			Settle: "keep in mind that the file rests on the other records alone",
			Places: []finding.Place{placeAt(dir)},
		}})
	}
}

func (r *reading) doubt(hull string, all []finding.Finding) {
	for _, f := range all {
		r.doubts = append(r.doubts, YardDoubt{Hull: hull, Finding: f})
	}
}

// yard fills the structs from the checked trees.
func (r *reading) yard() *Yard {
	y := r.sharedYard()
	y.Doubts = r.doubts
	for _, l := range r.hulls {
		l.fill()
		y.Hulls = append(y.Hulls, l.hull)
		y.Doubts = append(y.Doubts, apart(l.hull)...)
	}
	return y
}

// sharedYard fills what belongs to no hull.
func (r *reading) sharedYard() *Yard {
	y := &Yard{Doubts: r.doubts, Sheets: r.sheets, Chapters: r.texts, Limits: r.tables, Lists: r.own, Files: r.disk.files}
	slices.SortFunc(y.Files, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	if r.builder != nil {
		fill(builderTable, r.builder, reflect.ValueOf(&y.Builder).Elem())
	}
	if r.stock != nil {
		fill(stockTable, r.stock, reflect.ValueOf(&y.Stock).Elem())
	}
	if r.procedures != nil {
		fill(proceduresTable, r.procedures, reflect.ValueOf(&y.Welding).Elem())
	}
	for _, name := range r.names["design"] {
		l := r.designs[name]
		on, _ := text(l.root.kid("based_on"))
		y.Designs = append(y.Designs, DesignName{Name: name, BasedOn: on, At: l.root.key})
	}
	return y
}
