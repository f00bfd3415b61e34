package site

import (
	"html/template"
	"slices"
	"strconv"

	"hullfile/engine/finding"
)

// uses keeps which pages cite which line of which record. It is filled while pages are made, so the pages of the records
// are made after all others.
type uses map[string]map[int][]*section

// cite notes that a page cites a line.
func (u uses) cite(p finding.Place, by *section) {
	if by == nil || p.Line == 0 {
		return
	}
	lines := u[p.File]
	if lines == nil {
		lines = map[int][]*section{}
		u[p.File] = lines
	}
	if all := lines[p.Line]; len(all) == 0 || all[len(all)-1] != by && !slices.Contains(all, by) {
		lines[p.Line] = append(all, by)
	}
}

// shownUses is how many pages stand beside a line; of more their number is told.
const shownUses = 6

// usedBy writes what stands beside a line: links to the pages that use it, by their section numbers.
func (l *leaf) usedBy(file string) func(out []byte, line int) []byte {
	lines := l.cited[file]
	links := map[*section]string{}
	return func(out []byte, line int) []byte {
		all := lines[line]
		if len(all) == 0 {
			return out
		}
		out = append(out, `<span class="used">`...)
		for i, s := range all {
			if i == shownUses {
				out = append(out, `<span>and `+strconv.Itoa(len(all)-i)+` more</span>`...)
				break
			}
			if links[s] == "" {
				no := s.no
				if no == "" {
					no = "cover"
				}
				links[s] = `<a href="` + template.HTMLEscapeString(l.to(s.path, "")) + `" title="` + template.HTMLEscapeString(s.title) + `">` + template.HTMLEscapeString(no) + "</a> "
			}
			out = append(out, links[s]...)
		}
		return append(out, "</span>"...)
	}
}

// usedLines counts the lines of a file that some page cites.
func (b *book) usedLines(file string) int { return len(b.cited[file]) }
