package main

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"hullfile/content"
)

// demoFile gives the technical file of the finished hull in a demo of one's own.
func demoFile(t *testing.T) string {
	t.Helper()
	return filepath.Join(ownDemo(t), "files", "HL74-012")
}

// said runs the command, holds its status and gives what it printed.
func said(t *testing.T, status int, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if got := run(context.Background(), args, &out, &errs); got != status {
		t.Fatalf("hullfile %s ended with %d, want %d\n%s%s", strings.Join(args, " "), got, status, out.String(), errs.String())
	}
	return out.String() + errs.String()
}

// plain runs a line of a shell in a folder, as the page on proving a file shows it, and says whether it ended well.
func plain(t *testing.T, dir, line string) (string, bool) {
	t.Helper()
	cmd := exec.Command("sh", "-c", line)
	cmd.Dir = dir
	text, err := cmd.CombinedOutput()
	return string(text), err == nil
}

// newSealKey makes a key with ssh-keygen for the length of a test.
func newSealKey(t *testing.T, name string) string {
	t.Helper()
	at := filepath.Join(t.TempDir(), name)
	if text, ok := plain(t, ".", "ssh-keygen -q -t ed25519 -N '' -C "+name+" -f '"+at+"'"); !ok {
		t.Fatal(text)
	}
	return at
}

// The finished hull of the demo is sealed by a key made here, countersigned by ssh-keygen itself, and verified by the
// program and by sha256sum and ssh-keygen alone.
func TestDemoIsSealedAndProvedByPlainTools(t *testing.T) {
	t.Parallel()
	for _, tool := range []string{"sh", "ssh-keygen", "sha256sum"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skip("there is no", tool)
		}
	}
	file := demoFile(t)
	builder, surveyor := newSealKey(t, "builder"), newSealKey(t, "surveyor")
	seal := func(key, role, name, date string) string {
		return said(t, statusSound, "seal", file, "--key", key, "--role", role, "--name", name, "--date", date, "--statement", "This file tells what was built.")
	}
	lines := seal(builder, "builder", "Maren Tveit", "2026-08-08")
	signers := filepath.Join(t.TempDir(), "signers")
	list := strings.TrimSpace(lines[strings.Index(lines, "maren-tveit"):]) + "\n"
	// With a public key the statement is written alone, and the printed line signs it.
	told := seal(surveyor+".pub", "surveyor", "Ivo Lang", "2026-08-20")
	sign := strings.TrimSpace(told[strings.Index(told, "ssh-keygen"):])
	if text := said(t, statusFindings, "verify", file); !strings.Contains(text, "begun and not ended") {
		t.Errorf("a seal that was not signed: %s", text)
	}
	if text, ok := plain(t, file, strings.Replace(sign, surveyor+".pub", surveyor, 1)); !ok {
		t.Fatal(text)
	}
	public, err := os.ReadFile(surveyor + ".pub")
	if err != nil {
		t.Fatal(err)
	}
	list += "ivo-lang " + string(public)
	if err := os.WriteFile(signers, []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	root, _ := plain(t, file, "sha256sum contents.sha256 | cut -c1-64")
	text := said(t, statusSound, "verify", file, "--signers", signers, "--rebuild", "--root", strings.TrimSpace(root))
	if strings.Contains(text, "not shown") || strings.Contains(text, "short") || !strings.Contains(text, "Ivo Lang, surveyor, signed on 20 August 2026 by ivo-lang") {
		t.Errorf("the sealed file: %s", text)
	}
	checkPlainly(t, file, signers)
}

