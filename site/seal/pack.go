package seal

import (
	"archive/zip"
	"compress/flate"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"

	"hullfile/engine/document"
	"hullfile/engine/unit"
)

// Packed is one entry of a zip: a file of the technical file, or a text of our own.
type Packed struct {
	Name string // in the zip
	From string // in the technical file; empty for a text
	Text []byte
}

// packDay is the day that every entry of a zip carries, the first that the form knows: a day of today would make another
// zip of the same file.
var packDay = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// Pack writes a zip with entries in the order of their names. The same entries give the same bytes from the same make of
// the program; the lists of hashes inside hold for any. Files are read as they are packed.
// The error names the entry that cannot be read or packed.
func Pack(ctx context.Context, from fs.FS, entries []Packed, to io.Writer) error {
	entries = slices.SortedFunc(slices.Values(entries), func(a, b Packed) int { return strings.Compare(a.Name, b.Name) })
	z := zip.NewWriter(to)
	z.RegisterCompressor(zip.Deflate, func(w io.Writer) (io.WriteCloser, error) { return flate.NewWriter(w, flate.DefaultCompression) })
	low := map[string]string{}
	for _, e := range entries {
		if !listable(e.Name) {
			return fmt.Errorf("%q cannot be the name of an entry of a zip", e.Name)
		}
		if other, twice := low[strings.ToLower(e.Name)]; twice {
			return fmt.Errorf("%q and %q would be one file on some systems", other, e.Name)
		}
		low[strings.ToLower(e.Name)] = e.Name
		if err := packOne(ctx, from, e, z); err != nil {
			return fmt.Errorf("%s: %w", e.Name, err)
		}
	}
	return z.Close()
}

func packOne(ctx context.Context, from fs.FS, e Packed, z *zip.Writer) error {
	header := &zip.FileHeader{Name: e.Name, Method: zip.Deflate, Modified: packDay}
	if isPressed(e.Name) {
		header.Method = zip.Store
	}
	header.SetMode(0o644)
	w, err := z.CreateHeader(header)
	if err != nil {
		return err
	}
	if e.From == "" {
		_, err = w.Write(e.Text)
		return err
	}
	f, err := from.Open(e.From)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(w, document.Interruptible(ctx, f))
	return err
}

// isPressed reports whether a file is small as it is: pressing it again takes time and gains nothing.
func isPressed(name string) bool {
	switch strings.ToLower(path.Ext(name)) {
	case ".jpg", ".jpeg", ".png", ".zip", ".mp4", ".mov", ".heic", ".webp", ".docx", ".xlsx", ".odt", ".ods":
		return true
	}
	return false
}

// Names of what a zip holds beside the file.
const (
	readFirst  = "READ-FIRST.txt"
	ownerInner = "owner"
	printInner = "print.html"
)

// ErrNoOwner is met where a technical file holds no owner's book.
var ErrNoOwner = errors.New("the technical file holds no owner's book, the folder " + ownerInner)

// ForSurveyor lists the whole technical file with its seals, in a folder named for the hull.
// The error is one of reading the list of hashes.
func ForSurveyor(from fs.FS, r *Report) ([]Packed, error) {
	list, err := listOf(from)
	if err != nil {
		return nil, err
	}
	out := []Packed{{Name: readFirst, Text: r.first("technical file", r.Hull, list, "")}, {Name: r.Hull + "/" + SumsName, From: SumsName}}
	for _, l := range list {
		out = append(out, Packed{Name: r.Hull + "/" + l.Path, From: l.Path})
	}
	for _, s := range r.Seals {
		for _, name := range []string{s.Name, signatureOf(s.Name)} {
			out = append(out, Packed{Name: r.Hull + "/" + inFolder(name), From: inFolder(name)})
		}
	}
	return out, nil
}

// ForOwner lists the owner's book alone, with a list of its hashes. Nothing else of the technical file goes into it: what
// the book may hold was decided where it was made. ErrNoOwner where there is none; otherwise the error is one of reading.
func ForOwner(from fs.FS, r *Report) ([]Packed, error) {
	list, err := listOf(from)
	if err != nil {
		return nil, err
	}
	dir := r.Hull + "-owner/"
	var out []Packed
	var sums strings.Builder
	var inner []Listed
	for _, l := range list {
		name, own := strings.CutPrefix(l.Path, ownerInner+"/")
		if !own {
			continue
		}
		out = append(out, Packed{Name: dir + name, From: l.Path})
		inner = append(inner, Listed{name, l.Hash})
		sums.WriteString(l.Hash + "  " + name + "\n")
	}
	if len(out) == 0 {
		return nil, ErrNoOwner
	}
	return append(out, Packed{Name: dir + SumsName, Text: []byte(sums.String())}, Packed{Name: readFirst, Text: r.first("owner's book", r.Hull+"-owner", inner, " It was taken out of the technical file with that root.")}), nil
}

func listOf(from fs.FS) ([]Listed, error) {
	text, err := readFile(from, SumsName, mostSums)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", SumsName, err)
	}
	list, wrong := ReadSums(text)
	if len(wrong) > 0 {
		return nil, fmt.Errorf("%s is not as it was written: %s", SumsName, strings.Join(atMost(wrong, 3), "; "))
	}
	return list, nil
}

// first is the text that is read first: what to open, how to print, how to prove.
func (r *Report) first(what, dir string, list []Listed, more string) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "The %s of hull %s", what, r.Hull)
	if r.Issue > 0 {
		fmt.Fprintf(&b, ", issue %d", r.Issue)
	}
	if r.Issued != "" {
		b.WriteString(" of " + unit.Day(r.Issued))
	}
	fmt.Fprintf(&b, ".\n\nTo read it, unpack the zip and open %s/%s in a browser. It needs no network.\n", dir, coverName)
	if slices.ContainsFunc(list, func(l Listed) bool { return l.Path == printInner }) {
		fmt.Fprintf(&b, "\nTo print it, open %s/%s and print from the browser, with its own heads and feet left out. Or, with Chromium:\n\n"+
			"    chromium --headless --no-pdf-header-footer --generate-pdf-document-outline --print-to-pdf=%s.pdf %s/%s\n", dir, printInner, dir, dir, printInner)
	} else {
		b.WriteString("\nTo print it, print its pages from the browser.\n")
	}
	fmt.Fprintf(&b, "\nTo see that nothing was altered, open a terminal in %s and run\n\n    sha256sum --quiet -c %s\n\nIt prints nothing where every file is as it was listed.\n", dir, SumsName)
	fmt.Fprintf(&b, "The root of the technical file is\n\n    %s\n\nKeep these digits on paper.%s\n", r.Root, more)
	return []byte(b.String())
}
