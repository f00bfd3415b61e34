// Package site makes technical files out of dossiers: one folder of pages a hull, whole in itself, and above them the
// register of the yard. It reckons nothing; it only says where a number stands and how it came about.
//
//	Dossier -> page structs of ready strings -> templates -> files -> contents list -> SHA256SUMS
//
// job.go is the way in, book.go the order of the pages, link.go the one place that knows which page shows what,
// figure.go the one place where a number becomes text. run.go goes through the hulls of a run; output.go, stage.go and
// settle.go alone write what readers get, state.go and kept.go what the next run remembers.
//
// # What is written anew
//
// The cost of a change is the cost of the hull that changed, and memory does not grow with the fleet. A run over [Pieces] never holds a
// yard as a whole. It goes this way:
//
//  1. Look. Of every hull's folder the disk tells names, kinds, sizes, times and numbers of files (look.go). Where these, the designs
//     under the hull and the names that its records may use are as the state remembers, nothing of the hull is read. A file younger than
//     the run, less one tick of a coarse clock, is not trusted and is read once more next time.
//  2. Read what looks otherwise. All faults of all hulls are told before anything is written; a hull that was not read had none when it
//     was. Of each hull stay a token of hashes (engine/token.go), in memory and in the state, and a brief of what others may take from it
//     (engine/brief.go), in the folder of what is kept, one small file a hull.
//  3. Key. A book has a key: a hash of its records and those of the yard, the papers beside them, what it takes from other hulls, the
//     program and what it was built with. Of the stock it holds the files that the hull draws on (engine/record/drawn.go), and which
//     thicknesses the yard has at all; metal that comes in for one boat leaves the files of the others alone and reads none of them,
//     because hashes of the texts of each hull are kept beside its brief and tell what it draws on (texts.go). Where the stock did not
//     change, only what the due hulls draw on is read of it (stocked.go). From the tokens follows which hulls look at each other and
//     whether what they take has changed (engine/neighbours.go); briefs are loaded only for a hull that is due.
//     Method sheets and lists of requirements of the yard's own are not in the key. While a hull is reckoned it is noted for which names
//     it asks (engine/asked.go), in vain too; the state remembers these names beside the key with a hash of what there was, and the next
//     run looks what there is by the same names (own.go). So a sheet that changes, appears, goes away or takes the place of a shipped one
//     has those books made anew that asked for it. That is enough because the records and the answers decide what is asked next. A file
//     encloses the sheets and lists for which its hull asked, and its proofs run through these. What of a yard changes all books are
//     yard.toml and the tables beside it, procedures, limits and owner: each file shows all of them.
//  4. Keep or write. A book with the same key that lies there as it was left stays, with its times. A hull that is due is read again,
//     reckoned among the briefs of its neighbours as if the yard had no others, written, and let go.
//
// The register is made where what it says or its files changed (registered.go); the templates are read when the first book or the register
// is due.
//
// A dossier can take nothing from a hull that its digest does not hold, because it is reckoned from briefs alone. Where a record is saved
// while the run is on, its book has no key and is made again next time. A hull is read twice in a fresh fleet, which costs a hundredth of
// making its book; to keep what was read would make memory grow with the fleet.
//
// What a hull takes from others must not grow with the yard, or a fleet grows with its square: of the stock it carries the files that it
// draws on, of its sisters it counts the nearest and those that cracked (engine/sisters.go), and what a trade looks up in all hulls is
// gathered once (record.Once).
//
// # What lies there as it was left
//
// To look at every file of a fleet's output takes longer than to make one book. So a run looks at the times of all folders of a book and at
// its lists, cover and results; that tells what was added, taken away, renamed or put in the place of another, as most programs save. What
// it does not tell is a page that somebody writes over in its place. For that each run looks at some thousand files one by one (round.go)
// and the next goes on where it ended: a small output is looked at whole every time, a page of a fleet in one run of many. EveryFile asks for
// all of them. Where only times differ, as in an output that was copied, the list of hashes decides.
//
// The state and what is kept may be deleted at any time, be cut, garbled or of another version: a hash at the end of the state, and in the
// state one of each brief, tell, and all is read and written anew. They are put in place last. Lists of hashes do not name them.
package site
