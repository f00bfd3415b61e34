package record

import (
	"bytes"
	"unicode/utf8"

	"hullfile/engine/finding"
)

// Limits of size. A record of a hull is some kilobytes; the walls keep out files that would fill the memory, which is
// about a hundred times a TOML text of nothing but short entries, and two kilobytes a row of a table.
const (
	mostTOML = 4 << 20
	mostCSV  = 16 << 20
	mostRows = 100_000 // of one table
)

var mark = []byte("\xef\xbb\xbf")

// readable takes the byte order mark off, ends lines with one character, and refuses text that is not UTF-8. How lines
// end is a habit of the system on which the record was saved; no text of several lines may differ by it.
func readable(file string, text []byte, fs *faults) ([]byte, bool) {
	text = bytes.ReplaceAll(bytes.TrimPrefix(text, mark), []byte("\r\n"), []byte("\n"))
	at := finding.Place{File: file, Line: 1, Col: 1}
	if bytes.HasPrefix(text, []byte("PK\x03\x04")) {
		fs.add(at, "", "save it out of the spreadsheet as CSV, UTF-8; another name makes no other file", "this is a spreadsheet file or an archive, not text")
		return nil, false
	}
	if utf8.Valid(text) {
		return text, true
	}
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		fs.add(at, "", "save the file as UTF-8, out of a spreadsheet as CSV UTF-8; "+notRead, "the text is UTF-16, not UTF-8")
		return nil, false
	}
	i := firstInvalid(text)
	at = newRuler(file, text).at(i)
	fs.add(at, "", "save the file as UTF-8, out of a spreadsheet as CSV UTF-8; the character here was most likely written in an older encoding; "+notRead, "byte %02X is not UTF-8 text", text[i])
	return nil, false
}

func firstInvalid(text []byte) int {
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(text)
}

// ruler turns offsets into lines and columns in characters. It goes forward with the offsets asked for, so that a file
// is measured once.
type ruler struct {
	file      string
	text      []byte
	offset    int
	line, col int
	start     int // offset of the line
}

func newRuler(file string, text []byte) *ruler {
	return &ruler{file: file, text: text, line: 1, col: 1}
}

// at gives the place of an offset.
func (r *ruler) at(offset int) finding.Place {
	offset = min(offset, len(r.text))
	if offset < r.start {
		*r = *newRuler(r.file, r.text)
	}
	if offset < r.offset {
		r.offset, r.col = r.start, 1
	}
	for r.offset < offset {
		end := bytes.IndexByte(r.text[r.offset:offset], '\n')
		if end < 0 {
			break
		}
		r.offset += end + 1
		r.line, r.col, r.start = r.line+1, 1, r.offset
	}
	r.col += utf8.RuneCount(r.text[r.offset:offset])
	r.offset = offset
	return finding.Place{File: r.file, Line: r.line, Col: r.col}
}

// inLine gives the place of a byte of a line, both counted from one, as a reader of CSV tells them.
func (r *ruler) inLine(line, col int) finding.Place {
	if line < r.line {
		*r = *newRuler(r.file, r.text)
	}
	for r.line < line {
		end := bytes.IndexByte(r.text[r.start:], '\n')
		if end < 0 {
			break
		}
		r.start += end + 1
		r.line, r.col, r.offset = r.line+1, 1, r.start
	}
	return r.at(r.start + max(0, col-1))
}
