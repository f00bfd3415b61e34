package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
)

// Names of the two lists in every folder that this package wrote. Their presence marks the folder as ours.
const (
	contentsName = "contents.sha256" // every file but the two lists and the pages that print its hash: the cover, a print edition
	sumsName     = "SHA256SUMS"      // every file but itself
	coverName    = "index.html"
)

// list gives hashes in the form of sha256sum, in the order of the paths.
func list(sums []sum) []byte {
	sorted := slices.SortedFunc(slices.Values(sums), func(a, b sum) int { return strings.Compare(a.path, b.path) })
	var out bytes.Buffer
	for _, s := range sorted {
		out.WriteString(s.hash + "  " + s.path + "\n")
	}
	return out.Bytes()
}

func hashOf(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// closeContents writes the contents list of everything so far and gives its hash, the root that the cover prints.
// A page that prints the hash of a list cannot be in it; SHA256SUMS covers it.
func (f *folder) closeContents() (root string, err error) {
	contents := list(f.sums)
	if err := f.write(contentsName, contents); err != nil {
		return "", err
	}
	return hashOf(contents), nil
}

// closeSums writes SHA256SUMS over every file so far and over the files further down that are named with their hashes,
// and gives the hash of the list.
func (f *folder) closeSums(below ...sum) (hash string, err error) {
	text := list(append(slices.Clone(f.sums), below...))
	if err := f.write(sumsName, text); err != nil {
		return "", err
	}
	return hashOf(text), nil
}
