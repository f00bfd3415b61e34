package site

import (
	"fmt"
	"strconv"
)

// The whole of a technical file on one page is more than many a browser can lay out for paper: some thousand sheets want
// gigabytes. So the same pages are written in volumes too, one for each group of the contents, with the same numbers.

// printedVolume is one part of a print edition.
type printedVolume struct {
	title string
	tops  []*section
}

// volumesOf puts the pages of a book into volumes: what stands before the first group is one with it.
func volumesOf(pages []joinedPage) []printedVolume {
	var all []printedVolume
	for _, p := range pages {
		s := p.section
		switch {
		case s.above != nil:
			continue
		case len(all) == 0:
			all = append(all, printedVolume{title: "Cover, findings and boat"})
		case s.head != "":
			all = append(all, printedVolume{title: s.head})
		}
		v := &all[len(all)-1]
		v.tops = append(v.tops, s)
	}
	return all
}

// volumeName is the file of a volume.
func volumeName(n int) string { return "print-" + strconv.Itoa(n) + ".html" }

func volumeTitle(all []printedVolume, n int) string {
	return fmt.Sprintf("Volume %d of %d: %s", n, len(all), all[n-1].title)
}

// bind tells a joiner which page stands in which volume.
func (j *joiner) bind(all []printedVolume) {
	j.volumes = map[*section]int{}
	for i, v := range all {
		for _, top := range v.tops {
			j.volumes[top] = i + 1
		}
	}
	for _, p := range j.pages {
		j.volumes[p.section] = j.volumes[topOf(p.section)]
	}
}

func topOf(s *section) *section {
	for s.above != nil {
		s = s.above
	}
	return s
}

// here reports whether a section stands in what is being written.
func (j *joiner) here(s *section) bool { return j.volume == 0 || j.volumes[s] == j.volume }

// file is the file in which a section stands, empty where it is the one that is being written.
func (j *joiner) file(s *section) string {
	if j.here(s) {
		return ""
	}
	return volumeName(j.volumes[s])
}

// listed gives the lines that stand in what is being written.
func (j *joiner) listed(lines []PrintedLine) []PrintedLine {
	out := make([]PrintedLine, 0, len(lines))
	for _, l := range lines {
		if j.here(l.section) {
			out = append(out, l)
		}
	}
	return out
}

// printVolumes writes the volumes of a file whose pages are joined and numbered.
func (b *book) printVolumes(p PrintedPage, j *joiner) error {
	all := volumesOf(j.pages)
	j.bind(all)
	for n := range all {
		j.volume = n + 1
		p.Volume = volumeTitle(all, n+1)
		if err := b.writeJoined(volumeName(n+1), p, j); err != nil {
			return err
		}
	}
	return nil
}

func volumeLinks(pages []joinedPage) []Link {
	all := volumesOf(pages)
	out := make([]Link, len(all))
	for n := range all {
		out[n] = Link{Text: volumeTitle(all, n+1), Href: volumeName(n + 1)}
	}
	return out
}
