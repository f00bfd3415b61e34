package record

import (
	"fmt"
	"strings"
	"testing"
)

// The positions come from a parser whose tree is not a stable interface, so they are held here one by one.
// Columns are counted in characters; the text has letters of two and four bytes before some of them.
const positionText = `# remark with å
title = "båt 🚤" # two and four bytes
"kéy" = 'x'   # after a quoted key
a.b.c = -6.50
list = [ 1, "två", [ 3, [] ], { q = true } ]
many = [
  # a [ in a remark
  "]",
  7,
]
inline = { x = 1, y.z = { deep = [ { k = 2 } ] } }
text = """
first
""" 
after = 2026-03-14

[ trial . "T 1" ]
date = 2026-03-14
[[trial."T 1".run]]
speed_kn = 1
[[trial."T 1".run]]
  speed_kn	=	2
[trial."T 1".run.sub]
v = +1e3
[x]
[x.y]
z = "ø" 
`

const positionWant = `title 2:1 2:9
kéy 3:1 3:9
a 4:1 4:1
a.b 4:3 4:3
a.b.c 4:5 4:9
list 5:1 5:8
list[0] - 5:10
list[1] - 5:13
list[2] - 5:20
list[2][0] - 5:22
list[2][1] - 5:25
list[3] - 5:31
list[3].q 5:33 5:37
many 6:1 6:8
many[0] - 8:3
many[1] - 9:3
inline 11:1 11:10
inline.x 11:12 11:16
inline.y 11:19 11:19
inline.y.z 11:21 11:25
inline.y.z.deep 11:27 11:34
inline.y.z.deep[0] - 11:36
inline.y.z.deep[0].k 11:38 11:42
text 12:1 12:8
after 15:1 15:9
trial 17:3 17:3
trial.T 1 17:11 17:11
trial.T 1.date 18:1 18:8
trial.T 1.run 19:15 19:15
trial.T 1.run[0] 19:15 19:15
trial.T 1.run[0].speed_kn 20:1 20:12
trial.T 1.run[1] 21:15 21:15
trial.T 1.run[1].speed_kn 22:3 22:14
trial.T 1.run[1].sub 23:18 23:18
trial.T 1.run[1].sub.v 24:1 24:5
x 25:2 25:2
x.y 26:4 26:4
x.y.z 27:1 27:5
`

func TestPositions(t *testing.T) {
	var fs faults
	for name, text := range map[string]string{"plain": positionText, "CRLF": strings.ReplaceAll(positionText, "\n", "\r\n"), "BOM": "\xef\xbb\xbf" + positionText} {
		root, ok := readTOML("f", []byte(text), &fs)
		if !ok {
			t.Fatalf("%s: %v", name, fs.all)
		}
		var b strings.Builder
		tellPlaces(&b, root, "")
		if got := b.String(); got != positionWant {
			t.Errorf("%s: places\n%sexpected\n%s", name, got, positionWant)
		}
	}
}

// tellPlaces writes the places of key and value of everything below a node.
func tellPlaces(b *strings.Builder, n *node, way string) {
	for i, name := range n.names {
		tellPlace(b, n.kids[i], strings.TrimPrefix(way+"."+name, "."))
	}
	for i, item := range n.items {
		tellPlace(b, item, fmt.Sprintf("%s[%d]", way, i))
	}
}

func tellPlace(b *strings.Builder, n *node, way string) {
	key := "-"
	if n.key.Line > 0 {
		key = fmt.Sprintf("%d:%d", n.key.Line, n.key.Col)
	}
	fmt.Fprintf(b, "%s %s %d:%d\n", way, key, n.at.Line, n.at.Col)
	tellPlaces(b, n, way)
}

// TestRuler measures places forward, backward and behind the end.
func TestRuler(t *testing.T) {
	text := []byte("ab\nåæø\n\nx")
	r := newRuler("f", text)
	for _, c := range []struct{ offset, line, col int }{{0, 1, 1}, {2, 1, 3}, {3, 2, 1}, {5, 2, 2}, {9, 2, 4}, {7, 2, 3}, {1, 1, 2}, {10, 3, 1}, {11, 4, 1}, {12, 4, 2}, {99, 4, 2}} {
		if p := r.at(c.offset); p != place("f", c.line, c.col) {
			t.Errorf("offset %d is at %s, expected %d:%d", c.offset, p, c.line, c.col)
		}
	}
	for _, c := range []struct{ line, byte, col int }{{2, 3, 2}, {4, 1, 1}, {1, 2, 2}, {2, 7, 4}} {
		if p := r.inLine(c.line, c.byte); p != place("f", c.line, c.col) {
			t.Errorf("byte %d of line %d is at %s, expected column %d", c.byte, c.line, p, c.col)
		}
	}
}

func TestTooDeep(t *testing.T) {
	deep := strings.Repeat("[", mostNested+1)
	for _, c := range []struct {
		text string
		deep bool
	}{
		{"a = " + deep, true},
		{"a = '" + deep + "'", false},
		{`a = "\"` + deep + `"`, false},
		{"a = \"\"\"\n" + deep + "\n\"\"\"\nb = 1", false},
		{"a = '''" + deep + "''' # " + deep, false},
		{"# " + deep + "\nb = 1", false},
		{"a = 'open\n" + "b = " + deep, true},
		{strings.Repeat("a.", mostParts+1) + "b = 1", true},
		{"a = 1.5\nb = 1.5\n" + strings.Repeat("c = [1.5, 2.5]\n", 30), false},
		{"a = '" + strings.Repeat("x", mostLine) + "'", true},
		{strings.Repeat("a = [[1]]\n", 100), false},
	} {
		if _, _, deep := tooDeep([]byte(c.text)); deep != c.deep {
			t.Errorf("%.40q: too deep is %t", c.text, deep)
		}
	}
}
