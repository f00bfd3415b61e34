package held

import (
	"strconv"
	"strings"

	"hullfile/engine/finding"
)

// Place finds the line and column of a key in the text of a table: "corrosion.basis", "limit[3].D", "confirmed_by". Of
// what stands in no line of its own the nearest head above it is given; the first line where there is none.
func Place(file string, text []byte, key string) finding.Place {
	at := finding.Place{File: file, Line: 1, Col: 1}
	head, last := key, ""
	if i := strings.LastIndex(key, "."); i >= 0 {
		head, last = key[:i], key[i+1:]
	}
	array, nth := head, 0
	if i := strings.IndexByte(head, '['); i >= 0 && strings.HasSuffix(head, "]") {
		array = head[:i]
		nth, _ = strconv.Atoi(head[i+1 : len(head)-1])
	}
	inside, count := last == "", 0
	for i, line := range strings.Split(string(text), "\n") {
		bare := strings.TrimSpace(line)
		switch {
		case strings.HasPrefix(bare, "[["):
			name, _, _ := strings.Cut(bare[2:], "]")
			count += match(strings.TrimSpace(name), array)
			inside = strings.TrimSpace(name) == array && (nth == 0 || count == nth)
		case strings.HasPrefix(bare, "["):
			name, _, _ := strings.Cut(bare[1:], "]")
			name = strings.TrimSpace(name)
			if inside = name == head; name == key {
				return finding.Place{File: file, Line: i + 1, Col: 1 + strings.Index(line, "[")}
			}
		default:
			word, _, assigned := strings.Cut(bare, "=")
			if want := last; inside && assigned && (strings.TrimSpace(word) == want || want == "" && strings.TrimSpace(word) == head) {
				return finding.Place{File: file, Line: i + 1, Col: 1 + strings.Index(line, strings.TrimSpace(word))}
			}
			continue
		}
		if inside && at.Line == 1 {
			at.Line, at.Col = i+1, 1+strings.Index(line, "[")
		}
		if inside && last == "" {
			return at
		}
	}
	return at
}

func match(a, b string) int {
	if a == b {
		return 1
	}
	return 0
}
