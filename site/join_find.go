package site

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"hullfile/site/results"
)

// joinable is what lies in the parts of a join and in its output.
type joinable struct {
	pieces []piece         // those that make the joined output, in order of number
	yard   map[string]bool // numbers of all hulls of the yard, as far as the parts remember them
	beside []string        // hulls of the output that are in none of the parts
	gone   []string        // those of them that shall go
}

// absent gives the hulls that the yard has by what the parts remember, and of which no file was found.
func (j *joinable) absent() []string {
	for _, p := range j.pieces {
		delete(j.yard, p.line.Number)
	}
	return slices.Sorted(maps.Keys(j.yard))
}

// mayLie sees that the files can lie beside each other in the output, and that nothing of somebody else's lies where they go.
func (j *joinable) mayLie(out string) error {
	var numbers []string
	for _, p := range j.pieces {
		numbers = append(numbers, p.line.Number)
	}
	return errors.Join(folderNames(numbers), notInTheWay(out, numbers))
}

// find looks for the technical files in the parts and in the output. Two parts that differ for one hull are refused, because
// nobody can say which is the right one.
func (j *Join) find() (*joinable, error) {
	out, err := filepath.Abs(j.Out)
	if err != nil {
		return nil, err
	}
	found := &joinable{yard: map[string]bool{}}
	by, named := map[string]piece{}, false
	for _, dir := range j.Parts {
		if dir, err = filepath.Abs(dir); err != nil {
			return nil, err
		}
		named = named || dir == out
		if err := filesIn(dir, by); err != nil {
			return nil, err
		}
		for _, h := range readState(dir).hulls {
			found.yard[h.Token.Number] = true
		}
	}
	if ours(out) && !named {
		if err := j.there(out, by, found); err != nil {
			return nil, err
		}
	}
	for _, p := range by {
		found.pieces = append(found.pieces, p)
	}
	slices.SortFunc(found.pieces, func(a, b piece) int { return strings.Compare(a.line.Number, b.line.Number) })
	return found, nil
}

// filesIn finds the technical files in one part.
func filesIn(dir string, by map[string]piece) error {
	if !ours(dir) {
		return fmt.Errorf("%s holds no output of a rendering (%s and %s are not in it)", dir, contentsName, sumsName)
	}
	if _, err := os.Lstat(filepath.Join(dir, results.Name)); err == nil {
		return fmt.Errorf("%s is the file of one hull; name the folder in which it lies", dir)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, e := range entries {
		at := filepath.Join(dir, e.Name())
		if !e.IsDir() || !plainName(e.Name()) || !ours(at) {
			continue
		}
		n, ok := earlier(at, e.Name())
		if !ok {
			return fmt.Errorf("%s: %s cannot be read; render this hull again", at, results.Name)
		}
		if other, twice := by[n.Number]; twice && other.line.Sums != n.Sums {
			return fmt.Errorf("%s and %s are two different files of one hull", other.dir, at)
		} else if !twice {
			by[n.Number] = piece{dir: at, line: n}
		}
	}
	return nil
}

// there takes up what lies in the output: what is the same as in a part need not be copied, what differs gives way to the
// part, and what is in none of them stays unless it shall go. A sealed file neither gives way nor goes.
func (j *Join) there(out string, by map[string]piece, found *joinable) error {
	there := map[string]piece{}
	if err := filesIn(out, there); err != nil {
		return err
	}
	for number, p := range there {
		part, both := by[number]
		switch {
		case both && part.line.Sums == p.line.Sums:
			by[number] = piece{dir: p.dir, line: p.line, part: part.dir}
		case both && sealed(p.dir):
			return fmt.Errorf("%s is sealed, and differs from %s; move it away, and join again", p.dir, part.dir)
		case both:
		case j.Only && !sealed(p.dir):
			found.beside, found.gone = append(found.beside, number), append(found.gone, number)
		default:
			found.beside = append(found.beside, number)
			by[number] = p
		}
	}
	slices.Sort(found.beside)
	slices.Sort(found.gone)
	return nil
}
