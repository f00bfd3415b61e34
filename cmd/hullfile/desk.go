package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"

	"golang.org/x/term"

	"hullfile/engine/finding"
)

// desk is what every verb works at: results go to out, errors and progress to errs.
type desk struct {
	out      *screen
	errs     io.Writer
	progress *progress
}

func newDesk(out, errs io.Writer) *desk {
	return &desk{out: newScreen(out), errs: errs, progress: newProgress(errs)}
}

// say prints one message for the person at the terminal.
func (d *desk) say(text string) {
	d.progress.done()
	fmt.Fprintln(d.errs, "hullfile: "+clean(text))
}

// faults prints every fault of the records, each with its hint, and how many there are.
func (d *desk) faults(all finding.Faults) {
	d.progress.done()
	for _, f := range all {
		fmt.Fprintln(d.errs, clean(f.String())) // one line, which an editor can follow
		if f.Hint != "" {
			fmt.Fprintln(d.errs, "    "+strings.Join(wrap(clean(f.Hint), d.out.width-4), "\n    "))
		}
	}
	told := all.Count() + "; nothing was made of them"
	if len(all) > 1 {
		told += ". Begin with the first: one often brings the others."
	}
	fmt.Fprintln(d.errs, "\n"+strings.Join(wrap(told, d.out.width), "\n"))
}

// count gives "1 fault", "2 faults".
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// progress shows on one line of a terminal what is being done; anywhere else it is silent.
// It may be shown from several goroutines.
type progress struct {
	to    io.Writer
	mu    sync.Mutex
	shown bool
}

func newProgress(errs io.Writer) *progress {
	f, isFile := errs.(*os.File)
	if !isFile || !term.IsTerminal(int(f.Fd())) || os.Getenv("TERM") == "dumb" {
		return &progress{}
	}
	return &progress{to: errs}
}

// show replaces the line.
func (p *progress) show(text string) {
	if p.to == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.shown = true
	fmt.Fprint(p.to, "\r\x1b[K"+clean(text))
}

// done clears the line.
func (p *progress) done() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.shown {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
	p.shown = false
}
