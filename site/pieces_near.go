package site

import (
	"context"
	"crypto/sha256"
	"fmt"
	"reflect"
	"slices"
	"sync"

	"hullfile/engine"
	"hullfile/engine/record"
)

// neighbours finds out what each hull takes from others. Where no hull brings anything new to the others, what is remembered
// still holds for those whose own records are the same.
func (p *pieces) neighbours(ctx context.Context) error {
	p.near = sync.OnceValue(func() *engine.Neighbours {
		tokens := make([]engine.Token, len(p.hulls))
		for i := range p.hulls {
			tokens[i] = p.hulls[i].Token
		}
		return engine.NeighboursBy(p.yard.Designs, tokens, p.load)
	})
	news := p.news()
	return inParallel(ctx, len(p.hulls), func(_ context.Context, i int) error {
		m := &p.hulls[i]
		read := m.Taken == [sha256.Size]byte{}
		if read || news.marks {
			b, err := p.load(m.Token.Number, true)
			if err != nil {
				return fmt.Errorf("hull %s: %w", m.Token.Number, err)
			}
			m.Named = p.near().Named(b)
		}
		if read || news.tokens {
			m.Taken = sha256.Sum256(p.near().DigestOf(m.Token.Number, m.Named))
		}
		return nil
	})
}

// news says what the hulls bring that was not there in the last run.
type news struct {
	marks  bool // numbers or identification numbers, by which papers name a hull
	tokens bool // anything that one takes from another
}

func (p *pieces) news() news {
	n := news{tokens: len(p.hulls) != len(p.was.hulls) || !slices.EqualFunc(p.yard.Designs, p.was.yard.Designs, func(a, b record.DesignName) bool { return a.Name == b.Name && a.BasedOn == b.BasedOn })}
	n.marks = len(p.hulls) != len(p.was.hulls)
	for i := range p.hulls {
		if n.marks {
			break
		}
		is, was := &p.hulls[i].Token, &p.was.hulls[i].Token
		n.marks = is.Number != was.Number || is.HIN != was.HIN
		n.tokens = n.tokens || n.marks || !reflect.DeepEqual(is, was)
	}
	return n
}

// load gives the brief of a hull: the one that is kept, or from its records where that is gone.
func (p *pieces) load(number string, metal bool) (*engine.Brief, error) {
	i, known := slices.BinarySearch(p.numbers, number) // not in p.hulls, whose values other hands fill in meanwhile
	if !known {
		return nil, fmt.Errorf("the yard has no hull %s", number)
	}
	if b, ok := p.kept.brief(number, p.hulls[i].Brief, metal); ok {
		return b, nil
	}
	one, err := p.read(number)
	if err != nil {
		return nil, err
	}
	return engine.BriefOf(one.Hull), nil
}

// read reads a hull again.
func (p *pieces) read(number string) (*record.One, error) {
	from, err := p.begin()
	if err != nil {
		return nil, err
	}
	one := from.Read(number)
	if all := from.Faults(one); all != nil {
		return nil, all
	}
	return one, nil
}

func (p *pieces) key(number string) (key, error) {
	m := p.of(number)
	return p.keys.of(number, m.Own, m.Stock, m.Taken), nil
}

func (p *pieces) of(number string) *hullMemo {
	i, _ := slices.BinarySearch(p.numbers, number)
	return &p.hulls[i]
}

// open reads a hull whose book is to be made, and reckons it among what it takes from others.
func (p *pieces) open(number string) (*opened, error) {
	y, err := p.ready()
	if err != nil {
		return nil, err
	}
	p.mu.Lock()
	one := p.held[number]
	delete(p.held, number)
	p.mu.Unlock()
	if one == nil {
		if one, err = p.read(number); err != nil {
			return nil, err
		}
	}
	h := one.Hull
	near, err := p.near().NearOf(engine.BriefOf(h))
	if err != nil {
		return nil, err
	}
	alone, stock, err := p.alone(y, one)
	if err != nil {
		return nil, err
	}
	joined, err := engine.Rejoin(alone, near)
	if err != nil {
		return nil, err
	}
	o := &opened{hull: h, yard: joined, near: near, files: p.shelved().of(h, slices.Concat(one.Files, stock)...), reckon: func() *engine.Dossier { return p.reckon.Assess(joined, h) }}
	if m := p.of(number); recordsMark(h, p.filesOf(one)) != m.Records {
		o.changed, m.Look = true, mark{} // somebody saved it while the run was on, and the next one looks again
	}
	return o, nil
}

// alone gives the yard with one hull in it. Where the stock was not read, it is what the hull draws on, with its files.
func (p *pieces) alone(y *record.Yard, one *record.One) (*record.Yard, []record.File, error) {
	alone := *y
	alone.Hulls, alone.Doubts = []*record.Hull{one.Hull}, slices.Concat(y.Doubts, one.Doubts)
	var names []string
	for _, f := range p.shelved().stockOf(one.Hull) {
		names = append(names, f.Path)
	}
	if p.stocked == nil || len(names) == 0 {
		return &alone, nil, nil
	}
	from, err := p.begin()
	if err != nil {
		return nil, nil, err
	}
	some, err := from.Stock(names)
	if err != nil {
		return nil, nil, err
	}
	alone.Stock, alone.Elsewhere = some.Stock, p.stocked.Plates
	alone.Doubts = append(alone.Doubts, some.Doubts...)
	return &alone, some.Files, nil
}

func (p *pieces) absent(number string) line {
	m := p.of(number)
	return line{Number: number, Title: m.Title, Design: m.Token.Design, State: m.State}
}

// note tells the next run what this one knows.
func (p *pieces) note(next *state) {
	p.kept.writeYard(p.papers)
	next.program, next.yard, next.hulls = p.job.programOf(), p.yard, p.hulls
}
