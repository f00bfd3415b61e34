package document

import (
	"bytes"
	"path"
	"strings"
	"unicode/utf8"
)

// headLength is how many bytes decide what a file is.
const headLength = 512

// What a file can be by its first bytes. Anything that is readable as text is text, HTML and SVG included: nothing of a
// document is ever run.
const (
	kindPDF     = "PDF"
	kindPNG     = "PNG"
	kindJPEG    = "JPEG"
	kindText    = "text"
	kindUnknown = "unknown"
)

// kindOf says what a file is by its first bytes.
func kindOf(head []byte) string {
	switch {
	case bytes.HasPrefix(head, []byte("%PDF-")):
		return kindPDF
	case bytes.HasPrefix(head, []byte("\x89PNG\r\n\x1a\n")):
		return kindPNG
	case bytes.HasPrefix(head, []byte("\xff\xd8\xff")):
		return kindJPEG
	case len(head) > 0 && readable(head):
		return kindText
	}
	return kindUnknown
}

// readable reports whether bytes are UTF-8 without control characters, up to a character that the end cuts through.
func readable(head []byte) bool {
	for len(head) > 0 {
		r, size := utf8.DecodeRune(head)
		if r == utf8.RuneError && size == 1 {
			return len(head) < utf8.UTFMax && !utf8.FullRune(head)
		}
		if r < ' ' && !strings.ContainsRune("\t\n\r\f", r) || r == 0x7f {
			return false
		}
		head = head[size:]
	}
	return true
}

// promised says what the end of a file name promises, or nothing if it promises nothing that is looked for.
func promised(name string) string {
	switch strings.ToLower(path.Ext(name)) {
	case ".pdf":
		return kindPDF
	case ".png":
		return kindPNG
	case ".jpg", ".jpeg":
		return kindJPEG
	case ".txt", ".csv", ".md", ".toml":
		return kindText
	}
	return ""
}
