// Package inspection judges what was found at a seam and what a test of tightness showed. Limits for imperfections are
// data; the size of an imperfection is kept as measured, so that it is judged again when a limit changes.
//
//   - Question: may this imperfection stay, and did the test of tightness show what it had to?
//   - In: the seams with their looks, the table of limits, the head of water at each panel.
//   - Out: each imperfection with its verdict at the level of its seam, each test; checks.
//   - Source: ISO 10042 as recalled, in content/limits; practice where no rule says it.
package inspection
