package compare

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
)

// leaf is one result with its path, e.g. "panels B3 margin".
type leaf struct{ path, text string }

// left lists keys of results.json that are told otherwise, or that only lead to a result.
var left = map[string]bool{"form": true, "version": true, "hull": true, "invented": true, "counts": true, "standing": true, "checks": true, "findings": true, "assumptions": true, "documents": true, "steps": true, "runs": true, "why": true, "says": true, "but": true}

// results tells which results changed, and by how much. Points of a curve are one result. What came or went is told entry
// by entry.
func results(old, new *Side) []Change {
	was, is := flat(old.results), flat(new.results)
	before, after := byPath(was), byPath(is)
	var all []Change
	for _, l := range is {
		text, there := before[l.path]
		switch {
		case !there || text == l.text:
		case strings.HasPrefix(l.text, curve):
			all = append(all, Change{How: Changed, What: l.path, New: curves(text, l.text)})
		default:
			all = append(all, sized(Change{How: Changed, What: l.path, Old: text, New: l.text}))
		}
	}
	all = append(all, apartFrom(before, is, Added)...)
	return append(all, apartFrom(after, was, Gone)...)
}

func byPath(all []leaf) map[string]string {
	out := make(map[string]string, len(all))
	for _, l := range all {
		out[l.path] = l.text
	}
	return out
}

// apartFrom gathers the results that the other side does not have by the entry that they stand in.
func apartFrom(other map[string]string, all []leaf, how string) []Change {
	g := gathered{how: how, at: map[string]int{}}
	for _, l := range all {
		if _, there := other[l.path]; !there {
			g.take(l.path, ' ', brief(l.text), "")
		}
	}
	return g.all
}

// brief is a result in a list of several: numbers rounded for reading, of a curve only that there is one.
func brief(text string) string {
	if strings.HasPrefix(text, curve) {
		return fmt.Sprintf("of %d numbers", len(strings.Fields(text))-1)
	}
	return shown(text)
}

// flat lists all results in order of their keys; entries of a list are named by what they are called there.
func flat(v map[string]any) []leaf {
	f := flattening{taken: map[string]int{}}
	f.object(v, "")
	return f.all
}

type flattening struct {
	all   []leaf
	taken map[string]int
}

func (f *flattening) object(v map[string]any, path string) {
	for _, key := range slices.Sorted(maps.Keys(v)) {
		if !left[key] {
			f.any(v[key], strings.TrimSpace(path+" "+key))
		}
	}
}

func (f *flattening) any(v any, path string) {
	switch v := v.(type) {
	case map[string]any:
		f.object(v, path)
	case []any:
		f.list(v, path)
	case float64:
		f.leaf(path, strconv.FormatFloat(v, 'g', -1, 64))
	case nil:
		f.leaf(path, "none")
	default:
		f.leaf(path, fmt.Sprint(v))
	}
}

func (f *flattening) leaf(path, text string) { f.all = append(f.all, leaf{path, text}) }

func (f *flattening) list(v []any, path string) {
	if numbers, ok := numbersIn(v); ok && len(v) > 0 {
		f.leaf(path, curve+numbers)
		return
	}
	var words []string
	for i, item := range v {
		of, ok := item.(map[string]any)
		if !ok {
			words = append(words, fmt.Sprint(item))
			continue
		}
		f.object(without(of), f.unique(strings.TrimSpace(path+" "+called(of, i))))
	}
	if len(words) > 0 {
		f.leaf(path, strings.Join(words, ", "))
	}
}

// unique tells two entries of one name apart.
func (f *flattening) unique(path string) string {
	f.taken[path]++
	if n := f.taken[path]; n > 1 {
		return fmt.Sprintf("%s (%d)", path, n)
	}
	return path
}

// names are the keys by which an entry of a list is called, in the order in which they are said.
var names = []string{"trial", "condition", "key", "no", "side", "name", "setting", "level", "category", "method", "zone", "symbol", "about"}

func called(v map[string]any, i int) string {
	var words []string
	for _, key := range names {
		if text, ok := v[key].(string); ok && text != "" {
			words = append(words, text)
		}
	}
	if len(words) == 0 {
		return strconv.Itoa(i + 1)
	}
	return strings.Join(words, " ")
}

// without leaves out what an entry is called by. The standing of a thing is told as a standing.
func without(v map[string]any) map[string]any {
	out := maps.Clone(v)
	for _, key := range names {
		delete(out, key)
	}
	return out
}

// curve begins the text of points.
const curve = "curve "

// numbersIn writes the points of a curve: a list of lists of numbers, or of things with numbers and no name.
func numbersIn(v []any) (text string, ok bool) {
	var all []string
	for _, item := range v {
		switch item := item.(type) {
		case []any:
			for _, n := range item {
				x, isNumber := n.(float64)
				if !isNumber {
					return "", false
				}
				all = append(all, strconv.FormatFloat(x, 'g', -1, 64))
			}
		case map[string]any:
			if called(item, -1) != "0" {
				return "", false
			}
			for _, key := range slices.Sorted(maps.Keys(item)) {
				switch x := item[key].(type) {
				case float64:
					all = append(all, strconv.FormatFloat(x, 'g', -1, 64))
				case bool:
				default:
					return "", false
				}
			}
		default:
			return "", false
		}
	}
	return strings.Join(all, " "), len(all) > 0
}

// curves says how much two curves differ.
func curves(old, new string) string {
	a, b := strings.Fields(strings.TrimPrefix(old, curve)), strings.Fields(strings.TrimPrefix(new, curve))
	if len(a) != len(b) {
		return fmt.Sprintf("%d numbers, before %d", len(b), len(a))
	}
	differ, most := 0, 0.0
	for i := range a {
		if a[i] == b[i] {
			continue
		}
		differ++
		x, _ := strconv.ParseFloat(a[i], 64) // both were written from numbers
		y, _ := strconv.ParseFloat(b[i], 64)
		most = math.Max(most, math.Abs(x-y))
	}
	return fmt.Sprintf("%d of %d numbers of the curve differ, most by %s", differ, len(a), short(most))
}

// short writes a number with four figures.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
