package document

import (
	"testing"
	"unicode/utf8"
)

// FuzzKind: any first bytes have one of the kinds, and what is called text can be shown as text.
func FuzzKind(f *testing.F) {
	for _, head := range []string{"", "%PDF-1.7", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "\xff\xd8\xff\xe0", "<html>", "a\x00b", "\xef\xbb\xbfa", "\xff\xfea\x00", "Prüf", "Pr\xfcf", "\xc3"} {
		f.Add([]byte(head))
	}
	f.Fuzz(func(t *testing.T, head []byte) {
		head = head[:min(len(head), headLength)]
		switch kind := kindOf(head); kind {
		case kindPDF, kindPNG, kindJPEG, kindUnknown:
		case kindText:
			whole := head
			for range utf8.UTFMax - 1 { // a letter may be cut off at the end
				if !utf8.Valid(whole) && len(whole) > 0 {
					whole = whole[:len(whole)-1]
				}
			}
			for _, b := range head {
				if b == 0 || b == 0x1b {
					t.Errorf("%q is called text", head)
				}
			}
			if !utf8.Valid(whole) {
				t.Errorf("%q is called text", head)
			}
		default:
			t.Errorf("%q is of the kind %q", head, kind)
		}
	})
}
