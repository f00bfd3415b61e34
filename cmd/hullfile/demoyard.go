package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"

	"hullfile/content"
)

// demoList stands in a demo folder and lists the records that were written there, in the form of sha256sum. It is how
// an earlier demo is told from a folder of somebody's own, and a shipped record from one that was changed by hand.
const demoList = "demo-records.sha256"

// writeDemoYard writes the shipped records to the folder's yard/ and leaves anything that is not ours alone.
func writeDemoYard(folder string) error {
	shipped, err := shippedRecords("demo", "yard")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("the demo could not be written: %w", err)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return fmt.Errorf("the demo could not be written: %w", err)
	}
	defer root.Close()
	earlier, err := earlierDemo(root, folder, shipped)
	if err != nil {
		return err
	}
	for name := range earlier {
		if _, still := find(shipped, name); !still {
			root.Remove(name) // a record of an older demo that no longer ships; if it stays, the next check tells of it
		}
	}
	if err := writeRecords(root, append([]recordFile{listOf(shipped)}, shipped...)); err != nil {
		return fmt.Errorf("the demo could not be written: %w", err)
	}
	return nil
}

// recordFile is one file to write: its path under the folder, with forward slashes, and its bytes.
type recordFile struct {
	name string
	text []byte
}

// shippedRecords lists the embedded files below from, in order of name, as they should lie below to.
func shippedRecords(from, to string) ([]recordFile, error) {
	var all []recordFile
	err := fs.WalkDir(content.Files, from, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || entry.Name() == ".keep" {
			return err
		}
		text, err := fs.ReadFile(content.Files, name)
		all = append(all, recordFile{path.Join(to, strings.TrimPrefix(name, from+"/")), text})
		return err
	})
	return all, err
}

func find(all []recordFile, name string) (recordFile, bool) {
	for _, f := range all {
		if f.name == name {
			return f, true
		}
	}
	return recordFile{}, false
}

func listOf(all []recordFile) recordFile {
	var text bytes.Buffer
	for _, f := range all {
		fmt.Fprintf(&text, "%x  %s\n", sha256.Sum256(f.text), f.name)
	}
	return recordFile{demoList, text.Bytes()}
}

// earlierDemo gives the hashes of an earlier demo by file name, none for a new or an empty folder. It refuses a folder
// of somebody's own and an earlier demo whose records were changed by hand.
func earlierDemo(root *os.Root, folder string, shipped []recordFile) (map[string]string, error) {
	entries, err := fs.ReadDir(root.FS(), ".")
	if err != nil || len(entries) == 0 {
		return nil, err
	}
	text, err := root.ReadFile(demoList)
	if err != nil {
		return nil, fmt.Errorf("%q is not empty and not an earlier demo; name another folder with -o", folder)
	}
	earlier := map[string]string{}
	for line := range strings.Lines(string(text)) {
		hash, name, ok := strings.Cut(strings.TrimSpace(line), "  ")
		if ok {
			earlier[name] = hash
		}
	}
	for _, f := range listed(earlier, shipped) {
		if err := changedByHand(root, f, earlier[f.name]); err != nil {
			return nil, fmt.Errorf("%w in %q; name another folder with -o, or remove it", err, folder)
		}
	}
	return earlier, nil
}

// listed is every file that an earlier demo wrote or that this one would write.
func listed(earlier map[string]string, shipped []recordFile) []recordFile {
	all := shipped[:len(shipped):len(shipped)]
	for name := range earlier {
		if _, there := find(shipped, name); !there {
			all = append(all, recordFile{name: name})
		}
	}
	return all
}

// changedByHand is an error where the file on disk is neither what the earlier demo wrote nor what ships now.
func changedByHand(root *os.Root, f recordFile, hash string) error {
	text, err := root.ReadFile(f.name)
	if errors.Is(err, fs.ErrNotExist) || err == nil && bytes.Equal(text, f.text) {
		return nil
	}
	if err != nil {
		return err
	}
	if fmt.Sprintf("%x", sha256.Sum256(text)) != hash {
		return fmt.Errorf("%s was changed by hand", f.name)
	}
	return nil
}

// writeRecords writes each file that is not there yet as it should be, first beside its place, so that a broken-off
// run leaves no half file.
func writeRecords(root *os.Root, all []recordFile) error {
	for _, f := range all {
		if there, err := root.ReadFile(f.name); err == nil && bytes.Equal(there, f.text) {
			continue
		}
		if err := root.MkdirAll(path.Dir(f.name), 0o755); err != nil {
			return err
		}
		part := f.name + ".part"
		if err := root.WriteFile(part, f.text, 0o644); err != nil {
			root.Remove(part)
			return err
		}
		if err := root.Rename(part, f.name); err != nil {
			return err
		}
	}
	return nil
}
