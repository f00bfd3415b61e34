package record

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// folder says what may lie in one folder of a yard.
type folder struct {
	files   []string
	folders []string
	later   []string // folders that belong to a yard but are not read
	strict  bool     // nothing else may lie there
	instead string   // where other files can go
}

// disk reads from the yard folder and from nowhere else: links are refused, and os.Root keeps every path inside.
type disk struct {
	root  *os.Root
	fs    *faults
	files []File   // every record file read
	later []string // folders that are not read
}

// list gives the entries of a folder in order of their names.
func (d *disk) list(dir string) ([]fs.DirEntry, error) {
	f, err := d.root.Open(dir)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	all, err := f.ReadDir(-1)
	slices.SortFunc(all, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return all, err
}

// look tells which of the things that may lie in a folder do, and which things lie there that nobody reads.
func (d *disk) look(dir string, may folder) (found map[string]bool) {
	found = map[string]bool{}
	all, err := d.list(dir)
	if err != nil {
		d.fs.add(placeAt(dir), "", "", "the folder cannot be read: %v", bottom(err))
		return found
	}
	for _, e := range all {
		switch name := e.Name(); {
		case leftover(name):
		case slices.Contains(may.files, name):
			found[name] = d.usual(dir, e, false)
		case slices.Contains(may.folders, name):
			found[name] = d.usual(dir, e, true)
		case slices.Contains(may.later, name):
			d.later = append(d.later, path.Join(dir, name))
		default:
			d.stray(dir, e, may)
		}
	}
	return found
}

// usual refuses a link, a device, and a folder where a file is expected.
func (d *disk) usual(dir string, e fs.DirEntry, wantsFolder bool) bool {
	at := placeAt(path.Join(dir, e.Name()))
	switch {
	case e.Type()&fs.ModeSymlink != 0:
		d.fs.add(at, "", "put the file or folder itself there", "this is a link; a yard folder must be whole in itself")
	case wantsFolder && !e.IsDir():
		d.fs.add(at, "", "", "this is expected to be a folder")
	case !wantsFolder && !e.Type().IsRegular():
		d.fs.add(at, "", "", "this is not a file that can be read")
	default:
		return true
	}
	return false
}

// stray tells of something that nobody reads, if it looks as if somebody were meant to.
func (d *disk) stray(dir string, e fs.DirEntry, may folder) {
	known := may.files
	if e.IsDir() {
		known = may.folders
	}
	near, ok := nearName(e.Name(), known)
	of, copied := copyOfOne(e.Name(), known)
	ext := strings.ToLower(path.Ext(e.Name()))
	if !may.strict && !ok && !copied && (e.IsDir() || ext != ".toml" && ext != ".csv") {
		return
	}
	at, what := placeAt(path.Join(dir, e.Name())), ""
	if _, bad := firstUnwanted(e.Name(), false); bad {
		at, what = placeAt(dir), quoted(e.Name())+": "
	}
	hint := may.instead
	switch {
	case copied:
		hint = "this looks like a copy of " + of + ", and only " + of + " is read: take it out of the yard folder"
	case ok && (ext == ".xlsx" || ext == ".ods" || ext == ".xls"):
		hint = "save it as CSV under the name " + near
	case ok:
		hint = "did you mean " + near + "?"
	}
	d.fs.add(at, "", hint, "%snobody reads this %s", what, fileOrFolder(e))
}

// copyMark is what systems put into the name of a copy: "hull - Copy.toml", "Copy of hull.toml", "hull (1).toml", "hull copy 2.toml".
var copyMark = regexp.MustCompile(`(?i)^copy of | - copy( ?\(\d+\))?| copy( \d+)?| ?\(\d+\)`)

// copyOfOne finds the known name of which a file is a copy by its name.
func copyOfOne(name string, known []string) (string, bool) {
	of := copyMark.ReplaceAllString(name, "")
	return of, of != name && slices.Contains(known, of)
}

func fileOrFolder(e fs.DirEntry) string {
	if e.IsDir() {
		return "folder"
	}
	return "file"
}

// nearName finds the known name that a file was most likely meant to have: the nearest, or, for text and spreadsheets,
// the one that differs only in what follows the point.
func nearName(name string, known []string) (string, bool) {
	if near, ok := nearest(name, known); ok {
		return near, true
	}
	if !slices.Contains([]string{"", ".toml", ".csv", ".txt", ".tsv", ".xlsx", ".xls", ".ods"}, strings.ToLower(path.Ext(name))) {
		return "", false
	}
	stem, _, _ := strings.Cut(name, ".")
	var stems []string
	for _, k := range known {
		s, _, _ := strings.Cut(k, ".")
		stems = append(stems, s)
	}
	near, ok := nearest(stem, stems)
	if !ok {
		return "", false
	}
	return known[slices.Index(stems, near)], true
}

// leftover reports what systems and editors leave behind.
func leftover(name string) bool {
	low := strings.ToLower(name)
	ends := func(end string) bool { return strings.HasSuffix(low, end) }
	return strings.HasPrefix(name, ".") || strings.HasPrefix(name, "~$") || strings.HasPrefix(name, "#") && ends("#") || ends("~") || ends(".bak") || ends(".tmp") || low == "thumbs.db" || low == "desktop.ini"
}

// text reads one record file whole, up to a size that no record reaches.
func (d *disk) text(name string, most int64) (text []byte, ok bool) {
	f, err := d.root.Open(name)
	if err != nil {
		d.fs.add(placeAt(name), "", toRead(err), "cannot be read: %v", bottom(err))
		return nil, false
	}
	defer f.Close()
	text, err = io.ReadAll(io.LimitReader(f, most+1))
	switch {
	case err != nil:
		d.fs.add(placeAt(name), "", "", "cannot be read: %v", bottom(err))
		return nil, false
	case int64(len(text)) > most:
		d.fs.add(placeAt(name), "", "a record holds figures and words; photographs belong into documents/, logs into logs/", "the file is larger than %d MiB", most>>20)
		return nil, false
	}
	d.files = append(d.files, File{Path: name, Text: text})
	return text, true
}

// toRead says what lets a file be read that this user may not read.
func toRead(err error) string {
	if errors.Is(err, fs.ErrPermission) {
		return "let this user read the file, or close the program that holds it"
	}
	return ""
}

// paper refuses a document or log that is reached through a link. Whether it is there at all is no matter of reading.
func (d *disk) paper(dir, in, file string) bool {
	at := path.Join(dir, in)
	for _, part := range strings.Split(file, "/") {
		at = path.Join(at, part)
		info, err := d.root.Lstat(at)
		if err != nil {
			return true
		}
		if info.Mode()&fs.ModeSymlink != 0 {
			return false
		}
	}
	return true
}

func placeAt(name string) finding.Place { return finding.Place{File: name} }

// bottom leaves the machine's path out of an error.
func bottom(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
