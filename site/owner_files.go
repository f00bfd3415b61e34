package site

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html/template"

	"hullfile/engine/document"
	"hullfile/engine/handbook"
)

// ownerBook gives the book of the owner's chapters, beside the technical file that it belongs to.
func (b *book) ownerBook() *book {
	if b.owner == nil {
		b.owner = b.newOwnerBook()
	}
	return b.owner
}

func (b *book) newOwnerBook() *book {
	o := &book{
		press: b.press, dossier: b.dossier, hull: b.hull, yard: b.yard, folder: b.folder, open: map[*section]int{}, railLines: map[railKey]template.HTML{}, rails: map[string][]RailItem{},
		targets: map[string]target{}, rulePage: map[string]string{}, anchors: slugs{}, isRecord: map[string]bool{}, blocks: map[string]OwnerPart{}, named: map[string]lineName{},
	}
	for i := range b.handbook().Chapters {
		c := &b.handbook().Chapters[i]
		s := &section{title: c.Title, path: c.Name + ".html", kind: "chapter", body: page(func(l *leaf) (ChapterPage, error) { return l.chapterPage(c) })}
		if i == 0 {
			s.path, o.cover = coverName, s
		} else {
			s.no = wordsOfInt(i)
		}
		o.tops = append(o.tops, s)
	}
	o.order = o.flat()
	return o
}

// handbook gives the chapters; a job without any has none.
func (b *book) handbook() *handbook.Book {
	if b.press.job.Handbook == nil {
		return &handbook.Book{}
	}
	return b.press.job.Handbook
}

// ownerFiles writes the owner's book with style sheets, script, index and papers of its own, so that the folder can be
// handed over alone.
func (b *book) ownerFiles() error {
	o := b.ownerBook()
	if len(o.order) == 0 {
		return nil
	}
	var all []joinedPage
	var index []entry
	room := b.press.rooms.take(usualPage)
	defer func() { b.press.rooms.back(room) }()
	for _, s := range o.order {
		page, err := o.page(s)
		if err != nil {
			return err
		}
		if room, err = b.press.print(room, s.kind, page); err != nil {
			return err
		}
		text := bytes.Clone(room)
		if err := b.folder.writePage(ownerDir+s.path, text); err != nil {
			return err
		}
		one := joinedPage{s, text}
		all = append(all, one)
		index = append(index, entry{Title: s.title, No: s.no, Way: escapePath(s.path), Words: wordsWithin(mainOf(one.html))})
		b.pages++
	}
	if err := b.ownerAssets(index); err != nil {
		return err
	}
	if err := b.ownerPapers(); err != nil {
		return err
	}
	return b.printOwner(o, all)
}

func (b *book) ownerAssets(index []entry) error {
	left, right := b.runningWords()
	style := append(bytes.Clone(b.press.style), runningHead("Owner's book, "+left, right)...)
	if err := b.folder.write(ownerDir+"assets/book.css", style); err != nil {
		return err
	}
	if err := b.folder.write(ownerDir+"assets/book.js", b.press.script); err != nil {
		return err
	}
	text, err := json.Marshal(index)
	if err != nil {
		return err
	}
	return b.folder.write(ownerDir+"assets/search.js", append(append([]byte("window.HULLFILE_SEARCH="), text...), ";\n"...))
}

// forOwner lists the papers that the record marks for the owner and that are there.
func (b *book) forOwner() []*document.Document {
	var out []*document.Document
	seen := map[string]bool{}
	for i := range b.dossier.Documents.Documents {
		d := &b.dossier.Documents.Documents[i]
		if d.Record.Owner.V && d.Present && d.Out != "" && !seen[ownerPaper(d)] {
			seen[ownerPaper(d)] = true
			out = append(out, d)
		}
	}
	return out
}

// ownerPapers copies them into the owner's book.
func (b *book) ownerPapers() error {
	if b.press.job.Root == nil {
		return nil
	}
	for _, d := range b.forOwner() {
		from, err := b.press.job.Root.Open(d.Path)
		if err != nil {
			return fmt.Errorf("document %s: %w", d.Record.ID, err)
		}
		hash, err := b.folder.take(ownerDir+ownerPaper(d), from)
		from.Close()
		if err == nil && d.SHA256 != "" && hash != d.SHA256 {
			err = fmt.Errorf("%s changed while it was being copied; run again", d.Path)
		}
		if err != nil {
			return fmt.Errorf("document %s: %w", d.Record.ID, err)
		}
	}
	return nil
}
