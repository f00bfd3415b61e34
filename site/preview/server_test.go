package preview

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

const testPort = 8074

// opened is a server over a small output folder beside which lies a file that is nobody's business.
func opened(t *testing.T) *Server {
	t.Helper()
	dir := t.TempDir()
	out := filepath.Join(dir, "out")
	for name, text := range map[string]string{
		"../private.txt":              "private",
		"index.html":                  page("register"),
		"SHA256SUMS":                  "sums",
		"assets/book.css":             "body{}",
		"H 1/index.html":              page("cover"),
		"H 1/results.json":            "{}",
		"H 1/documents/report.html":   "<html><head></head><script>alert(1)</script></html>",
		"H 1/documents/look.svg":      "<svg/>",
		"H 1/documents/run.exe":       "MZ",
		".part-1/new/H 1/index.html":  page("not yet"),
		"H 1/structure/sheet-B3.html": page("panel"),
	} {
		name = filepath.Join(out, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink(filepath.Join(dir, "private.txt"), filepath.Join(out, "link.txt")); err != nil {
		t.Logf("no symbolic link on this system: %v", err)
	}
	return serving(t, out)
}

func page(words string) string {
	return `<!DOCTYPE html><html><head><meta http-equiv="Content-Security-Policy" content="` + policy + `"></head><body>` + words + `</body></html>`
}

func serving(t *testing.T, out string) *Server {
	t.Helper()
	root, err := os.OpenRoot(out)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	s, err := New(root)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// answer asks for a path as it stands, with head fields in pairs.
func answer(s *Server, method, path string, head ...string) (*http.Response, string) {
	r := httptest.NewRequest(method, "http://127.0.0.1:8074/", nil)
	r.URL.Path = path
	for i := 0; i < len(head); i += 2 {
		if head[i] == "Host" {
			r.Host = head[i+1]
		}
		r.Header.Add(head[i], head[i+1])
	}
	w := httptest.NewRecorder()
	s.Handler(testPort).ServeHTTP(w, r)
	got := w.Result()
	text, _ := io.ReadAll(got.Body)
	return got, string(text)
}

func TestOnlyThisMachineByItsOwnNameMayRead(t *testing.T) {
	s := opened(t)
	for _, row := range []struct {
		where  string
		method string
		head   []string
		want   int
	}{
		{"own name", "GET", nil, 200},
		{"localhost", "GET", []string{"Host", "localhost:8074"}, 200},
		{"version 6", "HEAD", []string{"Host", "[::1]:8074"}, 200},
		{"own origin", "GET", []string{"Origin", "http://127.0.0.1:8074"}, 200},
		{"a link on another site", "GET", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate"}, 200},
		{"another name that leads here", "GET", []string{"Host", "rebound.example:8074"}, 403},
		{"own name as the beginning of another", "GET", []string{"Host", "127.0.0.1:8074.rebound.example"}, 403},
		{"another port", "GET", []string{"Host", "127.0.0.1:8075"}, 403},
		{"no port", "GET", []string{"Host", "localhost"}, 403},
		{"no host", "GET", []string{"Host", ""}, 403},
		{"origin of another site", "GET", []string{"Origin", "http://elsewhere.example"}, 403},
		{"origin of another service of this machine", "GET", []string{"Origin", "http://127.0.0.1:9000"}, 403},
		{"origin of a boxed page", "GET", []string{"Origin", "null"}, 403},
		{"two origins", "GET", []string{"Origin", "http://127.0.0.1:8074", "Origin", "http://elsewhere.example"}, 403},
		{"a script of another site", "GET", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors"}, 403},
		{"post", "POST", nil, 405},
		{"put", "PUT", nil, 405},
		{"delete", "DELETE", nil, 405},
		{"options", "OPTIONS", nil, 405},
	} {
		for _, path := range []string{"/", scriptPath, faultsPath, "/SHA256SUMS"} {
			got, _ := answer(s, row.method, path, row.head...)
			if got.StatusCode != row.want {
				t.Errorf("%s: %s %s gives %d, want %d", row.where, row.method, path, got.StatusCode, row.want)
			}
			if got.Header.Get("X-Content-Type-Options") != "nosniff" || !strings.Contains(got.Header.Get("Content-Security-Policy"), "default-src 'none'") {
				t.Errorf("%s: %s lacks nosniff or the policy: %v", row.where, path, got.Header)
			}
		}
	}
}

func TestNothingButTheOutputIsGiven(t *testing.T) {
	s := opened(t)
	for _, path := range []string{
		"/../private.txt", "/H 1/../../private.txt", "/..", "//private.txt", "/./index.html", "/link.txt", "/H 1//results.json", `/..\private.txt`,
		`/H 1\index.html`, "/C:/private.txt", "/c:index.html", "/index.html/", "/assets/", "/assets", "/H 1/documents/", "/nowhere",
		"/.part-1/new/H 1/index.html", "/index.html\x00", "", "/SHA256SUMS/x",
	} {
		got, text := answer(s, "GET", path)
		if path == "" {
			if got.StatusCode != 200 || !strings.Contains(text, "register") {
				t.Errorf("the bare address gives %d", got.StatusCode)
			}
			continue
		}
		if got.StatusCode != 404 || strings.Contains(text, "private\n") || text == "private" {
			t.Errorf("%q gives %d: %.80q", path, got.StatusCode, text)
		}
	}
}

func TestEachFileHasItsType(t *testing.T) {
	s := opened(t)
	for path, want := range map[string]string{
		"/":                            "text/html; charset=utf-8",
		"/H 1/":                        "text/html; charset=utf-8",
		"/H 1/structure/sheet-B3.html": "text/html; charset=utf-8",
		"/H 1/results.json":            "application/json",
		"/assets/book.css":             "text/css; charset=utf-8",
		"/SHA256SUMS":                  "text/plain; charset=utf-8",
		"/H 1/documents/look.svg":      "image/svg+xml",
		"/H 1/documents/run.exe":       "application/octet-stream",
		scriptPath:                     "text/javascript; charset=utf-8",
		stylePath:                      "text/css; charset=utf-8",
	} {
		got, _ := answer(s, "GET", path)
		if got.StatusCode != 200 || got.Header.Get("Content-Type") != want {
			t.Errorf("%s: %d, %q, want %q", path, got.StatusCode, got.Header.Get("Content-Type"), want)
		}
	}
	if got, _ := answer(s, "GET", "/H 1/documents/run.exe"); got.Header.Get("Content-Disposition") != "attachment" {
		t.Error("a file of unknown kind is not a download")
	}
	if got, _ := answer(s, "GET", "/H 1"); got.StatusCode != 303 || got.Header.Get("Location") != "/H%201/" {
		t.Errorf("a folder without its stroke: %d to %q", got.StatusCode, got.Header.Get("Location"))
	}
}

func TestScriptStandsInPagesOfOursOnly(t *testing.T) {
	s := opened(t)
	_, text := answer(s, "GET", "/H 1/")
	if !strings.Contains(text, `<script src="/preview.js"`) || !strings.Contains(text, `content="`+previewPolicy+`"`) {
		t.Errorf("the page has no script, or forbids its events: %s", text)
	}
	got, text := answer(s, "GET", "/H 1/documents/report.html")
	if strings.Contains(text, "preview.js") {
		t.Error("a paper of the yard was changed")
	}
	if p := got.Header.Get("Content-Security-Policy"); !strings.Contains(p, "sandbox") || strings.Contains(p, "script-src") {
		t.Errorf("a paper of the yard may run scripts: %s", p)
	}
	written, err := s.out.ReadFile("H 1/index.html")
	if err != nil || strings.Contains(string(written), "preview") {
		t.Errorf("what is on disk is not clean: %v", err)
	}
}

// hostile is a text that would do harm if a page believed it.
const hostile = `"><script>alert(1)</script><img src=x onerror=alert(1)>`

func TestFaultsStandOnTheirPageEscaped(t *testing.T) {
	s := opened(t)
	s.Show(Outcome{Faults: finding.Faults{
		{Place: finding.Place{File: "hulls/H 1/hull.toml", Line: 12, Col: 3}, Key: "panel." + hostile, Says: "is " + hostile, Hint: "write " + hostile},
		{Place: finding.Place{File: hostile, Line: 1, Col: 1}, Says: "cannot be read"},
	}})
	got, text := answer(s, "GET", faultsPath)
	if got.StatusCode != 200 || strings.Contains(text, "<script>") || strings.Contains(text, "<img") {
		t.Errorf("%d, or hostile text came through: %s", got.StatusCode, text)
	}
	for _, want := range []string{"2 faults in the records", "hulls/H 1/hull.toml:12:3", "write &#34;&gt;&lt;script&gt;", "cannot be read", `href="/"`} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q: %s", want, text)
		}
	}
	if got, text := answer(s, "GET", "/H 1/"); got.StatusCode != 200 || !strings.Contains(text, "cover") {
		t.Errorf("the last good pages are gone: %d", got.StatusCode)
	}
}

func TestWayBackStaysHere(t *testing.T) {
	for asked, want := range map[string]string{
		"/H%201/boat.html#a": "/H%201/boat.html#a", "/H 1/": "/", "": "/", "http://elsewhere.example/": "/", "//elsewhere.example/": "/",
		`/\elsewhere.example`: "/", "javascript:alert(1)": "/", "/../x": "/", "/x\"y": "/x%22y",
	} {
		if got := backTo(asked); got != want {
			t.Errorf("back to %q gives %q, want %q", asked, got, want)
		}
	}
}

func TestWithoutAPageOneWaitsForTheFirst(t *testing.T) {
	s := serving(t, t.TempDir())
	for asked, want := range map[string]string{"/": faultsPath, "/H 1/": faultsPath + "?back=%2FH+1%2F", "/H 1/boat.html": faultsPath + "?back=%2FH+1%2Fboat.html"} {
		if got, _ := answer(s, "GET", asked); got.StatusCode != 303 || got.Header.Get("Location") != want {
			t.Errorf("%s: %d to %q, want %q", asked, got.StatusCode, got.Header.Get("Location"), want)
		}
	}
	if got, _ := answer(s, "GET", "/H 1/assets/book.css"); got.StatusCode != 404 {
		t.Errorf("a style sheet that is not there: %d", got.StatusCode)
	}
	if _, text := answer(s, "GET", faultsPath); !strings.Contains(text, "are being made") || strings.Contains(text, "No page has been made yet") {
		t.Errorf("the page does not ask to wait: %s", text)
	}
}

func TestWithoutAPageTheFaultsAreShown(t *testing.T) {
	s := serving(t, t.TempDir())
	s.Show(Outcome{Faults: finding.Faults{{Says: "wrong"}}})
	got, _ := answer(s, "GET", "/")
	if got.StatusCode != 303 || got.Header.Get("Location") != faultsPath {
		t.Errorf("%d to %q", got.StatusCode, got.Header.Get("Location"))
	}
	if _, text := answer(s, "GET", faultsPath); !strings.Contains(text, "No page has been made yet") {
		t.Errorf("the page promises others: %s", text)
	}
}
