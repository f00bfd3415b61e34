package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"hullfile/engine/document"
	"hullfile/site/seal"
)

// openFile opens a technical file: a folder, or a zip of one.
func openFile(path string) (from fs.FS, closing func(), err error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil, fmt.Errorf("there is no technical file %q, neither a folder nor a zip", path)
	case err == nil && !info.IsDir() && !info.Mode().IsRegular(): // a pipe would wait for whoever writes into it
		return nil, nil, fmt.Errorf("%q is neither a folder nor a file", path)
	}
	if err != nil || info.IsDir() {
		root, err := openFolder(path)
		if err != nil {
			return nil, nil, err
		}
		return document.Plain(root.FS()), func() { root.Close() }, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	if from, err = seal.OpenZip(f, info.Size()); err != nil {
		f.Close()
		return nil, nil, fmt.Errorf("%q: %w", path, err)
	}
	return from, func() { f.Close() }, nil
}
