package preview

import (
	"bytes"
	"html"
	"io"
	"io/fs"
	"net/http"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"

	"hullfile/templates"
)

const indexName = "index.html"

// assets are what a preview adds to the pages.
type assets struct{ script, style []byte }

func readAssets() (a assets, err error) {
	if a.script, err = fs.ReadFile(templates.Files, "preview.js"); err != nil {
		return a, err
	}
	a.style, err = fs.ReadFile(templates.Files, "book.css")
	return a, err
}

// kinds are the types of what a technical file holds, by ending. The list of the operating system is not asked: it
// differs from machine to machine. Anything else is a download.
var kinds = map[string]string{
	".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".json": "application/json", ".svg": "image/svg+xml", ".png": "image/png", ".jpg": "image/jpeg", ".jpeg": "image/jpeg",
	".gif": "image/gif", ".webp": "image/webp", ".pdf": "application/pdf", ".zip": "application/zip",
	".txt": plainText, ".csv": plainText, ".toml": plainText, ".md": plainText, ".gpx": plainText, ".nmea": plainText,
	".sha256": plainText, "": plainText,
}

const plainText = "text/plain; charset=utf-8"

// file answers with a file of the output.
func (s *Server) file(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if !s.ready() && (name == "" || strings.HasSuffix(name, "/") || path.Ext(name) == ".html") {
		http.Redirect(w, r, waitAt(r.URL.Path), http.StatusSeeOther)
		return
	}
	if name == "" || strings.HasSuffix(name, "/") {
		name += indexName
	}
	if !servable(name) {
		http.NotFound(w, r)
		return
	}
	f, info, err := s.open(name)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	defer f.Close()
	if info.IsDir() {
		if _, err := s.out.Stat(filepath.FromSlash(path.Join(name, indexName))); err != nil {
			http.NotFound(w, r) // what a folder holds is not listed
			return
		}
		http.Redirect(w, r, (&url.URL{Path: r.URL.Path + "/"}).String(), http.StatusSeeOther)
		return
	}
	s.send(w, r, name, f)
}

// waitAt is the page that stands for one that is not made yet, and goes on to it.
func waitAt(asked string) string {
	if asked == "/" {
		return faultsPath
	}
	return faultsPath + "?back=" + url.QueryEscape(asked)
}

// open opens a file or a folder of the output. What is neither is looked at and not opened: a pipe would wait for a writer.
func (s *Server) open(name string) (*os.File, fs.FileInfo, error) {
	if info, err := s.out.Stat(filepath.FromSlash(name)); err == nil && !info.IsDir() && !info.Mode().IsRegular() {
		return nil, nil, fs.ErrInvalid
	}
	f, err := s.out.Open(filepath.FromSlash(name))
	if err != nil {
		return nil, nil, err
	}
	info, err := f.Stat()
	if err == nil && !info.IsDir() && !info.Mode().IsRegular() {
		err = fs.ErrInvalid
	}
	if err != nil {
		f.Close()
		return nil, nil, err
	}
	return f, info, nil
}

// servable reports whether a path is one that a page of the output could name: local, tidy, with no hidden part, which
// keeps out what is being written beside the pages.
func servable(name string) bool {
	if path.Clean(name) != name || !filepath.IsLocal(filepath.FromSlash(name)) || strings.ContainsAny(name, "\\:\x00") {
		return false
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, ".") {
			return false
		}
	}
	return true
}

// send gives a file its type. A page of ours gets the script of the preview; a paper of the yard stays as it is, and one
// that a browser would run is kept in a box of its own.
func (s *Server) send(w http.ResponseWriter, r *http.Request, name string, f *os.File) {
	ending := strings.ToLower(path.Ext(name))
	kind, known := kinds[ending]
	if !known {
		kind = "application/octet-stream"
		w.Header().Set("Content-Disposition", "attachment")
	}
	w.Header().Set("Content-Type", kind)
	paper := strings.Contains("/"+name, "/documents/")
	if paper && (ending == ".html" || ending == ".svg") {
		w.Header().Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox; frame-ancestors 'none'")
	}
	if ending != ".html" || paper {
		http.ServeContent(w, r, "", time.Time{}, f)
		return
	}
	seen := s.state.name() // asked before the page is read: a page that is older than its name is loaded once more, never too seldom
	text, err := io.ReadAll(f)
	if err != nil {
		http.Error(w, "the page could not be read", http.StatusInternalServerError)
		return
	}
	w.Write(withScript(text, seen))
}

// withScript puts the script of the preview into a page, and lets the page's own policy allow its line for events.
func withScript(text []byte, seen string) []byte {
	text = bytes.Replace(text, []byte(policy), []byte(previewPolicy), 1)
	tag := `<script src="` + scriptPath + `" data-seen="` + html.EscapeString(seen) + `" defer></script>` + "\n</head>"
	return bytes.Replace(text, []byte("</head>"), []byte(tag), 1)
}
