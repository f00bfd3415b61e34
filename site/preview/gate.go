package preview

import (
	"fmt"
	"net/http"
	"strconv"
)

// gate stands before every answer. A name that somebody else's server resolves to this machine is refused by Host, a
// page of another site by Origin and by what the browser says of where the request comes from.
type gate struct {
	port   int
	inside http.Handler
}

// The policy of the pages as they are written, and what a preview needs besides: the script's line for events.
const (
	policy        = "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'"
	previewPolicy = policy + "; connect-src 'self'"
)

func (g gate) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", previewPolicy+"; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
	if status, why := g.refuse(r); status != 0 {
		if status == http.StatusMethodNotAllowed {
			h.Set("Allow", "GET, HEAD")
		}
		http.Error(w, why, status)
		return
	}
	g.inside.ServeHTTP(w, r)
}

// refuse says why a request is not answered; the status is 0 where it is.
func (g gate) refuse(r *http.Request) (status int, why string) {
	if !g.own(r.Host) {
		return http.StatusForbidden, "this preview is asked for by another name than its own"
	}
	if from := r.Header["Origin"]; len(from) > 1 || len(from) == 1 && from[0] != "http://"+r.Host {
		return http.StatusForbidden, "this preview is for its own pages"
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
	default:
		if r.Header.Get("Sec-Fetch-Mode") != "navigate" {
			return http.StatusForbidden, "this preview is for its own pages"
		}
	}
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		return http.StatusMethodNotAllowed, fmt.Sprintf("a preview is read with GET or HEAD, not %s", strconv.Quote(r.Method))
	}
	return 0, ""
}

// own reports whether a Host is this machine under our port. A browser leaves out port 80.
func (g gate) own(host string) bool {
	for _, name := range []string{"127.0.0.1", "localhost", "[::1]"} {
		if host == name+":"+strconv.Itoa(g.port) || g.port == 80 && host == name {
			return true
		}
	}
	return false
}
