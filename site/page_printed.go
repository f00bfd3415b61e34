package site

import (
	"bytes"
	"fmt"
	"io"
)

// printOwner writes the owner's book as one page.
func (b *book) printOwner(o *book, pages []joinedPage) error {
	p := b.printedPage("Owner's book", pages)
	p.Caution = ""
	left, _ := b.runningWords()
	return b.writePrinted(ownerDir, "Owner's book, "+left, p, newJoiner(pages))
}

// printFile writes the technical file as one page, from the pages as they lie in the folder.
func (b *book) printFile() error {
	if !b.press.job.Print {
		return nil
	}
	var pages []joinedPage
	for _, s := range b.order {
		if topOf(s).path == benchPath {
			continue // sheets to fill by hand are set for paper by themselves, some of them across it
		}
		text, err := b.folder.readPage(s.path)
		if err != nil {
			return fmt.Errorf("print edition: %w", err)
		}
		pages = append(pages, joinedPage{s, text})
	}
	left, _ := b.runningWords()
	p := b.printedPage("Technical file", pages)
	p.Root, p.Volumes = b.root, volumeLinks(pages)
	j := newJoiner(pages)
	if err := b.writePrinted("", left, p, j); err != nil {
		return err
	}
	return b.printVolumes(p, j)
}

func (b *book) printedPage(kind string, pages []joinedPage) PrintedPage {
	h := b.hull
	l := b.leaf(pages[0].section)
	p := PrintedPage{Kind: kind, Number: h.Number, Name: h.Identity.Name.V, Title: h.Title.V, Block: l.block(), Version: b.press.job.Version, Caution: b.press.notes["cautions"]}
	p.Facts = append(p.Facts, onlyOwner(l.fields(&h.Identity))...)
	return p
}

// writePrinted joins the pages and writes them with the style sheet that numbers them.
func (b *book) writePrinted(within, left string, p PrintedPage, j *joiner) error {
	style := append(bytes.Clone(b.press.printed), j.pageRules(left)...)
	if err := b.folder.write(within+printStyle, style); err != nil {
		return err
	}
	return b.writeJoined(within+printName, p, j)
}

func (b *book) writeJoined(name string, p PrintedPage, j *joiner) error {
	p.Sections = j.sections()
	p.Contents = j.contents()
	p.Figures, p.Tables, p.OnlyTops = j.lists()
	out, err := b.press.set(b.press.rooms.take(usualTable), "printed", p)
	defer func() { b.press.rooms.back(out) }()
	if err != nil {
		return fmt.Errorf("print edition: %w", err)
	}
	return b.folder.write(name, out)
}

// read gives a file of the folder as it was written.
func (f *folder) read(name string) ([]byte, error) {
	from, err := f.root.Open(name)
	if err != nil {
		return nil, plainly(err)
	}
	defer from.Close()
	return io.ReadAll(from)
}
