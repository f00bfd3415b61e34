// Package tracklog reads what instruments wrote down during a trial and holds it against the runs: GPX tracks, NMEA 0183
// sentences and the CSV tables of loggers.
//
// A log is read once, line by line, and nothing of it is kept but what a page shows: counts of what could not be used, a
// thinned track, and the sums of every window that a run or a manoeuvre names. So a log of gigabytes needs no more memory
// than one of kilobytes.
//
// The way of a sample: a reader (nmea.go, csv.go, gpx.go) makes it, order.go lets it through only if time goes forward and
// marks gaps, and a collector (collect.go) hands it to the windows, to the finder of steady stretches and to the track.
// Nothing is reckoned across a gap. Open assess.go first.
//
//   - Question: what did the boat really do during the runs?
//   - In: logs beside the record of a trial, GPX, NMEA 0183 or CSV.
//   - Out: for each log what could be used and what not; for each run and manoeuvre the means of its window; steady
//     stretches.
//   - Source: each reader names the source of its format.
package tracklog
