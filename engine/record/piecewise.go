package record

import (
	"crypto/sha256"
	"fmt"
	"maps"
	"os"
	"reflect"
	"slices"

	"hullfile/engine/finding"
)

// Piecewise is a yard folder whose hulls are read one by one, each when it is needed and as often as it is. All else is
// read at the beginning.
type Piecewise struct{ r *reading }

// One is a hull as it was read, by itself.
type One struct {
	Hull   *Hull // nil where there are faults, also in what it shares with others, such as a design
	Doubts []YardDoubt
	Files  []File // its own record files
	faults faults
}

// Faulty reports whether something is wrong with the records of the hull.
func (o *One) Faulty() bool { return len(o.faults.all) > 0 }

// Begin reads a yard folder but for its hulls. The error is one of the folder itself; faults of records are told by Faults.
func Begin(root *os.Root, known Known) (*Piecewise, error) { return BeginWithout(root, known, nil) }

// BeginWithout leaves out files of the stock in which nothing was wrong when they were read; Stock reads them when they are needed.
func BeginWithout(root *os.Root, known Known, stock func(file string) bool) (*Piecewise, error) {
	if _, err := root.Stat("."); err != nil {
		return nil, fmt.Errorf("the yard folder cannot be read: %w", bottom(err))
	}
	p := &Piecewise{newReading(root, known)}
	p.r.leave = stock
	p.r.shared()
	p.r.leave = nil
	return p, nil
}

// WithoutStock gives the same without the files of the stock that are named, in which nothing is wrong; Stock reads them again when
// they are needed.
func (p *Piecewise) WithoutStock(named func(file string) bool) *Piecewise {
	r := *p.r
	r.stock, r.disk = nil, &disk{root: p.r.disk.root, fs: &r.faults}
	for _, f := range p.r.disk.files {
		if !named(f.Path) {
			r.disk.files = append(r.disk.files, f)
		}
	}
	r.doubts = slices.DeleteFunc(slices.Clone(p.r.doubts), func(d YardDoubt) bool { return d.Within(named) })
	return &Piecewise{&r}
}

// Some is what some files of the stock hold.
type Some struct {
	Stock  Stock
	Doubts []YardDoubt
	Files  []File
}

// Stock reads some files of the stock. It may be asked from several goroutines. The error is finding.Faults.
func (p *Piecewise) Stock(files []string) (Some, error) {
	r := p.r.alone()
	r.leave = func(file string) bool { return !slices.Contains(files, file) }
	root := r.store(stockDir, stockTable, "lot consumable")
	if told := r.faults.told(); len(told) > 0 {
		return Some{}, told
	}
	s := Some{Doubts: r.doubts, Files: r.disk.files}
	fill(stockTable, root, reflect.ValueOf(&s.Stock).Elem())
	return s, nil
}

// Faults gives the faults of what was read at the beginning and of the hulls given, in file order. Where there are none, so
// that the yard can be used, it is nil.
func (p *Piecewise) Faults(hulls ...*One) finding.Faults {
	all := faults{}
	all.join(&p.r.faults)
	for _, one := range hulls {
		all.join(&one.faults)
	}
	told := all.told()
	if len(told) == 0 {
		return nil
	}
	return told
}

// Numbers gives the numbers of all hulls, in order.
func (p *Piecewise) Numbers() []string {
	if !p.r.lone {
		return slices.Clone(p.r.dirs)
	}
	var all []string
	for _, h := range p.r.hulls {
		all = append(all, h.number)
	}
	return all
}

// Designs gives the designs with what each is based on, as far as they could be read.
func (p *Piecewise) Designs() []DesignName {
	var all []DesignName
	for _, name := range p.r.names["design"] {
		on, _ := text(p.r.designs[name].root.kid("based_on"))
		all = append(all, DesignName{Name: name, BasedOn: on})
	}
	return all
}

// Yard gives what belongs to no hull: a yard without hulls, with the files and the doubts that are not of one. It is there
// only where Faults finds nothing.
func (p *Piecewise) Yard() *Yard {
	y := p.r.sharedYard()
	y.Doubts = slices.DeleteFunc(slices.Clone(y.Doubts), func(d YardDoubt) bool { return d.Hull != "" })
	return y
}

// Read reads one hull. It may be asked from several goroutines. A hull that has gone in the meantime is one with faults.
func (p *Piecewise) Read(number string) *One {
	if p.r.lone {
		return p.lone()
	}
	one := p.r.alone()
	one.hull(number, p.r.dirs)
	return one.one()
}

// lone is the hull of a folder that holds nothing else; it was read at the beginning.
func (p *Piecewise) lone() *One {
	one := &reading{hulls: p.r.hulls, disk: &disk{}}
	one.doubts = slices.DeleteFunc(slices.Clone(p.r.doubts), func(d YardDoubt) bool { return d.Hull == "" })
	one.faults.join(&p.r.faults)
	return one.one()
}

func (r *reading) one() *One {
	o := &One{Doubts: r.doubts, Files: r.disk.files, faults: r.faults}
	if o.Faulty() || r.faulty || len(r.hulls) == 0 {
		return o
	}
	l := r.hulls[0]
	l.fill()
	o.Hull = l.hull
	o.Doubts = append(slices.Clone(o.Doubts), apart(l.hull)...)
	return o
}

// Context changes when something changes by which the records of a hull are checked, but for the designs: the names that
// they may use.
func (p *Piecewise) Context() [sha256.Size]byte {
	all := sha256.New()
	for _, kind := range slices.Sorted(maps.Keys(p.r.names)) {
		names := slices.Sorted(slices.Values(p.r.names[kind]))
		fmt.Fprintf(all, "%q %q\n", kind, names)
	}
	return [sha256.Size]byte(all.Sum(nil))
}

// Files gives the record files that were read at the beginning.
func (p *Piecewise) Files() []File { return p.r.disk.files }
