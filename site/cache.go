package site

import (
	"fmt"
	"html/template"
	"sync"

	"hullfile/engine/held"
	"hullfile/engine/method"
)

// cache holds markup that is the same in the books of all hulls, so that it is made once a run: formulas of method
// sheets, and pages of which only the frame differs. Its keys are the formulas and the sheets themselves. What is kept
// for later runs too goes by keys that say all that it is made of.
type cache struct{ made sync.Map }

// get gives what stands under a key, and makes it where nothing does. Two goroutines may make it at once; both make
// the same.
func get[T any](c *cache, key any, make func() (T, error)) (T, error) {
	if found, ok := c.made.Load(key); ok {
		return found.(T), nil
	}
	made, err := make()
	if err == nil {
		c.made.Store(key, made)
	}
	return made, err
}

// part executes a part of the templates on its own.
func (p *press) part(name string, data any) (template.HTML, error) {
	out, err := p.set(nil, name, data)
	if err != nil {
		return "", fmt.Errorf("part %s: %w", name, err)
	}
	return template.HTML(out), nil //nolint:gosec // made by a template
}

// fixed gives what is the same wherever a step is shown. A step that does not apply has no formula and is made anew.
func (p *press) fixed(s *method.Shown) (StepFixed, error) {
	if s.Formula == nil {
		return p.makeFixed(s)
	}
	return get(p.lasting, s.Formula, func() (StepFixed, error) { return p.makeFixed(s) })
}

func (p *press) makeFixed(s *method.Shown) (out StepFixed, err error) {
	words := StepWords{definitionMath(s.Symbol, s.Formula), formulaMath(s.When), s.Note, s.Clause, basis(s.Basis)}
	if out.Formula, err = p.part("stepformula", words); err != nil {
		return out, err
	}
	if out.After, err = p.part("stepafter", words); err != nil {
		return out, err
	}
	out.Ref, err = p.part("stepref", words)
	return out, err
}

// passedKey tells a form that was passed over from the same form where it was taken.
type passedKey struct{ formula *method.Formula }

func (p *press) passed(form method.Passed) (template.HTML, error) {
	return get(p.lasting, passedKey{form.Formula}, func() (template.HTML, error) {
		return p.part("steppassed", StepWords{Formula: formulaMath(form.Formula), When: formulaMath(form.When)})
	})
}

// ReadyPage is a page whose body was made before.
type ReadyPage struct{ Text template.HTML }

func (l *leaf) readyProofs() (ReadyPage, error) {
	text, err := get(&l.press.cache, readyKey{"proofs", l.ownNames()}, func() (template.HTML, error) {
		body, err := l.proofsPage()
		if err != nil {
			return "", err
		}
		return l.press.body("proofs", body)
	})
	return ReadyPage{text}, err
}

func (l *leaf) readySheet(s *method.Sheet) (ReadyPage, error) {
	text, err := get(l.press.lasting, readyKey{"sheet", s}, func() (template.HTML, error) {
		body, err := l.sheetPage(s)
		if err != nil {
			return "", err
		}
		return l.press.body("sheet", body)
	})
	return ReadyPage{text}, err
}

func (l *leaf) readyLimitRows(t held.Table) (ReadyPage, error) {
	text, err := get(l.press.lasting, readyKey{"limitrows", [...]string{t.File, t.Rows, t.Says(), l.at.no}}, func() (template.HTML, error) {
		body, err := l.limitRowsPage(t)
		if err != nil {
			return "", err
		}
		return l.press.body("limitrows", body)
	})
	return ReadyPage{text}, err
}

// readyKey names the body of a page that is the same in every book.
type readyKey struct {
	kind string
	of   any // the sheet or table, or whose sheets take part
}

// body executes what stands inside the frame of a page.
func (p *press) body(kind string, data any) (template.HTML, error) {
	out, err := p.set(p.rooms.take(usualTable), "main "+kind, data)
	defer func() { p.rooms.back(out) }()
	if err != nil {
		return "", fmt.Errorf("page %s: %w", kind, err)
	}
	return template.HTML(out), nil //nolint:gosec // made by a template
}
