package method

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"hullfile/engine/finding"
)

// Source is one sheet of the yard's own: its file name, where it lies in the yard folder, and its text.
type Source struct {
	Name string // iso-12215-5-2008.toml
	Path string // methods/iso-12215-5-2008.toml, as messages show it
	Text []byte
}

// Library is every sheet that can be asked for: those shipped with the tool and those of the yard. It is never changed
// after NewLibrary.
type Library struct {
	sheets []*Sheet // by name
}

// NewLibrary reads every *.toml at the top of shipped and lays the yard's own sheets over them: one with the file name of
// a shipped sheet takes its place and says so, any other is added. A shipped sheet that is replaced is not read. The error
// is finding.Faults, of all sheets at once, or an error of reading.
func NewLibrary(shipped fs.FS, yards []Source) (*Library, error) {
	names, err := fs.Glob(shipped, "*.toml")
	if err != nil {
		return nil, err
	}
	var faults finding.Faults
	lib := &Library{}
	own := map[string]string{}
	for _, y := range yards {
		lib.add(loadOwn(y, slices.Contains(names, y.Name), own), &faults)
	}
	names = slices.DeleteFunc(names, func(name string) bool { return own[name] != "" })
	read, err := loadAll(shipped, names)
	if err != nil {
		return nil, err
	}
	for _, r := range read {
		lib.add(r, &faults)
	}
	if len(faults) > 0 {
		faults.Sort()
		return nil, faults
	}
	slices.SortFunc(lib.sheets, func(a, b *Sheet) int { return strings.Compare(a.Name, b.Name) })
	return lib, nil
}

// loadAll reads shipped sheets side by side: compiling them is most of what a run needs to begin.
func loadAll(shipped fs.FS, names []string) ([]result, error) {
	read, failed := make([]result, len(names)), make([]error, len(names))
	var each sync.WaitGroup
	for i, name := range names {
		each.Go(func() {
			text, err := fs.ReadFile(shipped, name)
			if failed[i] = err; err == nil {
				read[i] = loaded(loadShipped(name, text))
			}
		})
	}
	each.Wait()
	return read, errors.Join(failed...)
}

// result is a sheet or what is wrong in it.
type result struct {
	sheet  *Sheet
	faults finding.Faults
}

func loaded(s *Sheet, err error) result {
	var faults finding.Faults
	errors.As(err, &faults)
	return result{s, faults}
}

// loadOwn reads one sheet of the yard. own holds the names met so far and where they lay.
func loadOwn(y Source, replaces bool, own map[string]string) result {
	at := finding.Place{File: y.Path, Line: 1, Col: 1}
	if path.Base(y.Name) != y.Name || path.Ext(y.Name) != ".toml" {
		return result{faults: finding.Faults{{Place: at, Says: "is no file name of a method sheet", Hint: "name it like own-practice.toml"}}}
	}
	if before := own[y.Name]; before != "" {
		return result{faults: finding.Faults{{Place: at, Says: "has the name of another sheet of the yard, " + before}}}
	}
	own[y.Name] = y.Path
	r := loaded(Load(y.Path, y.Text))
	if r.sheet != nil {
		r.sheet.Name, r.sheet.Yards, r.sheet.Replaces = y.Name, true, replaces
	}
	return r
}

func (l *Library) add(r result, faults *finding.Faults) {
	*faults = append(*faults, r.faults...)
	if r.sheet != nil {
		l.sheets = append(l.sheets, r.sheet)
	}
}

// Sheet finds a sheet by its file name, with or without .toml.
func (l *Library) Sheet(name string) (*Sheet, bool) {
	name = strings.TrimSuffix(name, ".toml") + ".toml"
	for _, s := range l.sheets {
		if s.Name == name {
			return s, true
		}
	}
	return nil, false
}

// Sheets gives every sheet, by name.
func (l *Library) Sheets() []*Sheet { return slices.Clone(l.sheets) }

// Names gives the name of every sheet without .toml, for messages.
func (l *Library) Names() []string {
	var out []string
	for _, s := range l.sheets {
		out = append(out, strings.TrimSuffix(s.Name, ".toml"))
	}
	return out
}
