package site

import (
	"crypto/sha256"
	"encoding/binary"
	"slices"

	"hullfile/engine/record"
)

// textList holds hashes of all texts in the records of a hull, each once and in order. They tell which files of the stock the hull
// draws on without its being read again.
type textList []uint64

func hashOfText(text string) uint64 {
	sum := sha256.Sum256([]byte(text))
	return binary.BigEndian.Uint64(sum[:])
}

func textsOf(h *record.Hull) textList {
	once := map[string]bool{}
	record.EachText(h, func(text string) { once[text] = true })
	all := make(textList, 0, len(once))
	for text := range once {
		all = append(all, hashOfText(text))
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// packed gives the hashes as bytes.
func (t textList) packed() []byte {
	out := make([]byte, 0, 8*len(t))
	for _, one := range t {
		out = binary.BigEndian.AppendUint64(out, one)
	}
	return out
}

// unpacked does the reverse.
func unpacked(text []byte) textList {
	all := make(textList, 0, len(text)/8)
	for ; len(text) >= 8; text = text[8:] {
		all = append(all, binary.BigEndian.Uint64(text))
	}
	return all
}