// A key that others can read is told, and one that they cannot is not.
func TestKeyThatOthersCanReadIsTold(t *testing.T) {
	t.Parallel()
	key := filepath.Join(t.TempDir(), "key")
	for rights, told := range map[os.FileMode]bool{0o600: false, 0o400: false, 0o640: true, 0o604: true} {
		if err := os.WriteFile(key, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := os.Chmod(key, rights); err != nil {
			t.Fatal(err)
		}
		if openToOthers(key) != (told && runtime.GOOS != "windows") {
			t.Errorf("rights %o: told is %t", rights, !told)
		}
		if err := os.Remove(key); err != nil {
			t.Fatal(err)
		}
	}
}

// The lines of a shell that content/notes/proving.md shows, step by step.
var plainLines = []string{
	"sha256sum --quiet -c SHA256SUMS",
	"find . ! -type d ! -path ./SHA256SUMS ! -path './seals/*' | sed 's|^\\./||' | LC_ALL=C sort > ../found\n    cut -c67- SHA256SUMS | LC_ALL=C sort | diff - ../found",
	"grep \"^sha256: $(sha256sum SHA256SUMS | cut -c1-64)$\" seals/1-builder.txt",
	"ssh-keygen -Y verify -f ../signers -I NAME -n hullfile -s seals/1-builder.txt.sig < seals/1-builder.txt",
}

func TestPageOnProvingShowsTheLinesThatAreTried(t *testing.T) {
	text, err := fs.ReadFile(content.Files, "notes/proving.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range plainLines {
		if !strings.Contains(string(text), "    "+line+"\n") {
			t.Errorf("the page does not show %q", line)
		}
	}
}

// checkPlainly holds a sealed file by the plain tools: whole first, and then with each kind of harm, which must be found
// by one of the lines.
func checkPlainly(t *testing.T, file, signers string) {
	t.Helper()
	lines := slices.Clone(plainLines)
	lines[3] = strings.NewReplacer("../signers", "'"+signers+"'", "NAME", "maren-tveit").Replace(lines[3])
	finds := func() (found []int) {
		for i, line := range lines {
			if _, ok := plain(t, file, line); !ok {
				found = append(found, i)
			}
		}
		return found
	}
	if found := finds(); len(found) > 0 {
		text, _ := plain(t, file, lines[found[0]])
		t.Fatalf("the whole file is not taken by %s\n%s", lines[found[0]], text)
	}
	if text, ok := plain(t, file, strings.Replace(lines[3], "maren-tveit", "ivo-lang", 1)); ok {
		t.Errorf("a wrong key is taken: %s", text)
	}
	rows := []struct {
		where, harm, mend string
		by                int
	}{
		{"an altered byte", "cp weight.html ../kept && sed -i 's/h1/h2/' weight.html", "mv ../kept weight.html", 0},
		{"two files exchanged", "mv weight.html ../kept && mv boat.html weight.html && mv ../kept boat.html", "mv weight.html ../kept && mv boat.html weight.html && mv ../kept boat.html", 0},
		{"a file taken away", "mv boat.html ../kept", "mv ../kept boat.html", 0},
		{"a file added", "touch more.html", "rm more.html", 1},
		{"an old signature", "cp SHA256SUMS ../kept && touch more.html && sha256sum more.html >> SHA256SUMS", "mv ../kept SHA256SUMS && rm more.html", 2},
		{"a changed statement", "cp seals/1-builder.txt ../kept && sed -i 's/tells/hides/' seals/1-builder.txt", "mv ../kept seals/1-builder.txt", 3},
	}
	for _, row := range rows {
		if text, ok := plain(t, file, row.harm); !ok {
			t.Fatalf("%s: %s", row.where, text)
		}
		if found := finds(); len(found) == 0 || found[0] != row.by {
			t.Errorf("%s: found by %v, want line %d first", row.where, found, row.by)
		}
		said(t, statusFindings, "verify", file, "--signers", signers)
		if text, ok := plain(t, file, row.mend); !ok {
			t.Fatalf("%s: %s", row.where, text)
		}
	}
	said(t, statusSound, "verify", file, "--signers", signers)
}

// Every file of the demo is made again from the records inside it alone.
func TestEveryFileOfTheDemoIsRebuilt(t *testing.T) {
	t.Parallel()
	files := filepath.Dir(demoFile(t))
	for _, number := range []string{"HL74-012", "HL74-013", "LT56-031"} {
		if text := said(t, statusSound, "verify", filepath.Join(files, number), "--rebuild"); !strings.Contains(text, "the same root and the") {
			t.Errorf("%s: %s", number, text)
		}
	}
	// A changed record gives another file, even where every list was made anew.
	file := filepath.Join(files, "LT56-031")
	if text, ok := plain(t, file, "sed -i 's/^title.*/title = \"Another\"/' records/designs/LT56/design.toml && grep -q Another records/designs/LT56/design.toml"); !ok {
		t.Fatal(text)
	}
	if text := said(t, statusFindings, "verify", file, "--rebuild"); !strings.Contains(text, "comes out otherwise") {
		t.Errorf("a changed record: %s", text)
	}
}

// A sealed file is not written over: not when its records change, not when its hull leaves the yard.
func TestSealedFileIsNotWrittenOver(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("ssh-keygen"); err != nil {
		t.Skip("there is no ssh-keygen")
	}
	file := demoFile(t)
	yard, files := filepath.Join(file, "..", "..", "yard"), filepath.Dir(file)
	said(t, statusSound, "seal", file, "--key", newSealKey(t, "builder"), "--role", "builder", "--name", "Maren Tveit", "--date", "2026-08-08", "--statement", "Yes.")
	before, err := treeOf(file)
	if err != nil {
		t.Fatal(err)
	}
	if text := said(t, statusSound, "render", yard, "-o", files); !strings.Contains(text, "3 hulls are unchanged") {
		t.Errorf("nothing changed, and: %s", text)
	}
	if text, ok := plain(t, yard, "sed -i 's/Port Ansgar/Port Arden/' yard.toml && grep -q Arden yard.toml"); !ok {
		t.Fatal(text)
	}
	if text := said(t, statusSound, "render", yard, "-o", files); !strings.Contains(text, "HL74-012 is sealed and was not written anew") {
		t.Errorf("the yard's records changed, and: %s", text)
	}
	if text, ok := plain(t, yard, "mv hulls/HL74-012 away"); !ok {
		t.Fatal(text)
	}
	said(t, statusSound, "render", yard, "-o", files)
	if text, ok := plain(t, yard, "mv away hulls/HL74-012"); !ok {
		t.Fatal(text)
	}
	for range 2 {
		if text := said(t, statusSound, "render", yard, "-o", files); !strings.Contains(text, "HL74-012 is sealed and was left as it lies") {
			t.Errorf("a hull came back to its sealed file, and: %s", text)
		}
	}
	after, err := treeOf(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := differences(before, after); len(diff) > 0 {
		t.Errorf("the sealed file changed: %v", diff)
	}
}

// Files of other shapes of yard are made again too: a lone hull, layers of designs, own sheets and lists, tables out of a
// spreadsheet, papers with odd names and papers that no record names.
func TestFilesOfOtherYardsAreRebuilt(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"lone", "spreadsheet", "build", "own"} {
		yard, out := filepath.Join(t.TempDir(), name), filepath.Join(t.TempDir(), "files")
		if name == "own" {
			ownYard(t, yard)
		} else if err := os.CopyFS(yard, os.DirFS(filepath.Join(moduleRoot(t), "testdata", "yards", name))); err != nil {
			t.Fatal(err)
		}
		hulls, err := filepath.Glob(filepath.Join(yard, "hulls", "*"))
		if err != nil {
			t.Fatal(err)
		}
		if len(hulls) == 0 {
			hulls = []string{yard}
		}
		for _, hull := range hulls {
			papers := filepath.Join(hull, "documents")
			if err := os.MkdirAll(papers, 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(papers, "scan 12:30, left.txt"), []byte("nobody names it"), 0o644); err != nil {
				t.Skip(err)
			}
		}
		said(t, statusSound, "render", yard, "-o", out, "--print")
		files, err := filepath.Glob(filepath.Join(out, "*", "rebuild.json"))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: no file was made: %v", name, err)
		}
		for _, at := range files {
			if text := said(t, statusSound, "verify", filepath.Dir(at), "--rebuild"); !strings.Contains(text, "the same root and the") {
				t.Errorf("%s: %s", at, text)
			}
		}
	}
}

// ownYard is the demo yard with a method sheet, a list of requirements and a chapter of its own in the place of ours.
func ownYard(t *testing.T, yard string) {
	t.Helper()
	demo, err := fs.Sub(content.Files, "demo")
	if err == nil {
		err = os.CopyFS(yard, demo)
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, from := range []string{"methods/iso-12215-5-2008.toml", "requirements/weld-data-book.toml", "owner/21-contacts.md"} {
		text, err := fs.ReadFile(content.Files, from)
		if err != nil {
			t.Fatal(err)
		}
		at := filepath.Join(yard, filepath.FromSlash(from))
		if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, append(text, "\n\n"...), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
