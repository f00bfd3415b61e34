package site

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
)

// recordFolders are the folders of a yard that hold its records and papers, whether or not they exist yet.
var recordFolders = []string{"designs", "hulls", "methods", "limits", "requirements", "owner", "procedures", "stock", "documents"}

// place is the folder that the output goes to, looked at before anything is written.
type place struct {
	out   string // absolute
	fresh bool   // did not exist before
}

// openPlace looks at the job's output folder and its hull numbers. It refuses the yard's own records, a folder with
// other contents than an earlier output, and hull numbers that cannot be the name of a folder.
func openPlace(job Job) (place, error) {
	if job.Out == "" {
		return place{}, errors.New("no output folder is named")
	}
	out, err := filepath.Abs(job.Out)
	if err != nil {
		return place{}, fmt.Errorf("output folder %s: %w", job.Out, err)
	}
	if err := keepOffRecords(out, job); err != nil {
		return place{}, err
	}
	p := place{out: out}
	entries, err := os.ReadDir(out)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Lstat(out); err == nil {
			return place{}, fmt.Errorf("output folder %s is a link that leads nowhere; choose another with -o", job.Out)
		}
		p.fresh = true
		return p, nil
	case errors.Is(err, syscall.ENOTDIR):
		return place{}, fmt.Errorf("output folder %s is a file, or a part of its path is; choose another with -o", job.Out)
	case err != nil:
		return place{}, fmt.Errorf("output folder %s: %w", job.Out, err)
	}
	return p, onlyOurs(out, entries, job.Out)
}

// keepOffRecords refuses an output folder that is the yard folder, holds it, or lies in one of its record folders.
func keepOffRecords(out string, job Job) error {
	if job.Root == nil {
		return nil
	}
	yard, err := filepath.Abs(job.Root.Name())
	if err != nil {
		return fmt.Errorf("yard folder %s: %w", job.Root.Name(), err)
	}
	rel, err := filepath.Rel(settled(yard), settled(out))
	if err != nil {
		return nil // on another volume
	}
	rel = filepath.ToSlash(rel)
	if rel == "." || strings.Trim(rel, "./") == "" {
		return fmt.Errorf("output folder %s holds the yard's own records; choose another with -o", job.Out)
	}
	if strings.HasPrefix(rel, "../") {
		return nil
	}
	first, _, _ := strings.Cut(rel, "/")
	for _, kept := range append(append(topNames(job), "logs"), recordFolders...) {
		if strings.EqualFold(first, kept) {
			return fmt.Errorf("output folder %s lies among the yard's own records (%s); choose another with -o", job.Out, kept)
		}
	}
	return nil
}

// settled follows symbolic links as far as the path exists, so that a link cannot lead into the records unseen.
func settled(p string) string {
	if real, err := filepath.EvalSymlinks(p); err == nil {
		return real
	}
	parent := filepath.Dir(p)
	if parent == p {
		return p
	}
	return filepath.Join(settled(parent), filepath.Base(p))
}

// topNames lists what of the records lies in the yard folder itself.
func topNames(job Job) []string {
	var out []string
	if job.Yard != nil {
		for _, f := range job.Yard.Files {
			first, _, _ := strings.Cut(f.Path, "/")
			out = append(out, first)
		}
		return out
	}
	entries, err := os.ReadDir(job.Root.Name())
	if err != nil {
		return nil // reading the yard will tell
	}
	for _, e := range entries {
		if !e.IsDir() {
			out = append(out, e.Name())
		}
	}
	return out
}

// onlyOurs refuses a folder with contents unless an earlier run made it. What a run remembers is a file and a folder: by way of
// a link in their place it would write elsewhere, and a pipe would wait for a writer.
func onlyOurs(out string, entries []os.DirEntry, named string) error {
	others := false
	for _, e := range entries {
		if e.Name() == stateName && !e.Type().IsRegular() || e.Name() == keptName && !e.IsDir() {
			name := filepath.Join(named, e.Name())
			return fmt.Errorf("%s is in the way: a run remembers there what it wrote, and no run made it as it is; remove it, which loses nothing of the technical files, and do the same again", name)
		}
		others = others || !strings.HasPrefix(e.Name(), stagePrefix) && e.Name() != stateName && e.Name() != keptName
	}
	if others && !ours(out) && !halfway(out) {
		return fmt.Errorf("output folder %s is not empty and holds no earlier output (%s and %s are not in it); choose another with -o",
			named, contentsName, sumsName)
	}
	return nil
}

// notInTheWay refuses hull folders in the output that no run made.
func notInTheWay(out string, hulls []string) error {
	for _, number := range hulls {
		dir := filepath.Join(out, number)
		if _, err := os.Lstat(dir); err == nil && !ours(dir) {
			return fmt.Errorf("%s is in the way: no earlier output made it; move it away or choose another folder with -o", dir)
		}
	}
	return nil
}

// halfway reports whether a run was killed while it put new lists in the place of the old: what it set aside and what
// lies there are together an earlier output.
func halfway(out string) bool {
	for _, name := range []string{contentsName, sumsName} {
		aside, err := filepath.Glob(filepath.Join(out, stagePrefix+"*", "old", name))
		if _, missing := os.Lstat(filepath.Join(out, name)); missing != nil && (err != nil || len(aside) == 0) {
			return false
		}
	}
	return true
}

// ours reports whether this package wrote the folder.
func ours(dir string) bool {
	for _, name := range []string{contentsName, sumsName} {
		info, err := os.Lstat(filepath.Join(dir, name))
		if err != nil || !info.Mode().IsRegular() {
			return false
		}
	}
	return true
}

// folderNames refuses hull numbers that cannot be folders beside each other.
func folderNames(numbers []string) error {
	seen := map[string]string{}
	for _, number := range numbers {
		if own := ownName(number); own != "" {
			return fmt.Errorf("hull number %q: the output keeps the name %s for itself; give the hull another number, and its folder with it", number, own)
		}
		if !plainName(number) {
			return fmt.Errorf("hull number %q cannot be the name of a folder: write letters, digits, - _ and . only", number)
		}
		low := strings.ToLower(number)
		if other, taken := seen[low]; taken {
			return fmt.Errorf("hulls %s and %s would share one folder", other, number)
		}
		seen[low] = number
	}
	return nil
}
