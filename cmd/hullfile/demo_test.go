package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"
)

// sharedDemo is the demo as the command writes it, made once for all tests that only read it.
type sharedDemo struct {
	dir  string // holds yard and files
	tree map[string]string
	made func() error
}

// demoOfAll lies in a folder of this run, which TestMain removes.
var demoOfAll = newSharedDemo()

func newSharedDemo() *sharedDemo {
	d := &sharedDemo{}
	d.made = sync.OnceValue(func() (err error) {
		if d.dir, err = os.MkdirTemp("", "hullfile-demo-"); err != nil {
			return err
		}
		var out, errs bytes.Buffer
		if status := run(context.Background(), []string{"demo", "-o", d.dir}, &out, &errs); status != statusSound {
			return fmt.Errorf("the demo ended with %d: %s", status, errs.String())
		}
		d.tree, err = treeOf(d.dir)
		return err
	})
	return d
}

// end removes the demo, if a test asked for it. What one test changes in it would be read by the next, so it must still be
// what it was.
func (d *sharedDemo) end() error {
	if d.dir == "" {
		return nil
	}
	defer os.RemoveAll(d.dir)
	now, err := treeOf(d.dir)
	if err != nil {
		return err
	}
	if diff := differences(d.tree, now); len(diff) > 0 {
		return fmt.Errorf("a test changed the demo that all share: %v", diff)
	}
	return nil
}

// demoFiles gives the folder of the technical files of the demo, to be read and not written.
func demoFiles(t *testing.T) string {
	t.Helper()
	if err := demoOfAll.made(); err != nil {
		t.Fatal(err)
	}
	return filepath.Join(demoOfAll.dir, "files")
}

// ownDemo gives a copy of the demo that a test may change: a folder with yard and files in it.
func ownDemo(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Dir(demoFiles(t)))); err != nil {
		t.Fatal(err)
	}
	return dir
}
