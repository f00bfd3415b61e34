package document

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// mostName is the greatest length of one part of a name in bytes; file systems take 255.
const mostName = 255

// refuse says why a file name from a record is not used, or nothing if it may be. It keeps out everything that could
// leave the documents folder on any system, or that reads differently from what it is: the technical file is copied
// to machines that the yard has never seen.
func refuse(name string) string {
	switch {
	case name == "":
		return "the file name is empty"
	case !utf8.ValidString(name):
		return "the file name is not valid text"
	case strings.ContainsRune(name, '\\'):
		return "the file name holds a backslash; folders are parted by /"
	case strings.HasPrefix(name, "/"):
		return "the file name begins at the root of the disk"
	case strings.ContainsAny(name, `<>:"|?*`):
		return `the file name holds one of < > : " | ? *`
	case strings.ContainsFunc(name, hidden):
		return "the file name holds a control or direction mark"
	}
	for part := range strings.SplitSeq(name, "/") {
		if why := refusePart(part); why != "" {
			return why
		}
	}
	return ""
}

// refusePart looks at one folder or file name.
func refusePart(part string) string {
	switch {
	case part == "" || part == "." || part == "..":
		return "the file name leaves the documents folder or has an empty part"
	case len(part) > mostName:
		return "a part of the file name is too long"
	case strings.TrimRight(part, ". ") != part || strings.HasPrefix(part, " "):
		return "a part of the file name begins or ends with a blank, or ends with a dot"
	case device(part):
		return "the file name is the name of a device on some systems"
	}
	return ""
}

// hidden reports a character that cannot be seen or turns the direction of reading: a name with one can look like another.
func hidden(r rune) bool {
	return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r)
}

// devices are names that mean a device on Windows whatever follows the dot; COM and LPT take a digit.
var devices = [...]string{"con", "prn", "aux", "nul", "conin$", "conout$", "clock$"}

// device reports whether a name is that of a device.
func device(part string) bool {
	stem, _, _ := strings.Cut(strings.ToLower(part), ".")
	stem = strings.TrimRight(stem, " ")
	if slices.Contains(devices[:], stem) {
		return true
	}
	port, found := strings.CutPrefix(stem, "com")
	if !found {
		port, found = strings.CutPrefix(stem, "lpt")
	}
	return found && utf8.RuneCountInString(port) == 1 && strings.ContainsAny(port, "0123456789¹²³")
}
