package seal

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
)

// Walls for a zip: more is no technical file, and would keep a reader busy for days.
const (
	mostEntries  = 500_000
	mostUnpacked = 64 << 30 // bytes
)

// OpenZip gives the technical file inside a zip without unpacking it. A zip with an entry that would climb out of its
// folder, with two entries of one name, or with something that is no file is refused: what a program that unpacks it
// would make of it, nobody knows.
// The error says why.
func OpenZip(from io.ReaderAt, size int64) (fs.FS, error) {
	z, err := zip.NewReader(from, size)
	if z == nil || err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		return nil, errors.New("it is no zip, or breaks off")
	}
	if len(z.File) > mostEntries {
		return nil, fmt.Errorf("the zip has %d entries, more than %d", len(z.File), mostEntries)
	}
	seen, tops, total := map[string]bool{}, []string{}, uint64(0)
	for _, f := range z.File {
		name := strings.TrimSuffix(f.Name, "/")
		low := strings.ToLower(name)
		switch mode := f.Mode(); {
		case !listable(name):
			return nil, fmt.Errorf("the zip is refused: its entry %q would not stay in its folder, or cannot be the name of a file", f.Name)
		case seen[low]:
			return nil, fmt.Errorf("the zip is refused: two of its entries are called %q", f.Name)
		case !mode.IsRegular() && !mode.IsDir():
			return nil, fmt.Errorf("the zip is refused: its entry %q is no file", f.Name)
		}
		seen[low] = true
		if total += f.UncompressedSize64; total > mostUnpacked || f.UncompressedSize64 > mostUnpacked {
			return nil, fmt.Errorf("the zip is refused: unpacked it would be larger than %d GB", uint64(mostUnpacked)>>30)
		}
		if first, rest, _ := strings.Cut(name, "/"); rest == SumsName {
			tops = append(tops, first)
		}
	}
	if seen[strings.ToLower(SumsName)] || len(tops) != 1 {
		return z, nil
	}
	return fs.Sub(z, tops[0])
}
