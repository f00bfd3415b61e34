package method

import (
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"hullfile/engine/crew"
	"hullfile/engine/finding"
)

// Source is one sheet of the yard's own: its file name, where it lies in the yard folder, and its text.
type Source struct {
	Name string // iso-12215-5-2008.toml
	Path string // methods/iso-12215-5-2008.toml, as messages show it
	Text []byte
}

// Library is every sheet that can be asked for: those shipped with the tool and those of the yard. It is never changed
// after it is made.
type Library struct {
	sheets   []*Sheet          // by name
	replaced []*Sheet          // shipped ones in whose place one of the yard stands
	asked    func(name string) // told of every name that is asked for; may be nil
}

// Shipped is the sheets that come with the program, read before it is known which of them a yard replaces.
type Shipped struct {
	names []string
	read  []result // one for one
	err   error    // of reading
}

// ReadShipped reads every *.toml at the top of a folder, side by side: compiling them is most of what a run needs to begin.
// What went wrong is told by Library.
func ReadShipped(folder fs.FS) *Shipped {
	names, err := fs.Glob(folder, "*.toml")
	if err != nil {
		return &Shipped{err: err}
	}
	s := &Shipped{names: names, read: make([]result, len(names))}
	failed := make([]error, len(names))
	var each crew.Crew
	for i, name := range names {
		each.Go(func() {
			text, err := fs.ReadFile(folder, name)
			if failed[i] = err; err == nil {
				s.read[i] = loaded(loadShipped(name, text))
			}
		})
	}
	each.Wait()
	s.err = errors.Join(failed...)
	return s
}

// Library lays a yard's own sheets over the shipped ones: one with the file name of a shipped sheet takes its place and says
// so, any other is added. The error is finding.Faults, of all sheets at once, or one of reading; faults of a sheet that is
// replaced do not count.
func (s *Shipped) Library(yards []Source) (*Library, error) {
	if s.err != nil {
		return nil, s.err
	}
	var faults finding.Faults
	lib := &Library{}
	own := map[string]string{}
	for _, y := range yards {
		lib.add(loadOwn(y, slices.Contains(s.names, y.Name), own), &faults)
	}
	for i, name := range s.names {
		if own[name] == "" {
			lib.add(s.read[i], &faults)
		} else if was := s.read[i].sheet; was != nil {
			lib.replaced = append(lib.replaced, was)
		}
	}
	if len(faults) > 0 {
		faults.Sort()
		return nil, faults
	}
	lib.sort()
	return lib, nil
}

func (l *Library) sort() {
	slices.SortFunc(l.sheets, func(a, b *Sheet) int { return strings.Compare(a.Name, b.Name) })
}

// Watched is the same library, which tells what it is asked for: the file name of a sheet, whether there is such a sheet or not.
// It may be told from several goroutines.
func (l *Library) Watched(asked func(name string)) *Library {
	return &Library{sheets: l.sheets, replaced: l.replaced, asked: asked}
}

// With is the library of a yard that has of its own sheets only those named, by file name.
func (l *Library) With(own []string) *Library {
	out := &Library{}
	stands := map[string]bool{}
	for _, s := range l.sheets {
		if !s.Yards || slices.Contains(own, s.Name) {
			out.sheets, stands[s.Name] = append(out.sheets, s), true
		}
	}
	for _, s := range l.replaced {
		if !stands[s.Name] {
			out.sheets = append(out.sheets, s)
		} else {
			out.replaced = append(out.replaced, s)
		}
	}
	out.sort()
	return out
}

// Own gives the file names of the yard's own sheets, in order.
func (l *Library) Own() []string {
	var out []string
	for _, s := range l.sheets {
		if s.Yards {
			out = append(out, s.Name)
		}
	}
	return out
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
	if l.asked != nil {
		l.asked(name)
	}
	for _, s := range l.sheets {
		if s.Name == name {
			return s, true
		}
	}
	return nil, false
}

// Sheets gives every sheet, by name.
func (l *Library) Sheets() []*Sheet { return slices.Clone(l.sheets) }

// Shipped gives the name of every sheet that comes with the program without .toml, for messages. The yard's own are not among
// them: what a hull does not name takes no part in its file.
func (l *Library) Shipped() []string {
	var out []string
	for _, s := range slices.Concat(l.sheets, l.replaced) {
		if !s.Yards {
			out = append(out, strings.TrimSuffix(s.Name, ".toml"))
		}
	}
	slices.Sort(out)
	return out
}
