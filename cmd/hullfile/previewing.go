package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"hullfile/engine/crew"
	"hullfile/engine/finding"
	"hullfile/site"
	"hullfile/site/preview"
)

// sumsName is the list over everything in an output folder: where it is the same, so are the pages.
const sumsName = "SHA256SUMS"

// savingPause is how long nothing must be saved before the records are read: editors write a file in several steps.
const savingPause = 40 * time.Millisecond

// previewing is a preview that is open: the yard, the folder its pages are made in, and the server that shows them.
type previewing struct {
	d      *desk
	yard   string
	folder string // our own, removed at the end
	out    *os.Root
	at     net.Listener
	server *preview.Server
	shelf  shelf
}

// openPreview takes the port and makes the folder. Close the preview when done.
func openPreview(d *desk, yard string, port int) (*previewing, error) {
	root, err := openFolder(yard)
	if err != nil {
		return nil, err
	}
	root.Close()
	p := &previewing{d: d, yard: yard, shelf: shelf{templates: site.NewTemplates()}}
	if err := p.open(port); err != nil {
		p.close()
		return nil, err
	}
	return p, nil
}

func (p *previewing) open(port int) (err error) {
	if p.at, err = preview.Listen(port); err != nil {
		return err
	}
	if p.folder, err = os.MkdirTemp("", "hullfile-preview-"); err != nil {
		return fmt.Errorf("a folder for the pages: %w", err)
	}
	pages := filepath.Join(p.folder, "files")
	if err := os.Mkdir(pages, 0o755); err != nil {
		return fmt.Errorf("a folder for the pages: %w", err)
	}
	if p.out, err = os.OpenRoot(pages); err != nil {
		return fmt.Errorf("a folder for the pages: %w", err)
	}
	p.server, err = preview.New(p.out)
	return err
}

// close lets go of the port and removes the folder.
func (p *previewing) close() {
	if p.at != nil {
		p.at.Close()
	}
	if p.out != nil {
		p.out.Close()
	}
	if p.folder != "" {
		os.RemoveAll(p.folder)
	}
}

// run serves until it is interrupted, which is its usual end. The address is told first: the pages of a fleet take long, and who
// asks meanwhile waits in the browser.
func (p *previewing) run(ctx context.Context) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	saved, err := preview.Watch(ctx, p.yard, savingPause)
	if err != nil {
		return err
	}
	served := make(chan error, 1)
	go func() { served <- p.server.Serve(ctx, p.at) }()
	p.d.out.line("Preview at http://%s/ ; the pages are being made and open there by themselves. Ctrl-C ends it.", p.at.Addr())
	if err := p.d.out.flush(); err != nil {
		return err
	}
	p.make(ctx, nil)
	err = p.follow(ctx, saved, served)
	stop()
	return err
}

// follow makes the pages again each time something was saved.
func (p *previewing) follow(ctx context.Context, saved <-chan preview.Changes, served <-chan error) error {
	for {
		select {
		case err := <-served:
			return err
		case changes, open := <-saved:
			if !open {
				return <-served
			}
			for len(changes) > 0 {
				changes = p.again(ctx, saved, changes)
			}
		}
	}
}

// again makes the hulls whose own records were saved at once, and then all, because what one hull says may stand
// against another. What is saved during the second breaks it off, and is given back to come next.
func (p *previewing) again(ctx context.Context, saved <-chan preview.Changes, changes preview.Changes) (next preview.Changes) {
	named := hullsOf(changes)
	if !p.make(ctx, named) || len(named) == 0 {
		return nil
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	made := make(chan struct{})
	go func() {
		defer close(made)
		p.make(ctx, nil)
	}()
	select {
	case next = <-saved:
		stop()
	case <-made:
	}
	<-made
	return next
}

// make reads the records, makes the pages of the hulls named, of all where none is, and shows what came of it. It
// reports whether the pages are good.
func (p *previewing) make(ctx context.Context, named []string) bool {
	begun := time.Now()
	hulls, err := p.press(ctx, named)
	if ctx.Err() != nil {
		return false
	}
	o := preview.Outcome{Err: err}
	var faults finding.Faults
	if errors.As(err, &faults) {
		o = preview.Outcome{Faults: faults}
	}
	if sums, err := p.out.ReadFile(sumsName); err == nil {
		o.Pages = string(sums)
	}
	p.server.Show(o)
	switch {
	case len(faults) > 0:
		p.d.faults(faults)
	case err != nil:
		p.d.say(err.Error())
	default:
		p.d.say(fmt.Sprintf("made %s in %.2f s", count(hulls, "hull", "hulls"), time.Since(begun).Seconds()))
	}
	return err == nil
}

// press reads what was saved and writes the pages; it gives how many hulls were written.
func (p *previewing) press(ctx context.Context, named []string) (hulls int, err error) {
	root, err := openFolder(p.yard)
	if err != nil {
		return 0, err
	}
	defer root.Close()
	for _, number := range named {
		if _, err := root.Lstat("hulls/" + number + "/hull.toml"); err != nil {
			named = nil // a folder that is no hull, or no more
			break
		}
	}
	r := rendering{root: root, named: named, shelf: &p.shelf}
	var made site.Report
	if fault := crew.Caught(func() { made, err = r.write(ctx, p.d, p.out.Name()) }); fault != nil {
		err = fault // a preview stays open, and shows it
	}
	return len(made.Hulls), err
}

// hullsOf names the hulls that alone own what was saved; none where the yard, a design or anything shared is among it.
func hullsOf(changes preview.Changes) []string {
	var named []string
	for _, c := range changes {
		parts := strings.Split(c, "/")
		if len(parts) < 3 || parts[0] != "hulls" {
			return nil
		}
		if !slices.Contains(named, parts[1]) {
			named = append(named, parts[1])
		}
	}
	return named
}
