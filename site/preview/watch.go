package preview

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"
)

// Changes is what was saved since the last time: paths relative to the yard folder with forward slashes, in order.
type Changes []string

// Watch tells what is saved below a folder, each time after a pause in which nothing was. Folders are watched, not files,
// because editors save by putting a new file in the place of the old. The channel closes when the context ends.
// The error says that the folder is not there, or that the system watches no more.
func Watch(ctx context.Context, folder string, pause time.Duration) (<-chan Changes, error) {
	folder, err := filepath.EvalSymlinks(folder)
	if err != nil {
		return nil, fmt.Errorf("the yard folder cannot be watched: %w", err)
	}
	eyes, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, fmt.Errorf("the yard folder cannot be watched: %w", err)
	}
	w := &watch{folder: folder, eyes: eyes, pause: pause, saved: map[string]bool{}}
	if err := w.add(folder); err != nil {
		eyes.Close()
		if errors.Is(err, syscall.ENOSPC) { // what the system says would speak of a full disk
			err = errors.New("it has more folders than this system watches for one person (fs.inotify.max_user_watches)")
		}
		return nil, fmt.Errorf("the yard folder cannot be watched: %w", err)
	}
	out := make(chan Changes)
	go w.run(ctx, out)
	return out, nil
}

type watch struct {
	folder string
	eyes   *fsnotify.Watcher
	pause  time.Duration
	saved  map[string]bool
	lost   bool // the folder itself went away
}

// lookAgain is how often a folder that went away is looked for: a stick that was pulled out, a folder that another program
// puts in its place.
const lookAgain = 500 * time.Millisecond

// run collects what is saved and hands it over when it has been quiet for the pause and the other side is ready.
func (w *watch) run(ctx context.Context, out chan<- Changes) {
	defer close(out)
	defer w.eyes.Close()
	quiet := time.NewTimer(time.Hour)
	quiet.Stop()
	again := time.NewTicker(lookAgain)
	defer again.Stop()
	var ready chan<- Changes // nil until there is something to tell
	for {
		select {
		case <-ctx.Done():
			return
		case e := <-w.eyes.Events:
			if w.take(e) {
				ready = nil
				quiet.Reset(w.pause)
			}
		case <-w.eyes.Errors: // events were lost; what changed cannot be told, so everything did
			w.saved["."] = true
			quiet.Reset(w.pause)
		case <-again.C:
			if w.lost && w.found() {
				w.saved["."] = true
				quiet.Reset(w.pause)
			}
		case <-quiet.C:
			ready = out
		case ready <- w.list():
			clear(w.saved)
			ready = nil
		}
	}
}

// found watches the folder anew if it is there again, and no longer what stood in its place before.
func (w *watch) found() bool {
	if _, err := os.Stat(w.folder); err != nil {
		return false
	}
	for _, name := range w.eyes.WatchList() {
		w.eyes.Remove(name) //nolint:errcheck // it may be gone already
	}
	w.lost = w.add(w.folder) != nil
	return !w.lost
}

func (w *watch) list() Changes {
	var all Changes
	for name := range w.saved {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

// take notes an event if it is about a record. A folder that is new is watched from now on; what it already holds came
// before the watch and counts as saved with it.
func (w *watch) take(e fsnotify.Event) bool {
	if e.Op == fsnotify.Chmod || scratch(filepath.Base(e.Name)) {
		return false
	}
	rel, err := filepath.Rel(w.folder, e.Name)
	if err != nil {
		rel = "."
	}
	if e.Name == w.folder && e.Op&(fsnotify.Remove|fsnotify.Rename) != 0 {
		w.lost = true
	}
	if e.Has(fsnotify.Create) {
		if info, err := os.Lstat(e.Name); err == nil && info.IsDir() {
			w.add(e.Name) //nolint:errcheck // it may be gone again
		}
	}
	w.saved[filepath.ToSlash(rel)] = true
	return true
}

// add watches a folder and all below it. A folder that goes away meanwhile is no fault; links are not followed.
func (w *watch) add(folder string) error {
	return filepath.WalkDir(folder, func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			if name == w.folder {
				return err
			}
			return nil
		}
		if !e.IsDir() {
			return nil
		}
		if name != w.folder && strings.HasPrefix(e.Name(), ".") {
			return fs.SkipDir
		}
		if err := w.eyes.Add(name); err != nil && name == w.folder {
			return err
		} else if err != nil && !os.IsNotExist(err) {
			return fmt.Errorf("%s: %w", name, err)
		}
		return nil
	})
}

// scratch reports the names under which editors keep what is not saved yet.
func scratch(name string) bool {
	if strings.HasPrefix(name, ".") || strings.HasSuffix(name, "~") || strings.HasPrefix(name, "#") || strings.HasPrefix(name, "~$") || name == "4913" {
		return true
	}
	switch strings.ToLower(filepath.Ext(name)) {
	case ".swp", ".swx", ".tmp", ".bak":
		return true
	}
	return false
}
