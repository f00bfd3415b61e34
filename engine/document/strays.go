package document

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

const (
	mostStrays  = 1000 // files that are collected from one folder; a folder with more is not the folder of a hull
	straysShown = 8    // names that one sentence holds
)

// straysIn lists the files of a documents folder that no record names, in order of name. Names that begin with a dot
// belong to the system and are passed over. more says that there were too many to list.
func straysIn(root *os.Root, folder string, known []Document, logs []string) (strays []string, more bool) {
	if root == nil {
		return nil, false
	}
	named := map[string]bool{}
	for _, d := range known {
		named[d.Path] = true
	}
	for _, log := range logs {
		named[log] = true
	}
	// A folder that is not there or may not be read has no strays: the documents that it should hold are told one by one.
	_ = fs.WalkDir(root.FS(), folder, func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return fs.SkipDir
		case name != folder && strings.HasPrefix(entry.Name(), "."):
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		case entry.IsDir() || named[name]:
			return nil
		case len(strays) == mostStrays:
			more = true
			return fs.SkipAll
		}
		strays = append(strays, name)
		return nil
	})
	return strays, more
}

// logsOf gives where logs of trials would lie if they lie among the papers.
func logsOf(h *record.Hull) []string {
	var all []string
	for _, t := range h.Trials {
		for _, log := range t.Logs {
			if log.File.Set {
				all = append(all, path.Join(path.Dir(log.File.At.File), "documents", log.File.V))
			}
		}
	}
	return all
}

// strayFindings tells the strays in one doubt.
func strayFindings(h *record.Hull, strays []string, more bool) []finding.Finding {
	if len(strays) == 0 {
		return nil
	}
	shown := make([]string, 0, straysShown)
	for _, s := range strays[:min(len(strays), straysShown)] {
		shown = append(shown, visible(s))
	}
	count := strconv.Itoa(len(strays))
	if more {
		count = "more than " + count
	}
	says := fmt.Sprintf("%s files in the documents folder are named by no record: %s", count, strings.Join(shown, ", "))
	if len(strays) == 1 {
		says = "1 file in the documents folder is named by no record: " + shown[0]
	}
	if rest := len(strays) - len(shown); rest > 0 {
		says += fmt.Sprintf(" and %d more", rest)
	}
	return []finding.Finding{{
		Kind: finding.Doubt, Rule: "document-stray", Subject: "documents", Says: says,
		Settle: "put them on record, or take them out of the folder", Places: placeOf(h),
	}}
}

// visible writes a file name so that nothing in it can hide.
func visible(name string) string {
	if strings.ContainsFunc(name, hidden) {
		return strconv.QuoteToASCII(name)
	}
	return name
}

// placeOf points at the record of the hull.
func placeOf(h *record.Hull) []finding.Place {
	if len(h.Over) == 0 {
		return nil
	}
	return []finding.Place{{File: h.Over[len(h.Over)-1]}}
}
