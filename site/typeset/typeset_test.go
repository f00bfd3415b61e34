package typeset

import (
	"bytes"
	"html/template"
	"strings"
	"sync"
	"testing"
)

type line struct {
	Text  string
	Word  word
	Ready template.HTML
	N     int
	On    bool
	Kids  []line
	Up    *line
	Any   any
	Map   map[string]string
	Share float64
}

type word string

func (w word) Long() string { return strings.Repeat(string(w), 2) }

const all = `{{define "page"}}<title>{{.Text}}</title><p id="{{.Text}}" title="{{.N}}">{{.Text}} {{.Ready}} {{.N}} {{len .Kids}} {{twice .Text}}</p>
<a href="{{.Text}}">x</a> <a href="search.html?of={{.Text}}">y</a>{{$top := .Text}}{{if and .On (or .N (not .Text))}}on{{else if eq .Text "a" "b"}}a{{else}}off{{end}}
{{with .Up}}{{.Text}}{{else}}none of {{.Text}}{{end}}{{range $i, $k := .Kids}}{{if $i}}, {{end}}{{if gt $i 0}}{{$i}}{{end}}{{$k.Text}} of {{$top}} and {{$.N}}{{template "page" $k}}{{else}}no kids{{end}}
{{if ne .N 1}}not one{{end}}{{if .Kids}}{{if eq (index .Kids 0).N 3}}three{{end}}{{end}}{{range printable .Word.Long}}{{.}}{{end}}{{template "alone"}}{{end}}
{{define "alone"}}alone{{end}}
{{define "any"}}[{{template "inside" .Any}}]{{end}}{{define "inside"}}{{if .}}{{.Text}}{{else}}nothing{{end}}{{end}}`

func funcs() template.FuncMap {
	return template.FuncMap{"twice": func(s string) string { return s + s }, "printable": func(s string) []string { return strings.Split(s, "") }}
}

func parsed(tb testing.TB, text string) *template.Template {
	tb.Helper()
	t, err := template.New("all").Funcs(funcs()).Parse(text)
	if err != nil {
		tb.Fatal(err)
	}
	return t
}

// What is printed is what html/template prints of the same, whatever the texts are.
func FuzzPrinted(f *testing.F) {
	slow, fast := parsed(f, all), New(parsed(f, all), funcs())
	for _, seed := range []string{"", "a", "x&<>\"'+\x00\xff", "javascript:a", "https://example.invalid/?a=%20%zz&b", "a/b:c", "mailto:x", "\u2028ø#"} {
		f.Add(seed, 1, true)
		f.Add(seed, -3, false)
	}
	f.Fuzz(func(t *testing.T, text string, n int, on bool) {
		kid := line{Text: text + "1", N: n, Word: word(text), Kids: []line{leaf(n)}}
		page := line{Text: text, Word: word(text), Ready: "<b>&amp;</b>", N: n, On: on, Kids: []line{leaf(3), leaf(n)}}
		if on {
			page.Up = &kid
		}
		for _, name := range []string{"page", "any"} {
			page.Any = kid
			want, got := said(t, slow, fast, name, page)
			if want != got {
				t.Fatalf("%q is printed, want %q", got, want)
			}
		}
	})
}

// leaf is a line with one below it, so that the first of its kids can be asked for.
func leaf(n int) line { return line{Text: "leaf", N: n, Kids: []line{{N: n}}} }

func said(t *testing.T, slow *template.Template, fast *Set, name string, data any) (want, got string) {
	t.Helper()
	var out bytes.Buffer
	slowly := slow.ExecuteTemplate(&out, name, data)
	text, err := fast.Append([]byte("before "), name, data)
	if (slowly == nil) != (err == nil) {
		t.Fatalf("html/template says %v, and here it is %v", slowly, err)
	}
	if err != nil {
		return "", string(bytes.TrimPrefix(text, []byte("before ")))
	}
	return "before " + out.String(), string(text)
}

// What is not taken over is an error that says where it stands, and never half a page.
func TestRefused(t *testing.T) {
	rows := []struct{ name, text, want string }{
		{"a template that is not there", `{{define "x"}}{{end}}`, `no template "page"`},
		{"a field that is not there", `{{define "page"}}{{.Nobody}}{{end}}`, "no field Nobody"},
		{"a field below a text", `{{define "page"}}{{.Text.Nobody}}{{end}}`, "no field Nobody"},
		{"a map", `{{define "page"}}{{range .Map}}{{.}}{{end}}{{end}}`, "over a list alone"},
		{"a number with a fraction", `{{define "page"}}{{.Share}}{{end}}`, "not taken over"},
		{"a value of any type", `{{define "page"}}{{.Any}}{{end}}`, "not taken over"},
		{"markup in an attribute", `{{define "page"}}<p title="{{.Ready}}">{{end}}`, "not taken over"},
		{"a text in a script", `{{define "page"}}<script>{{.Text}}</script>{{end}}`, "not taken over"},
		{"unequal types", `{{define "page"}}{{if eq .Text .N}}x{{end}}{{end}}`, "not held against"},
		{"a function of nothing", `{{define "page"}}{{len .N}}{{end}}`, "takes one list"},
		{"a break", `{{define "page"}}{{range .Kids}}{{break}}{{end}}{{end}}`, "not taken over"},
		{"a name set again", `{{define "page"}}{{$a := .Text}}{{$a = .Text}}{{$a}}{{end}}`, "set again"},
		{"markup that does not end", `{{define "page"}}<p title="{{.Text}}{{end}}`, "made safe"},
		{"a template called inside a tag", `{{define "page"}}<p {{template "sub"}}>{{end}}{{define "sub"}}id="a"{{end}}`, "no template"},
		{"a template that ends inside a tag", `{{define "page"}}{{template "sub"}}>{{end}}{{define "sub"}}<p {{end}}`, "made safe"},
		{"a template that ends inside a script", `{{define "page"}}{{template "sub"}}</script>{{end}}{{define "sub"}}<script>{{end}}`, "made safe"},
		{"a fault below another template", `{{define "page"}}{{template "sub" .Up}}{{end}}{{define "sub"}}{{.Nobody}}{{end}}`, "no field Nobody"},
		{"a nil on the way", `{{define "page"}}before {{.Up.Text}}{{end}}`, "zero Value"},
	}
	for _, r := range rows {
		set := New(parsed(t, r.text), funcs())
		for range 2 { // the second time out of what is kept
			got, err := set.Append([]byte("kept"), "page", line{})
			if err == nil || !strings.Contains(err.Error(), r.want) || string(got) != "kept" {
				t.Errorf("%s: %q and %v, want an error with %q", r.name, got, err, r.want)
			}
		}
	}
}

// Programs may be asked for, made and run from many goroutines.
func TestManyAtOnce(t *testing.T) {
	set := New(parsed(t, all), funcs())
	var hands sync.WaitGroup
	texts := make([]string, 8)
	for i := range texts {
		hands.Go(func() {
			for _, name := range []string{"any", "page"} {
				out, err := set.Append(nil, name, line{Text: "t", Kids: []line{leaf(1)}, Any: leaf(2)})
				if err != nil {
					t.Error(err)
				}
				texts[i] += string(out)
			}
		})
	}
	hands.Wait()
	for _, text := range texts {
		if text != texts[0] || !strings.Contains(text, "[leaf]") {
			t.Errorf("%q is printed beside %q", text, texts[0])
		}
	}
}
