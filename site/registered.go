package site

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"

	"hullfile/templates"
)

// registered is what is remembered of the register: what it was made of, and its files as they lay there. A run that finds both
// unchanged does not make it again.
type registered struct {
	Of   mark
	Tree mark
}

// registerFiles are the files and folders of the register.
var registerFiles = []string{"assets", registerDir, coverName, contentsName, sumsName}

// registerOf hashes what a register is made of, the templates and the program among it.
func (r *run) registerOf(block Block, lines []line, left []string) (mark, error) {
	w := newMemoWriter(io.Discard)
	w.text(r.press.job.programOf())
	w.text(block.Builder)
	w.flag(block.Invented)
	w.texts(left)
	for i := range lines {
		w.volume(&volume{Line: lines[i]})
	}
	if err := w.to.Flush(); err != nil {
		return mark{}, err
	}
	if err := hashFiles(w.sum, templates.Files); err != nil {
		return mark{}, fmt.Errorf("templates: %w", err)
	}
	return markOf(w.sum.Sum(nil)), nil
}

// registerTree hashes names, sizes and times of the files of the register; those that this run made are looked at where they
// wait to be moved, which changes nothing of them. It is empty where something cannot be looked at.
func (s *stage) registerTree() mark {
	var text []byte
	for _, name := range registerFiles {
		at := s.fresh(name)
		info, err := os.Lstat(at)
		if errors.Is(err, fs.ErrNotExist) {
			at = s.final(name)
			info, err = os.Lstat(at)
		}
		switch {
		case errors.Is(err, fs.ErrNotExist):
			continue
		case err != nil:
			return mark{}
		case info.IsDir():
			tree, _, err := footprint(at)
			if err != nil {
				return mark{}
			}
			text = append(text, tree...)
		default:
			text = strconv.AppendQuote(text, name+" "+info.Mode().Type().String())
			text = strconv.AppendInt(append(text, ' '), info.Size(), 36)
			text = strconv.AppendInt(append(text, ' '), info.ModTime().UnixNano(), 36)
		}
	}
	sum := sha256.Sum256(text)
	return markOf(sum[:])
}

// register makes the register, unless what it says and its files are as they were.
func (r *run) register(ctx context.Context) error {
	block, lines, left := r.supply.block(), r.lines(), r.stage.left(r.all)
	of, err := r.registerOf(block, lines, left)
	if err != nil {
		return err
	}
	r.now.register.Of = of
	if r.now.register.Tree = r.stage.registerTree(); r.now.register == r.was.register && r.was.register.Tree != (mark{}) {
		return r.stage.room()
	}
	if err := r.press.register(ctx, r.stage, block, lines, left); err != nil {
		return err
	}
	if err := r.stage.settleRegister(); err != nil {
		return err
	}
	r.now.register.Tree = r.stage.registerTree()
	return nil
}
