package site

import (
	"crypto/sha256"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"hullfile/engine"
	"hullfile/engine/record"
)

// stateName is the file in which the output remembers what its books were made of, so that the next run leaves alone
// what would come out the same. It belongs to no technical file, no list of hashes names it, and it may be deleted at
// any time: everything is then read and written anew.
const stateName = ".hullfile-state"

// stateForm is the number of the form of the state.
const stateForm = 4

// state is what is remembered.
type state struct {
	began    int64  // when the run began that wrote it, by the disk's clock, nanoseconds since 1970
	program  string // that wrote it; another one may read records otherwise
	yard     yardMemo
	hulls    []hullMemo // of all hulls of the yard, in order of number
	books    map[string]volume
	folders  folderLists
	register registered
	next     string // number of the hull at which the next run goes on looking at every file
}

// mark is a part of a hash.
type mark [16]byte

func markOf(sum []byte) (m mark) {
	copy(m[:], sum)
	return m
}

// yardMemo is what is remembered of the records that belong to no hull.
type yardMemo struct {
	Look    mark // of the disk
	Common  [sha256.Size]byte
	Context [sha256.Size]byte
	Stock   [sha256.Size]byte
	Stocked mark // of what is remembered of the stock
	Own     []ownFile
	Block   Block
	Designs []record.DesignName
}

// hullMemo is what is remembered of the records of a hull.
type hullMemo struct {
	Title, State string
	Look         mark // of the disk; none where it is not to be trusted
	Records      mark // of the record files, its designs among them
	Own          [sha256.Size]byte
	Stock        [sha256.Size]byte // the files of the stock that it draws on
	Brief        mark              // of what is kept in a file of its own
	Named        []string
	Taken        [sha256.Size]byte // what it takes from others
	Token        engine.Token
}

// volume is one book that a run wrote.
type volume struct {
	Key     key
	Tree    string   // footprint of its folder
	Doors   mark     // the same of its folders and lists alone
	Folders int      // which list of the state has its folders
	Asked   []string // files of the yard's own that it asks for by name; most books ask for the same
	Own     mark     // of those of them that there were
	Line    line
}

func newState() *state { return &state{books: map[string]volume{}} }

// readState reads what an earlier run remembered. A state that is not there, not whole, or of another form remembers
// nothing: it is never a reason to fail.
func readState(out string) *state {
	name := filepath.Join(out, stateName)
	if info, err := os.Lstat(name); err != nil || !info.Mode().IsRegular() { // a pipe would wait for a writer
		return newState()
	}
	f, err := os.Open(name)
	if err != nil {
		return newState()
	}
	defer f.Close()
	r, err := openMemo(f)
	if err != nil {
		return newState()
	}
	if s := r.state(); r.err == nil {
		return s
	}
	return newState()
}

// write writes the state to a new file.
func (s *state) write(name string) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return plainly(err)
	}
	w := newMemoWriter(f)
	w.state(s)
	err = w.end(f)
	if closing := f.Close(); err == nil {
		err = closing
	}
	return plainly(err)
}

// hull finds what is remembered of a hull.
func (s *state) hull(number string) (*hullMemo, bool) {
	i, known := slices.BinarySearchFunc(s.hulls, number, func(h hullMemo, n string) int { return strings.Compare(h.Token.Number, n) })
	if !known {
		return nil, false
	}
	return &s.hulls[i], true
}
