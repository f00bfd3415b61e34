package site

import (
	"maps"
	"slices"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func (w *memoWriter) state(s *state) {
	w.num(formOf())
	w.num(s.began)
	w.text(s.program)
	w.text(s.next)
	w.put(s.yard.Look[:])
	w.put(s.yard.Common[:])
	w.put(s.yard.Context[:])
	w.put(s.yard.Stock[:])
	w.put(s.yard.Stocked[:])
	w.num(int64(len(s.yard.Own)))
	for i := range s.yard.Own {
		w.text(s.yard.Own[i].Path)
		w.put(s.yard.Own[i].Sum[:])
	}
	w.text(s.yard.Block.Builder)
	w.flag(s.yard.Block.Invented)
	w.num(int64(len(s.yard.Designs)))
	for _, d := range s.yard.Designs {
		w.text(d.Name)
		w.text(d.BasedOn)
	}
	w.put(s.register.Of[:])
	w.put(s.register.Tree[:])
	w.lists(&s.folders)
	var asked folderLists
	numbers := slices.Sorted(maps.Keys(s.books))
	for _, number := range numbers {
		asked.put(s.books[number].Asked)
	}
	w.lists(&asked)
	w.num(int64(len(s.hulls)))
	for i := range s.hulls {
		w.hull(&s.hulls[i])
	}
	w.num(int64(len(s.books)))
	for _, number := range numbers {
		v := s.books[number]
		w.num(int64(asked.put(v.Asked)))
		w.volume(&v)
	}
}

// formOf is the number of the form of the state together with how many kinds of findings are counted in it.
func formOf() int64 { return stateForm<<8 + int64(len(finding.Kinds())) }

func (r *memoReader) state() *state {
	s := newState()
	if r.num() != formOf() {
		r.err = errMemo
		return s
	}
	s.began, s.program, s.next = r.num(), r.text(), r.text()
	r.fill(s.yard.Look[:])
	r.fill(s.yard.Common[:])
	r.fill(s.yard.Context[:])
	r.fill(s.yard.Stock[:])
	r.fill(s.yard.Stocked[:])
	for n := r.count(); n > 0 && r.err == nil; n-- {
		own := ownFile{Path: r.text()}
		r.fill(own.Sum[:])
		s.yard.Own = append(s.yard.Own, own)
	}
	s.yard.Block = Block{Builder: r.text(), Invented: r.flag()}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		s.yard.Designs = append(s.yard.Designs, record.DesignName{Name: r.text(), BasedOn: r.text()})
	}
	r.fill(s.register.Of[:])
	r.fill(s.register.Tree[:])
	var asked folderLists
	r.lists(&s.folders)
	r.lists(&asked)
	for n := r.count(); n > 0 && r.err == nil; n-- {
		s.hulls = append(s.hulls, r.hull())
	}
	for n := r.count(); n > 0 && r.err == nil; n-- {
		list := asked.shared(int(r.num()))
		v := r.volume()
		v.Asked = list
		s.books[v.Line.Number] = v
	}
	return s
}

func (w *memoWriter) lists(l *folderLists) {
	w.num(int64(len(l.all)))
	for _, list := range l.all {
		w.texts(list)
	}
}

func (r *memoReader) lists(l *folderLists) {
	for n := r.count(); n > 0 && r.err == nil; n-- {
		l.put(r.texts())
	}
}

func (w *memoWriter) texts(all []string) {
	w.num(int64(len(all)))
	for _, s := range all {
		w.text(s)
	}
}

func (r *memoReader) texts() []string {
	var all []string
	for n := r.count(); n > 0 && r.err == nil; n-- {
		all = append(all, r.text())
	}
	return all
}

func (w *memoWriter) hull(h *hullMemo) {
	t := &h.Token
	for _, s := range []string{t.Number, h.Title, h.State, t.Design, t.HIN} {
		w.text(s)
	}
	for _, b := range [][]byte{h.Look[:], h.Records[:], h.Own[:], h.Stock[:], h.Brief[:], h.Taken[:], t.Marked[:], t.Boat[:], t.Life[:]} {
		w.put(b)
	}
	w.flag(t.Cracked)
	w.texts(h.Named)
	w.num(int64(len(t.Shares)))
	for i := range t.Shares {
		w.num(int64(t.Shares[i].Group))
		w.put(t.Shares[i].What[:])
	}
}

func (r *memoReader) hull() hullMemo {
	var h hullMemo
	t := &h.Token
	t.Number, h.Title, h.State, t.Design, t.HIN = r.text(), r.text(), r.text(), r.text(), r.text()
	for _, b := range [][]byte{h.Look[:], h.Records[:], h.Own[:], h.Stock[:], h.Brief[:], h.Taken[:], t.Marked[:], t.Boat[:], t.Life[:]} {
		r.fill(b)
	}
	t.Cracked, h.Named = r.flag(), r.texts()
	n := r.count()
	if r.err == nil && n > 0 {
		t.Shares = make([]engine.Share, 0, min(n, 1<<10))
	}
	for ; n > 0 && r.err == nil; n-- {
		s := engine.Share{Group: uint64(r.num())}
		r.fill(s.What[:])
		t.Shares = append(t.Shares, s)
	}
	return h
}

func (w *memoWriter) volume(v *volume) {
	l := &v.Line
	for _, s := range []string{l.Number, string(v.Key), v.Tree, l.Title, l.Design, l.State, l.Issue, l.Builder, string(l.Standing), l.Sums, l.Root} {
		w.text(s)
	}
	w.put(v.Doors[:])
	w.put(v.Own[:])
	for _, n := range []int64{int64(v.Folders), int64(l.Pages), int64(l.Files), l.Bytes} {
		w.num(n)
	}
	w.flag(l.Invented)
	kinds := finding.Kinds()
	for _, k := range kinds {
		w.num(int64(l.Counts[k]))
	}
	w.flag(l.Weighed != nil)
	if l.Weighed != nil {
		w.text(l.Weighed.Key)
		w.float(l.Weighed.Mass)
		w.float(l.Weighed.Reckoned)
	}
	w.flag(l.Least != nil)
	if l.Least != nil {
		w.text(l.Least.Panel)
		w.float(l.Least.Margin)
	}
}

func (r *memoReader) volume() volume {
	var v volume
	l := &v.Line
	l.Number, v.Key, v.Tree, l.Title, l.Design, l.State, l.Issue, l.Builder, l.Standing, l.Sums, l.Root = r.text(), key(r.text()), r.text(), r.text(), r.text(), r.text(), r.text(), r.text(), finding.Standing(r.text()), r.text(), r.text()
	r.fill(v.Doors[:])
	r.fill(v.Own[:])
	v.Folders, l.Pages, l.Files, l.Bytes = int(r.num()), int(r.num()), int(r.num()), r.num()
	l.Invented, l.Counts = r.flag(), map[finding.Kind]int{}
	for _, k := range finding.Kinds() {
		if n := int(r.num()); n != 0 {
			l.Counts[k] = n
		}
	}
	if r.flag() {
		l.Weighed = &weighed{Key: r.text(), Mass: r.float(), Reckoned: r.float()}
	}
	if r.flag() {
		l.Least = &least{Panel: r.text(), Margin: r.float()}
	}
	return v
}
