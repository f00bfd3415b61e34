// Package preview shows technical files that are being worked on, to a browser on this machine and to nobody else.
// It reads a folder of output and adds to its pages a script that loads them again after a record was saved.
//
//	gate.go    who may ask: this machine, by its own name, with GET or HEAD
//	files.go   what is given: files below the output folder, nothing else
//	state.go   what the pages are made of now, and who waits to hear of a change
//	page.go    the page of the faults, and of waiting
//	watch.go   which records were saved
//
// What is written to disk stays clean: the script exists only in what is sent.
package preview

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"time"
)

// The addresses that are no files. Output holds folders and index.html at its top, so that none of them can be one.
const (
	scriptPath = "/preview.js"
	stylePath  = "/preview.css"
	eventsPath = "/preview-events"
	faultsPath = "/preview-faults"
)

// Server shows one folder of output at one address.
type Server struct {
	out   *os.Root
	state *state
	page  *faultPage
	files assets
}

// New makes a server for an output folder, which may still be empty.
// An error is a fault of the program's own templates.
func New(out *os.Root) (*Server, error) {
	page, err := newFaultPage()
	if err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	files, err := readAssets()
	if err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	return &Server{out: out, state: newState(), page: page, files: files}, nil
}

// Listen opens an address that only this machine can reach. Port 0 takes one that is free.
// The error names the port that is taken or may not be used.
func Listen(port int) (net.Listener, error) {
	l, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", fmt.Sprint(port)))
	if err != nil {
		return nil, fmt.Errorf("port %d of this machine cannot be used: %w", port, err)
	}
	return l, nil
}

// Serve answers until the context ends, and then lets go of every waiting browser.
// The error is one of the network.
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	port := l.Addr().(*net.TCPAddr).Port
	web := &http.Server{
		Handler: s.Handler(port), ReadHeaderTimeout: 5 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 1 << 16,
		BaseContext: func(net.Listener) context.Context { return ctx },
	}
	stopped := make(chan error, 1)
	go func() { stopped <- web.Serve(l) }()
	select {
	case err := <-stopped:
		return err
	case <-ctx.Done():
	}
	last, stop := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
	defer stop()
	if err := web.Shutdown(last); err != nil {
		web.Close()
	}
	if err := <-stopped; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// Handler answers the requests of a browser that asks at the given port. No mux: it would tidy a path first, and a path
// that wants tidying is refused.
func (s *Server) Handler(port int) http.Handler {
	return gate{port: port, inside: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case scriptPath:
			give(w, "text/javascript; charset=utf-8", s.files.script)
		case stylePath:
			give(w, "text/css; charset=utf-8", s.files.style)
		case eventsPath:
			s.events(w, r)
		case faultsPath:
			s.faults(w, r)
		default:
			s.file(w, r)
		}
	})}
}

func give(w http.ResponseWriter, kind string, text []byte) {
	w.Header().Set("Content-Type", kind)
	w.Write(text)
}

// ready reports whether there is a first page to show.
func (s *Server) ready() bool {
	_, err := s.out.Stat(indexName)
	return err == nil
}
