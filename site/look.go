package site

import (
	"crypto/sha256"
	"errors"
	"io/fs"
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

// add takes another look that was made before, e.g. at the design that a hull is laid over.
func (l *look) add(other *looked) {
	l.text = append(l.text, other.sum[:]...)
	l.newest = max(l.newest, other.newest)
}

// looked is a look that many others take, as a hash.
type looked struct {
	sum    [sha256.Size]byte
	newest int64
}

func (l *look) done() looked { return looked{sha256.Sum256(l.text), l.newest} }

// tree looks at all files below a folder. A folder that is not there looks like an empty one.
func (l *look) tree(from lookout, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		l.text = append(l.text, '.')
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
		if err := l.entry(from, e); err != nil {
			return err
		}
		if e.kind == fs.ModeDir {
			if err := l.tree(from.below(e.name)); err != nil {
				return err
			}
		}
	}
	l.text = append(l.text, '.')
	return nil
}

// entry looks at one file; of a folder or a link only its name and kind count.
func (l *look) entry(from lookout, e seen) error {
	l.text = strconv.AppendQuote(l.text, e.name)
	if e.kind != 0 {
		l.text = strconv.AppendInt(append(l.text, ':'), int64(e.kind), 36)
		return nil
	}
	is, err := from.see(e.name)
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
	lone    bool              // a hull.toml that stands alone
	designs map[string]looked // by name
}

// lookAtGround looks at the yard folder. Folders that hold no records count by their names only: the output may be one of them.
func lookAtGround(yard string) (ground, error) {
	g := ground{designs: map[string]looked{}}
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
		there[e.name] = true
		if err := g.entry(from, e); err != nil {
			return g, err
		}
		if e.kind != fs.ModeDir || !slices.Contains(recordFolders, e.name) && e.name != "logs" {
			continue
		}
		switch e.name {
		case "hulls":
			err = g.names(from.below(e.name))
		case "designs":
			err = g.lookAtDesigns(from.below(e.name))
		default:
			err = g.tree(from.below(e.name))
		}
		if err != nil {
			return g, err
		}
	}
	g.lone = there["hull.toml"] && !there["yard.toml"]
	return g, nil
}

// names looks at names and kinds alone.
func (l *look) names(from lookout, err error) error {
	if err != nil {
		return err
	}
	defer from.close()
	entries, err := from.entries()
	for _, e := range entries {
		l.text = strconv.AppendInt(append(strconv.AppendQuote(l.text, e.name), ':'), int64(e.kind), 36)
	}
	return err
}

func (g *ground) lookAtDesigns(from lookout, err error) error {
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
		err := one.entry(from, e)
		if err == nil && e.kind == fs.ModeDir {
			err = one.tree(from.below(e.name))
		}
		if err != nil {
			return err
		}
		is := one.done()
		g.add(&is)
		g.designs[e.name] = is
	}
	return nil
}

// hull looks at the folder of a hull.
func (l *look) hull(yard, number string) error {
	return l.tree(lookFrom(filepath.Join(yard, "hulls", number)))
}
