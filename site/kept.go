package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"sync"

	"hullfile/engine"
	"hullfile/engine/document"
)

// keptName is the folder beside the state in which each hull has a small file: its brief, and what is remembered of its
// papers. The state names the hash of each, so that one which does not belong to it is never believed. It may be deleted at
// any time too.
const keptName = ".hullfile-kept"

// keptYard is the name under which the papers are remembered that several hulls ask for. No hull can have it.
const keptYard = ".yard"

// kept reads and writes what is remembered of hulls one by one. What a run writes lies in its stage until it is moved.
type kept struct {
	stage *stage

	mu    sync.Mutex
	fresh []string // written by this run
	cores map[string]*engine.Brief
}

// mostCores is how many briefs without metal are kept in memory: more than one hull takes from.
const mostCores = 4 * engine.MostSisters

func newKept(s *stage) *kept { return &kept{stage: s, cores: map[string]*engine.Brief{}} }

// keptLines are the lines of a file: the brief without metal, the metal, the texts, the papers. The mark is that of all but
// the papers.
const keptLines = 4

// write keeps the brief of a hull, its texts and what is known of its papers.
func (k *kept) write(name string, b *engine.Brief, t textList, papers []paper) (mark, error) {
	var text bytes.Buffer
	enc := json.NewEncoder(&text)
	core, metal := b.Apart()
	if err := enc.Encode(core); err != nil {
		return mark{}, err
	}
	if err := enc.Encode(metal); err != nil {
		return mark{}, err
	}
	if err := enc.Encode(t.packed()); err != nil {
		return mark{}, err
	}
	sum := sha256.Sum256(text.Bytes())
	if err := enc.Encode(papers); err != nil {
		return mark{}, err
	}
	dir := k.stage.keeping()
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return mark{}, plainly(err)
	}
	k.mu.Lock()
	k.fresh = append(k.fresh, name)
	k.mu.Unlock()
	return markOf(sum[:]), writeAlone(filepath.Join(dir, name), text.Bytes())
}

// writeYard keeps what is known of the papers that several hulls ask for. It is of use to the next run alone: a disk that does
// not take it does not take the state either, which says so.
func (k *kept) writeYard(p *papers) {
	if len(p.folders) > 0 {
		k.write(keptYard, &engine.Brief{}, nil, p.remembered())
	}
}

// writeStock remembers the stock. Like writeYard it is of use to the next run alone.
func (k *kept) writeStock(s *stocked) mark {
	text, err := json.Marshal(s)
	if err != nil {
		return mark{}
	}
	dir := k.stage.keeping()
	if os.MkdirAll(dir, 0o755) != nil || writeAlone(filepath.Join(dir, keptStock), text) != nil {
		return mark{}
	}
	sum := sha256.Sum256(text)
	return markOf(sum[:])
}

// lines reads the lines of a file; ok is false where it is not there or not whole.
func (k *kept) lines(name string) (lines [keptLines][]byte, ok bool) {
	text, err := plainText(k.stage.keeping(), name)
	if err != nil {
		text, err = plainText(k.stage.final(keptName), name)
	}
	if err != nil {
		return lines, false
	}
	for i := range lines {
		end := bytes.IndexByte(text, '\n') + 1
		if end == 0 {
			return lines, false
		}
		lines[i], text = text[:end], text[end:]
	}
	return lines, true
}

// plainText reads a file of a folder, and nothing else that lies in its place.
func plainText(dir, name string) ([]byte, error) {
	return fs.ReadFile(document.Plain(os.DirFS(dir)), name)
}

// papers gives what is remembered of the papers of a hull.
func (k *kept) papers(name string) map[string]paper {
	lines, ok := k.lines(name)
	var all []paper
	if !ok || json.Unmarshal(lines[3], &all) != nil {
		return nil
	}
	by := make(map[string]paper, len(all))
	for _, p := range all {
		by[p.Path] = p
	}
	return by
}

// brief gives the brief of a hull, with its metal or without, where the file belongs to the state.
func (k *kept) brief(name string, is mark, metal bool) (*engine.Brief, bool) {
	if !metal {
		k.mu.Lock()
		b := k.cores[name]
		k.mu.Unlock()
		if b != nil {
			return b, true
		}
	}
	lines, ok := k.whole(name, is)
	b := &engine.Brief{}
	if !ok || json.Unmarshal(lines[0], b) != nil {
		return nil, false
	}
	if metal {
		return b, json.Unmarshal(lines[1], b) == nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if len(k.cores) >= mostCores {
		clear(k.cores)
	}
	k.cores[name] = b
	return b, true
}

// whole gives the lines of a file that belongs to the state.
func (k *kept) whole(name string, is mark) (lines [keptLines][]byte, ok bool) {
	lines, ok = k.lines(name)
	sum := sha256.New()
	for _, line := range lines[:keptLines-1] {
		sum.Write(line)
	}
	return lines, ok && markOf(sum.Sum(nil)) == is
}

// texts gives the texts of a hull, where the file belongs to the state.
func (k *kept) texts(name string, is mark) (textList, bool) {
	lines, ok := k.whole(name, is)
	var text []byte
	if !ok || json.Unmarshal(lines[2], &text) != nil {
		return nil, false
	}
	return unpacked(text), true
}
