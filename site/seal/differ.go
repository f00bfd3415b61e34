package seal

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
)

// Differ says in which files two technical files differ, by their lists of hashes.
// The error is one of reading a list.
func Differ(a, b fs.FS) (string, error) {
	one, err := sumsOf(a)
	if err != nil {
		return "", err
	}
	other, err := sumsOf(b)
	if err != nil {
		return "", err
	}
	var names []string
	for _, name := range slices.Sorted(maps.Keys(one)) {
		if other[name] != one[name] {
			names = append(names, name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(other)) {
		if _, there := one[name]; !there {
			names = append(names, name)
		}
	}
	return fmt.Sprintf("%d files differ: %s", len(names), strings.Join(atMost(names, 8), ", ")), nil
}

// sumsOf reads the list of hashes of a technical file.
func sumsOf(from fs.FS) (map[string]string, error) {
	text, err := readFile(from, SumsName, mostSums)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", SumsName, err)
	}
	list, _ := ReadSums(text)
	out := map[string]string{}
	for _, l := range list {
		out[l.Path] = l.Hash
	}
	return out, nil
}
