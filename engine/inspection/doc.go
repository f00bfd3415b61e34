// Package inspection judges what was found at a seam and what a test of tightness showed. Limits for imperfections are
// data; the size of an imperfection is kept as measured, so that it is judged again when a limit changes.
package inspection
