// Package seal proves a technical file: it holds every file against the list of hashes, and it writes and reads seals.
//
// A seal is a short plain statement, and beside it an SSH signature of that statement:
//
//	seals/1-builder.txt      who says what of which list of hashes, and when
//	seals/1-builder.txt.sig  what ssh-keygen -Y sign makes of it
//
// Seals lie in the folder of the file, so that they travel with it, and SHA256SUMS leaves them out: a list that named
// them would change with each of them, and with it what the others signed. A later seal names the hashes of the earlier
// ones, so that none of those can be taken away or exchanged below it.
//
// The package is given file systems, keys and texts; it knows no clock, no terminal and no network. The library of
// signatures is built on one that knows the network, which is why this room lies apart from the site.
package seal

import "path"

// Folder is where seals lie inside a technical file.
const Folder = "seals"

// Namespace is what a signature is good for, the -n of ssh-keygen: one that was made for mail or for a commit is none.
const Namespace = "hullfile"

// Names of the lists of hashes and of the results, as the site writes them.
const (
	SumsName     = "SHA256SUMS"
	ContentsName = "contents.sha256"
	ResultsName  = "results.json"
	coverName    = "index.html"
)

// Roles lists who may seal, in the order in which they do.
func Roles() []string { return []string{"builder", "surveyor"} }

// signatureOf is the file with the signature of a statement.
func signatureOf(statement string) string { return statement + ".sig" }

// inFolder is the path of a seal inside the technical file.
func inFolder(name string) string { return path.Join(Folder, name) }
