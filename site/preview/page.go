package preview

import (
	"bytes"
	"html/template"
	"net/http"
	"net/url"
	"strings"

	"hullfile/templates"
)

// faultPage is the page that stands for the records while they cannot be read, and for the pages while the first are being made.
type faultPage struct{ page *template.Template }

func newFaultPage() (*faultPage, error) {
	page, err := template.New("preview.html").Option("missingkey=error").ParseFS(templates.Files, "preview.html")
	return &faultPage{page}, err
}

// Page is what the page of the faults says.
type Page struct {
	Policy string
	Seen   string // name of the state that the page tells of
	Back   string // page to go back to, or on to; empty where there is none
	Count  string
	Faults []Row
	Error  string // what else went wrong
	Sound  bool
	Making bool // the first pages are being made
}

// Row is one fault and what to write instead.
type Row struct{ Place, Key, Says, Hint string }

// faults shows every fault of the last reading.
func (s *Server) faults(w http.ResponseWriter, r *http.Request) {
	name, o, _ := s.state.now()
	p := Page{Policy: previewPolicy, Seen: name, Sound: o.sound(), Making: o.making, Count: o.Faults.Count()}
	if s.ready() || o.making {
		p.Back = backTo(r.URL.Query().Get("back"))
	}
	for _, f := range o.Faults {
		p.Faults = append(p.Faults, Row{f.Place.String(), f.Key, f.Says, f.Hint})
	}
	if o.Err != nil {
		p.Error = o.Err.Error()
	}
	var text bytes.Buffer
	if err := s.page.page.Execute(&text, p); err != nil {
		http.Error(w, "the page of the faults could not be made", http.StatusInternalServerError)
		return
	}
	give(w, "text/html; charset=utf-8", text.Bytes())
}

// backTo gives the page that a reader came from, or the register: only a path of this preview, never another site.
func backTo(asked string) string {
	u, err := url.Parse(asked)
	if err != nil || u.Scheme != "" || u.Host != "" || !strings.HasPrefix(u.Path, "/") || !servable(strings.TrimPrefix(u.Path, "/")) {
		return "/"
	}
	return (&url.URL{Path: u.Path, Fragment: u.Fragment}).String()
}
