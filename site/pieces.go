package site

import (
	"context"
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"sync"

	"hullfile/engine"
	"hullfile/engine/glossary"
	"hullfile/engine/handbook"
	"hullfile/engine/record"
)

// Pieces is a yard folder whose hulls are read one by one: those whose records changed since the last run, and each again
// when its book is made. Of all others a run knows what the output remembers.
type Pieces struct {
	Known  func() (record.Known, error)             // what records may name that comes with the program; asked if one is read
	Choose func(numbers []string) ([]string, error) // which hulls to write, given all of them
	Ready  func(*record.Yard) (Reckoner, error)     // called once, and only if a book is to be made
}

// Reckoner is what books are made by.
type Reckoner struct {
	Assess   func(*record.Yard, *record.Hull) *engine.Dossier // called from several goroutines
	Handbook *handbook.Book
	Words    *glossary.Table
}

// mostHeld is how many hulls that were read to look at them are kept until their book is made, and need not be read again.
const mostHeld = 16

// pieces is the supply of a run over a yard that is read hull by hull.
type pieces struct {
	job    *Job
	soon   func() // a book will be made
	stage  *stage
	was    *state
	papers *papers
	kept   *kept
	keys   keyring
	rooms  *rooms

	ground  ground
	anew    bool     // what belongs to no hull was read again
	stocked *stocked // what is remembered of the stock, where it was not read
	yard    yardMemo
	hulls   []hullMemo
	numbers []string
	named   []string // those to write
	near    func() *engine.Neighbours

	begin   func() (*record.Piecewise, error)
	shared  func() *record.Yard // what belongs to no hull, nil where it has faults
	shelved func() *shelf
	ready   func() (*record.Yard, error)
	files   func() map[string]record.File
	reckon  Reckoner
	mu      sync.Mutex
	held    map[string]*record.One
	faulty  map[string]*record.One
}

func newPieces(ctx context.Context, press *press, s *stage, was *state, papers *papers) (*pieces, error) {
	job := &press.job
	p := &pieces{job: job, soon: press.soon, stage: s, was: was, papers: papers, kept: newKept(s), rooms: &press.rooms, held: map[string]*record.One{}, faulty: map[string]*record.One{}}
	if was.program != job.programOf() {
		p.was = newState() // another program may read the same records otherwise
	}
	p.keys.papers = papers
	papers.trail.known = p.kept.papers(keptYard)
	p.begin = sync.OnceValues(p.beginning)
	p.shared, p.shelved = sync.OnceValue(p.yardOnly), sync.OnceValue(p.shelve)
	p.ready, p.files = sync.OnceValues(p.prepare), sync.OnceValue(p.byPath)
	if err := p.lookAround(); err != nil {
		return nil, err
	}
	if err := p.lookAtHulls(ctx); err != nil {
		return nil, err
	}
	if err := p.told(); err != nil {
		return nil, err
	}
	if err := p.neighbours(ctx); err != nil {
		return nil, err
	}
	var err error
	p.named, err = job.Pieces.Choose(slices.Clone(p.numbers))
	return p, err
}

func (p *pieces) all() []string    { return p.numbers }
func (p *pieces) chosen() []string { return p.named }
func (p *pieces) block() Block     { return p.yard.Block }
func (p *pieces) own() []ownFile   { return p.yard.Own }

// before is the moment from which on times of files are not trusted.
func (p *pieces) before() int64 { return p.stage.began - int64(tick) }

// beginning reads what belongs to no hull.
func (p *pieces) beginning() (*record.Piecewise, error) {
	known, err := p.job.Pieces.Known()
	if err != nil {
		return nil, err
	}
	if !p.anew {
		if of, ok := p.kept.stock(p.was.yard.Stocked); ok {
			p.stocked = of
			return record.BeginWithout(p.job.Root, known, of.has)
		}
	}
	return record.Begin(p.job.Root, known)
}

// shelve makes the shelf, with what is remembered of the stock where that was not read.
func (p *pieces) shelve() *shelf {
	s := newShelf(p.shared())
	if p.stocked != nil {
		p.stocked.lay(s)
	} else {
		p.yard.Stocked = p.kept.writeStock(stockedOn(s))
	}
	return s
}

// lookAround looks at what belongs to no hull, and reads it where it is not as it is remembered.
func (p *pieces) lookAround() error {
	var err error
	if p.ground, err = lookAtGround(p.job.Root.Name()); err != nil {
		return err
	}
	is := p.ground.mark(p.before())
	if is == p.was.yard.Look && is != (mark{}) && !p.ground.lone {
		p.yard, p.keys.common = p.was.yard, p.was.yard.Common
		for i := range p.was.hulls {
			p.numbers = append(p.numbers, p.was.hulls[i].Token.Number)
		}
		return nil
	}
	p.anew = true
	from, err := p.begin()
	if err != nil {
		return err
	}
	p.numbers = from.Numbers()
	p.yard = yardMemo{Look: is, Context: from.Context(), Stock: stockSum(from), Own: ownOf(from.Files()), Designs: from.Designs()}
	return nil
}

// stockSum hashes the stock.
func stockSum(from *record.Piecewise) [sha256.Size]byte {
	all := sha256.New()
	for _, f := range from.Files() {
		if strings.HasPrefix(f.Path, "stock/") {
			hashFile(all, f)
		}
	}
	return [sha256.Size]byte(all.Sum(nil))
}

// yardOnly fills what belongs to no hull.
func (p *pieces) yardOnly() *record.Yard {
	from, err := p.begin()
	if err != nil || from.Faults() != nil {
		return nil
	}
	return from.Yard()
}

