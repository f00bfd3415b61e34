package seal

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"hullfile/engine/document"
)

// What can be wrong with a file.
const (
	Altered    = "altered"
	Missing    = "missing"
	Added      = "added"
	Unreadable = "unreadable"
)

// Trouble is one file that is not as the list says.
type Trouble struct {
	Kind string `json:"kind"`
	Path string `json:"path"`
	Says string `json:"says"`
}

// Files is what was found in the folder.
type Files struct {
	Listed   int       `json:"listed"`
	Bytes    int64     `json:"bytes"`
	Troubles []Trouble `json:"troubles"` // in order of path
}

// held is the holding of a folder against its list.
type held struct {
	ctx    context.Context
	from   fs.FS
	listed map[string]string // path -> hash
	true   map[string]string // path -> hash, of what lies there
	files  Files
	buf    []byte // what is read of a file at a time; a file is never in memory whole
}

// hold reads every file of the folder once and holds it against the list. Seals and the list itself are left out.
func hold(ctx context.Context, from fs.FS, list []Listed) (Files, error) {
	h := &held{ctx: ctx, from: from, listed: map[string]string{}, true: map[string]string{}, buf: make([]byte, 128<<10)}
	for _, l := range list {
		h.listed[l.Path] = l.Hash
	}
	h.files.Listed = len(list)
	if err := fs.WalkDir(from, ".", h.see); err != nil {
		return Files{}, err
	}
	h.missing()
	h.moved()
	slices.SortFunc(h.files.Troubles, func(a, b Trouble) int { return strings.Compare(a.Path, b.Path) })
	return h.files, nil
}

// see looks at one entry of the folder.
func (h *held) see(name string, e fs.DirEntry, err error) error {
	if stop := h.ctx.Err(); stop != nil {
		return stop
	}
	switch {
	case err != nil && name == ".":
		return err
	case err != nil:
		h.trouble(Unreadable, name, "it cannot be read")
		return nil
	case name == Folder && e.IsDir():
		return fs.SkipDir
	case e.IsDir() || name == SumsName:
		return nil
	case !e.Type().IsRegular():
		h.trouble(Added, name, "it is a link or something else that is no file; nothing in it was looked at")
		return nil
	}
	h.file(name)
	return nil
}

func (h *held) file(name string) {
	want, listed := h.listed[name]
	if !utf8.ValidString(name) {
		h.trouble(Added, name, "its name is no valid text, and it is not in "+SumsName)
		return
	}
	hash, n, err := h.hash(name)
	h.files.Bytes += n
	switch {
	case err != nil && errors.Is(err, h.ctx.Err()):
		return
	case err != nil:
		h.true[name] = ""
		h.trouble(Unreadable, name, "it cannot be read to its end")
		return
	}
	h.true[name] = hash
	switch {
	case !listed:
		h.trouble(Added, name, "it is not in "+SumsName)
	case hash != want:
		h.trouble(Altered, name, "its hash is "+hash+", listed is "+want)
	}
}

func (h *held) hash(name string) (hash string, n int64, err error) {
	f, err := h.from.Open(name)
	if err != nil {
		return "", 0, err
	}
	defer f.Close()
	sum := sha256.New()
	n, err = io.CopyBuffer(onlyWriter{sum}, document.Interruptible(h.ctx, f), h.buf)
	return hex.EncodeToString(sum.Sum(nil)), n, err
}

func (h *held) trouble(kind, name, says string) {
	h.files.Troubles = append(h.files.Troubles, Trouble{Kind: kind, Path: name, Says: says})
}

func (h *held) missing() {
	told := map[string]bool{}
	for _, t := range h.files.Troubles {
		told[t.Path] = true
	}
	for _, name := range slices.Sorted(maps.Keys(h.listed)) {
		if _, there := h.true[name]; !there && !told[name] {
			h.trouble(Missing, name, "it is in "+SumsName+" and not in the folder")
		}
	}
}

// moved says of a file under a wrong name whose place it should have: files that were exchanged, or given another name.
func (h *held) moved() {
	at := map[string]string{}
	for _, name := range slices.Sorted(maps.Keys(h.listed)) {
		if _, taken := at[h.listed[name]]; !taken {
			at[h.listed[name]] = name
		}
	}
	for i := range h.files.Troubles {
		t := &h.files.Troubles[i]
		right, known := at[h.true[t.Path]]
		if known && right != t.Path && (t.Kind == Altered || t.Kind == Added) {
			t.Says = fmt.Sprintf("it holds what belongs to %q", right)
		}
	}
}

// onlyWriter hides every other way of writing, so that the buffer above is used.
type onlyWriter struct{ to io.Writer }

func (w onlyWriter) Write(b []byte) (int, error) { return w.to.Write(b) }
