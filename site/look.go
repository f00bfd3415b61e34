package site

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"time"
)

// tick is more than the coarsest clock of a disk in use, that of FAT with two seconds.
const tick = 3 * time.Second

// look is what the disk says of files without one of them being read: names, kinds, sizes and times, and where the system
// has them the number of the file and the time at which anything of it changed last.
type look struct {
	text   []byte
	newest int64 // of the times, nanoseconds since 1970
}

// mark gives the look as a hash. It is empty where a file is younger than a moment: it may change again within one tick of
// the disk's clock, which no time would tell.
func (l *look) mark(before int64) mark {
	if l.newest >= before {
		return mark{}
	}
	sum := sha256.Sum256(l.text)
	return markOf(sum[:])
}

// add takes another look, e.g. at the design that a hull is laid over.
func (l *look) add(other *look) {
	l.text = append(append(l.text, other.text...), 0)
	l.newest = max(l.newest, other.newest)
}

// tree looks at all files below a folder. A folder that is not there looks like nothing.
func (l *look) tree(dir, below string) error {
	from, err := lookFrom(filepath.Join(dir, below))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	defer from.close()
	entries, err := from.entries()
	if err != nil {
		return err
	}
	for _, e := range entries {
		name := filepath.Join(below, e.Name())
		if err := l.entry(from, e, name); err != nil {
			return err
		}
		if e.IsDir() {
			if err := l.tree(dir, name); err != nil {
				return err
			}
		}
	}
	l.text = append(l.text, '.')
	return nil
}

// entry looks at one file; of a folder or a link only its name and kind count.
func (l *look) entry(from lookout, e fs.DirEntry, name string) error {
	l.text = strconv.AppendQuote(l.text, name)
	if !e.Type().IsRegular() {
		l.text = append(l.text, e.Type().String()...)
		return nil
	}
	is, err := from.see(e.Name())
	if errors.Is(err, fs.ErrNotExist) {
		return nil // it went away just now, and reading will tell
	}
	if err != nil {
		return err
	}
	for _, n := range [...]int64{is.size, is.written, is.number, is.changed} {
		l.text = strconv.AppendInt(append(l.text, ' '), n, 36)
	}
	l.newest = max(l.newest, is.written, is.changed)
	return nil
}

// ground is what lies in a yard folder beside the folders of its hulls.
type ground struct {
	look
	lone    bool            // a hull.toml that stands alone
	designs map[string]look // by name
}

// lookAtGround looks at the yard folder. Folders that hold no records count by their names only: the output may be one of them.
func lookAtGround(yard string) (ground, error) {
	g := ground{designs: map[string]look{}}
	from, err := lookFrom(yard)
	if err != nil {
		return g, err
	}
	defer from.close()
	entries, err := from.entries()
	if err != nil {
		return g, err
	}
	there := map[string]bool{}
	for _, e := range entries {
		there[e.Name()] = true
		if err := g.entry(from, e, e.Name()); err != nil {
			return g, err
		}
		if !e.IsDir() || !slices.Contains(recordFolders, e.Name()) && e.Name() != "logs" {
			continue
		}
		switch e.Name() {
		case "hulls":
			err = g.names(yard, "hulls")
		case "designs":
			err = g.lookAtDesigns(yard)
		default:
			err = g.tree(yard, e.Name())
		}
		if err != nil {
			return g, err
		}
	}
	g.lone = there["hull.toml"] && !there["yard.toml"]
	return g, nil
}

// names looks at names and kinds alone.
func (l *look) names(yard, dir string) error {
	entries, err := os.ReadDir(filepath.Join(yard, dir))
	for _, e := range entries {
		l.text = append(strconv.AppendQuote(l.text, e.Name()), e.Type().String()...)
	}
	return err
}

func (g *ground) lookAtDesigns(yard string) error {
	if err := g.names(yard, "designs"); err != nil {
		return err
	}
	from, err := lookFrom(filepath.Join(yard, "designs"))
	if err != nil {
		return err
	}
	defer from.close()
	entries, err := from.entries()
	if err != nil {
		return err
	}
	for _, e := range entries {
		var one look
		if e.IsDir() {
			err = one.tree(yard, filepath.Join("designs", e.Name()))
		} else {
			err = one.entry(from, e, e.Name())
		}
		if err != nil {
			return err
		}
		g.add(&one)
		g.designs[e.Name()] = one
	}
	return nil
}

// lookAtHull looks at the folder of a hull.
func lookAtHull(yard, number string) (look, error) {
	var one look
	return one, one.tree(yard, filepath.Join("hulls", number))
}
