package site

import "sync"

// printer prints and writes pages of one book while the book makes the next. A page that is made holds words and lists
// and has no more to do with the book, so it may be printed on another processor.
type printer struct {
	press  *press
	folder *folder
	made   chan made
	hands  sync.WaitGroup

	mu     sync.Mutex
	failed error // the first failure
}

// made is a page that waits to be printed, or other work that needs nothing of what the book changes while it is made.
type made struct {
	section *section
	page    Page
	work    func() error // instead of a page
}

// waiting is how many made pages may wait: enough that neither side stands idle, few enough to cost no memory.
const waiting = 4

// printer takes up printing into a folder. Close it in any case.
func (p *press) printer(f *folder) *printer {
	pages := make(chan made, waiting)
	r := &printer{press: p, folder: f, made: pages}
	for range p.hands {
		r.hands.Go(func() { r.work(pages) })
	}
	return r
}

func (r *printer) work(pages <-chan made) {
	text := r.press.rooms.take(usualPage)
	defer func() { r.press.rooms.back(text) }()
	for m := range pages {
		if r.failure() != nil {
			continue
		}
		if m.work == nil {
			m.work = func() (err error) {
				text, err = r.page(text, m)
				return err
			}
		}
		if err := soundly(m.work); err != nil {
			r.fail(err)
		}
	}
}

// page prints and writes a page over what the slice held before.
func (r *printer) page(over []byte, m made) ([]byte, error) {
	text, err := r.press.print(over, m.section.kind, m.page)
	if err == nil {
		text, err = r.press.explain(text, m.section)
	}
	if err == nil {
		err = r.folder.writePage(m.section.path, text)
	}
	return text, err
}

// take hands a page over. The error is that of an earlier page.
func (r *printer) take(s *section, page Page) error {
	r.made <- made{section: s, page: page}
	return r.failure()
}

// also hands over other work. The error is that of earlier work.
func (r *printer) also(work func() error) error {
	r.made <- made{work: work}
	return r.failure()
}

// close waits until all pages are written. Afterwards no page may be handed over; to close again does nothing.
func (r *printer) close() error {
	if r.made != nil {
		close(r.made)
		r.made = nil
	}
	r.hands.Wait()
	return r.failure()
}

func (r *printer) fail(err error) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.failed == nil {
		r.failed = err
	}
}

func (r *printer) failure() error {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.failed
}
