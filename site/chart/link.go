package chart

// linked wraps what draw draws in a link. Only a link inside the technical file is taken: one with a scheme is not.
func (s *sheet) linked(href string, draw func()) {
	if href == "" || !local(href) {
		draw()
		return
	}
	s.raw(`<a href="`)
	s.out = appendText(s.out, href)
	s.raw(`">`)
	draw()
	s.raw("</a>")
}

// local reports whether a link stays beside the page: no scheme before the first slash, no second host.
func local(href string) bool {
	for i := 0; i < len(href); i++ {
		switch href[i] {
		case ':', '\\':
			return false
		case '/', '#', '?':
			return i > 0 || href[0] == '#'
		}
	}
	return true
}