// told gives the faults of everything that was read, and otherwise takes up what belongs to no hull.
func (p *pieces) told() error {
	if !p.anew && len(p.faulty) == 0 {
		return nil
	}
	from, err := p.begin()
	if err != nil {
		return err
	}
	var bad []*record.One
	for _, number := range p.numbers {
		if one := p.faulty[number]; one != nil {
			bad = append(bad, one)
		}
	}
	if all := from.Faults(bad...); all != nil {
		return all
	}
	y := p.shared()
	p.yard.Block = blockOf(&y.Builder)
	if p.yard.Common, err = commonSum(p.job, p.shelved()); err != nil {
		return err
	}
	p.keys.common = p.yard.Common
	if err := p.letGoOfStock(); err != nil {
		return err
	}
	if !slices.Equal(p.yard.Own, p.was.yard.Own) {
		_, err = p.ready() // what is wrong in a sheet is told also where no hull asks for it
	}
	return err
}

// prepare makes ready what books are made by.
func (p *pieces) prepare() (*record.Yard, error) {
	from, err := p.begin()
	if err != nil {
		return nil, err
	}
	if all := from.Faults(); all != nil {
		return nil, all
	}
	y := p.shared()
	p.reckon, err = p.job.Pieces.Ready(y)
	p.job.Handbook, p.job.Words = p.reckon.Handbook, p.reckon.Words
	return y, err
}

// lookAtHulls looks at the records of every hull, and reads those that are not as they are remembered.
func (p *pieces) lookAtHulls(ctx context.Context) error {
	p.hulls = make([]hullMemo, len(p.numbers))
	return inParallel(ctx, len(p.numbers), func(_ context.Context, i int) error {
		if err := p.lookAtHull(i); err != nil {
			return fmt.Errorf("hull %s: %w", p.numbers[i], err)
		}
		return nil
	})
}

func (p *pieces) lookAtHull(i int) error {
	number := p.numbers[i]
	own := look{text: append(p.rooms.take(usualLook), p.yard.Context[:]...)} // with the names that its records may use
	defer func() { p.rooms.back(own.text) }()
	if err := own.hull(p.job.Root.Name(), number); err != nil {
		return err
	}
	was, known := p.was.hull(number)
	if known && was.Look != (mark{}) && p.lookOf(&own, was.Token.Design) == was.Look {
		p.hulls[i] = *was
		if !p.anew || p.yard.Stock == p.was.yard.Stock || p.restock(&p.hulls[i]) {
			return nil
		}
	}
	from, err := p.begin()
	if err != nil {
		return err
	}
	p.soon()
	one := from.Read(number)
	if one.Faulty() || one.Hull == nil {
		p.mu.Lock()
		p.faulty[number] = one
		p.mu.Unlock()
		return nil
	}
	if p.shared() == nil {
		return nil // its faults are told when all hulls were read
	}
	if p.hulls[i], err = p.memo(one); err != nil {
		return err
	}
	p.hulls[i].Look = p.lookOf(&own, one.Hull.Design.V)
	return nil
}

// restock finds what a hull whose records are as they were draws on of another stock, from its texts. It reports whether they
// are known.
func (p *pieces) restock(m *hullMemo) bool {
	all, known := p.kept.texts(m.Token.Number, m.Brief)
	if !known || p.shared() == nil {
		return known // faults of the yard are told when all hulls were looked at
	}
	m.Stock = p.shelved().sumOf(p.shelved().drawnBy(all))
	return true
}

// lookOf gives the look of a hull together with those of the designs that it is laid over.
func (p *pieces) lookOf(own *look, design string) mark {
	all := *own // what is added lies behind its text, where the next may write over it
	for range p.yard.Designs {
		d, known := p.ground.designs[design]
		if !known {
			break
		}
		all.add(&d)
		i := slices.IndexFunc(p.yard.Designs, func(d record.DesignName) bool { return d.Name == design })
		if i < 0 {
			break
		}
		design = p.yard.Designs[i].BasedOn
	}
	return all.mark(p.before())
}

// memo makes what is remembered of a hull that was read, and keeps its brief.
func (p *pieces) memo(one *record.One) (hullMemo, error) {
	h := one.Hull
	trail := &paperTrail{known: p.kept.papers(h.Number)}
	m := hullMemo{Title: strings.Clone(h.Title.V), State: strings.Clone(h.Identity.State.V)} // see engine.Token
	var err error
	if m.Records, m.Own, err = p.keys.own(h, p.filesOf(one), one.Doubts, trail); err != nil {
		return m, err
	}
	m.Stock = p.shelved().sumOf(p.shelved().drawing.Of(h))
	b := engine.BriefOf(h)
	m.Token = b.Token()
	m.Brief, err = p.kept.write(h.Number, b, textsOf(h), trail.seen)
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.held) < mostHeld {
		p.held[h.Number] = one
	}
	return m, err
}

// filesOf finds the record files that a hull may be laid over.
func (p *pieces) filesOf(one *record.One) fileBy {
	return func(path string) (record.File, bool) {
		for _, f := range one.Files {
			if f.Path == path {
				return f, true
			}
		}
		f, known := p.files()[path]
		return f, known
	}
}

// byPath are the files that belong to no hull.
func (p *pieces) byPath() map[string]record.File {
	files := map[string]record.File{}
	if from, err := p.begin(); err == nil {
		for _, f := range from.Files() {
			files[f.Path] = f
		}
	}
	return files
}
