package tracklog

import "strings"

// columnsError says what is wrong with the columns that a record names.
type columnsError []string

// Error joins what is wrong.
func (e columnsError) Error() string { return strings.Join(e, "; ") }
