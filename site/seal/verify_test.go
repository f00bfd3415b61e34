package seal

import (
	"context"
	"errors"
	"io"
	"os"
	"strings"
	"testing"

	"golang.org/x/crypto/ssh"

	"hullfile/engine/finding"
)

func TestWholeSealedFileIsMet(t *testing.T) {
	f := newFile(t, "HL74-012")
	builder, surveyor := newKey(t), newKey(t)
	signers := signersOf(t, map[string]ssh.Signer{"Maren Tveit": builder, "Ivo Lang": surveyor})
	sums := f.read(SumsName)
	if name := f.sealed("builder", "Maren Tveit", "2026-04-20", builder); name != "1-builder.txt" {
		t.Errorf("first seal is called %s", name)
	}
	if name := f.sealed("surveyor", "Ivo Lang", "2026-05-02", surveyor); name != "2-surveyor.txt" {
		t.Errorf("second seal is called %s", name)
	}
	if f.read(SumsName) != sums {
		t.Error("sealing changed the list of hashes")
	}
	root := digest(f.read(ContentsName))
	r := f.verify(Given{Signers: signers, Root: strings.ToUpper(root)})
	if r.Standing() != finding.Met || len(r.Seals) != 2 || r.Seals[0].Who != "maren-tveit" || r.Seals[1].Statement.After[0].Name != "1-builder.txt" {
		t.Errorf("whole file: %s, %+v", r.Standing(), r.Checks)
	}
	if r.Hull != "HL74-012" || r.Issue != 2 || r.Version != "v1" || r.Files.Listed != 7 {
		t.Errorf("the report says %+v", r)
	}
	// What nobody brought is not shown, and not wrong.
	if bare := f.verify(Given{}); bare.Standing() != finding.NotShown {
		t.Errorf("without signers and root: %s", bare.Standing())
	}
	if other := f.verify(Given{Signers: signers, Root: strings.Repeat("0", 64)}); other.Standing() != finding.Short {
		t.Errorf("with another root: %s", other.Standing())
	}
}

// Each row changes a sealed file in one way, of own making, and names the check that must be short and its words.
func TestWhatIsWrongIsFound(t *testing.T) {
	builder, surveyor, stranger := newKey(t), newKey(t), newKey(t)
	signers := signersOf(t, map[string]ssh.Signer{"builder": builder, "surveyor": surveyor})
	other := newFile(t, "HL74-013")
	other.sealed("builder", "B", "2026-04-20", builder)
	rows := []struct {
		where  string
		change func(f *file)
		rule   string
		says   string
	}{
		{"an altered byte", func(f *file) { f.write("weight.html", "<p>2051 kg") }, "files", "1 altered"},
		{"two files exchanged", func(f *file) {
			a, b := f.read("weight.html"), f.read("structure.html")
			f.write("weight.html", b)
			f.write("structure.html", a)
		}, "files", "2 altered"},
		{"a file added", func(f *file) { f.write("documents/more.pdf", "%PDF-") }, "files", "1 added"},
		{"a file taken away", func(f *file) { f.remove("documents/certificate.pdf") }, "files", "1 missing"},
		{"a link in place of a file", func(f *file) {
			f.remove("weight.html")
			if err := os.Symlink("structure.html", f.at("weight.html")); err != nil {
				f.t.Skip(err)
			}
		}, "files", "1 added"},
		{"a line of the list taken away", func(f *file) {
			_, rest, _ := strings.Cut(f.read(SumsName), "\n")
			f.write(SumsName, rest)
		}, "files", "1 added"},
		{"list and page altered together", func(f *file) {
			f.write("weight.html", "<p>2051 kg")
			f.write(SumsName, strings.ReplaceAll(f.read(SumsName), digest("<p>2050 kg"), digest("<p>2051 kg")))
		}, "root", "another hash"},
		{"lists, page and cover made anew", func(f *file) {
			f.write("weight.html", "<p>2051 kg")
			contents := strings.ReplaceAll(f.read(ContentsName), digest("<p>2050 kg"), digest("<p>2051 kg"))
			was, cover := digest(f.read(ContentsName)), f.read("index.html")
			f.write(ContentsName, contents)
			f.write("index.html", "<p>root "+digest(contents))
			sums := strings.NewReplacer(digest("<p>2050 kg"), digest("<p>2051 kg"), was, digest(contents), digest(cover), digest("<p>root "+digest(contents))).Replace(f.read(SumsName))
			f.write(SumsName, sums)
		}, "seal", "another state of the file"},
		{"the cover with another root", func(f *file) { f.write("index.html", "<p>root") }, "root", "the cover prints another root"},
		{"a statement changed", func(f *file) {
			f.write("seals/1-builder.txt", strings.Replace(f.read("seals/1-builder.txt"), "I stand", "I never stood", 1))
		}, "seal", "one of the two was changed"},
		{"a signature cut off", func(f *file) {
			f.write("seals/1-builder.txt.sig", f.read("seals/1-builder.txt.sig")[:120])
		}, "seal", "breaks off"},
		{"a signature taken away", func(f *file) { f.remove("seals/1-builder.txt.sig") }, "seal", "begun and not ended"},
		{"a statement taken away", func(f *file) { f.remove("seals/1-builder.txt") }, "seals", "only half of one"},
		{"a statement cut off", func(f *file) {
			f.write("seals/1-builder.txt", f.read("seals/1-builder.txt")[:200])
		}, "seal", "breaks off"},
		{"what a broken-off run leaves", func(f *file) { f.write("seals/3-builder.txt.part", "hullfile-seal: 1\n") }, "seals", "3-builder.txt.part"},
		{"the signatures exchanged", func(f *file) {
			a, b := f.read("seals/1-builder.txt.sig"), f.read("seals/2-surveyor.txt.sig")
			f.write("seals/1-builder.txt.sig", b)
			f.write("seals/2-surveyor.txt.sig", a)
		}, "seal", "one of the two was changed"},
		{"the first seal taken away whole", func(f *file) {
			f.remove("seals/1-builder.txt")
			f.remove("seals/1-builder.txt.sig")
		}, "seal", "not there any more"},
		{"the first seal made anew", func(f *file) {
			f.remove("seals/1-builder.txt")
			f.remove("seals/1-builder.txt.sig")
			st, err := ParseStatement([]byte(f.read("seals/2-surveyor.txt")))
			if err != nil {
				f.t.Fatal(err)
			}
			st.After, st.Role, st.Name, st.Key = nil, "builder", "Somebody", Fingerprint(builder.PublicKey())
			if err := put(f.root, "1-builder.txt", st.Text(), builder); err != nil {
				f.t.Fatal(err)
			}
		}, "seal", "set beside another 1-builder.txt"},
		{"a seal of another hull", func(f *file) {
			f.write("seals/1-builder.txt", other.read("seals/1-builder.txt"))
			f.write("seals/1-builder.txt.sig", other.read("seals/1-builder.txt.sig"))
		}, "seal", "hull HL74-013"},
		{"a key that nobody named", func(f *file) { f.sealed("builder", "S", "2026-06-01", stranger) }, "seal", "the key is not in signers"},
	}
	for _, row := range rows {
		t.Run(row.where, func(t *testing.T) {
			f := newFile(t, "HL74-012")
			f.sealed("builder", "B", "2026-04-20", builder)
			f.sealed("surveyor", "S", "2026-05-02", surveyor)
			if r := f.verify(Given{Signers: signers}); r.Standing() == finding.Short {
				t.Fatalf("the file is not whole to begin with: %+v", r.Checks)
			}
			row.change(f)
			r := f.verify(Given{Signers: signers})
			found := false
			for _, c := range r.Checks {
				found = found || c.Rule == row.rule && c.Standing == finding.Short && strings.Contains(c.Says, row.says)
			}
			if !found {
				t.Errorf("no check %q is short and says %q: %+v", row.rule, row.says, r.Checks)
			}
			if _, err := Set(context.Background(), f.root, Signing{Role: "builder", Name: "B", Date: "2026-07-01", Says: "Once more.", Key: newKey(t)}); err == nil && row.rule != "seal" {
				t.Error("the file was sealed as it is")
			}
		})
	}
}

func TestExchangedFilesAreNamed(t *testing.T) {
	f := newFile(t, "HL74-012")
	f.write("weight.html", "<p>6.0 mm")
	f.write("structure.html", "<p>2050 kg")
	f.write("renamed.toml", f.read("records/yard.toml"))
	f.remove("records/yard.toml")
	want := map[string]string{"weight.html": `belongs to "structure.html"`, "structure.html": `belongs to "weight.html"`, "renamed.toml": `belongs to "records/yard.toml"`, "records/yard.toml": "not in the folder"}
	troubles := f.verify(Given{}).Files.Troubles
	if len(troubles) != len(want) {
		t.Errorf("%d troubles, want %d", len(troubles), len(want))
	}
	for _, tr := range troubles {
		if !strings.Contains(tr.Says, want[tr.Path]) {
			t.Errorf("%s says %q, want %q", tr.Path, tr.Says, want[tr.Path])
		}
	}
}

func TestNamesThatHide(t *testing.T) {
	f := newFile(t, "HL74-012")
	names := []string{"new\nline.txt", "right\u202eleft.txt", "documents/con", "documents/nul.txt", " blank", "back\\slash", "\xff.txt"}
	for _, name := range names {
		f.write(name, "x")
	}
	r := f.verify(Given{})
	found := map[string]bool{}
	for _, tr := range r.Files.Troubles {
		found[tr.Path] = tr.Kind == Added
	}
	for _, name := range names {
		if !found[name] {
			t.Errorf("%q was not found", name)
		}
	}
}

func TestNothingOfThisIsATechnicalFile(t *testing.T) {
	dir := t.TempDir()
	if _, err := Verify(context.Background(), os.DirFS(dir), Given{}); !errors.Is(err, ErrNoFile) {
		t.Errorf("an empty folder: %v", err)
	}
	f := newFile(t, "HL74-012")
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Verify(ctx, f.root.FS(), Given{}); !errors.Is(err, context.Canceled) {
		t.Errorf("interrupted: %v", err)
	}
}

// A seal is refused before anything is written.
func TestSealIsRefused(t *testing.T) {
	key := newKey(t)
	good := Signing{Role: "builder", Name: "B", Date: "2026-04-20", Says: "Yes.", Key: key}
	rows := []struct {
		where string
		make  func(s *Signing)
		says  string
	}{
		{"a role that is none", func(s *Signing) { s.Role = "owner" }, "builder or surveyor"},
		{"no name", func(s *Signing) { s.Name = "" }, "the name"},
		{"a name of two lines", func(s *Signing) { s.Name = "B\nrole: surveyor" }, "the name"},
		{"a name that turns its direction", func(s *Signing) { s.Name = "B\u202eC" }, "the name"},
		{"no day", func(s *Signing) { s.Date = "20 April" }, "the date"},
		{"a day that is none", func(s *Signing) { s.Date = "2026-02-30" }, "the date"},
		{"before the issue", func(s *Signing) { s.Date = "2026-04-10" }, "before the issue"},
		{"no words", func(s *Signing) { s.Says = " " }, "the statement"},
		{"an escape sequence", func(s *Signing) { s.Says = "yes\x1b[2J" }, "the statement"},
		{"too long", func(s *Signing) { s.Says = strings.Repeat("a", 5000) }, "the statement"},
		{"no key", func(s *Signing) { s.Key = nil }, "fingerprint"},
	}
	for _, row := range rows {
		f := newFile(t, "HL74-012")
		s := good
		row.make(&s)
		_, err := Set(context.Background(), f.root, s)
		if err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s: %v, want %q", row.where, err, row.says)
		}
		if _, err := os.Stat(f.at(Folder)); err == nil {
			t.Errorf("%s: something was written", row.where)
		}
	}
	f := newFile(t, "HL74-012")
	f.sealed("builder", "B", "2026-04-20", key)
	if _, err := Set(context.Background(), f.root, good); err == nil || !strings.Contains(err.Error(), "already") {
		t.Errorf("sealed twice by one key: %v", err)
	}
	later := good
	later.Key, later.Date = newKey(t), "2026-04-19"
	if _, err := Set(context.Background(), f.root, later); err == nil || !strings.Contains(err.Error(), "below a later one") {
		t.Errorf("set below a later one: %v", err)
	}
}

func TestKeysAreRead(t *testing.T) {
	ask := func(word string) func() ([]byte, error) { return func() ([]byte, error) { return []byte(word), nil } }
	broken := func() ([]byte, error) { return nil, io.ErrUnexpectedEOF }
	public := ssh.MarshalAuthorizedKey(newKey(t).PublicKey())
	rows := []struct {
		where string
		text  []byte
		ask   func() ([]byte, error)
		says  string // empty: it is taken
	}{
		{"ed25519", keyFile(t, "ed25519", ""), nil, ""},
		{"RSA of 2048 bits", keyFile(t, "rsa", ""), nil, ""},
		{"RSA of 1024 bits", keyFile(t, "short", ""), nil, "1024 bits"},
		{"locked, right word", keyFile(t, "ed25519", "sesame"), ask("sesame"), ""},
		{"locked, wrong word", keyFile(t, "ed25519", "sesame"), ask("barley"), "does not open it"},
		{"locked, nobody to ask", keyFile(t, "ed25519", "sesame"), nil, "there is no terminal"},
		{"locked, the asking fails", keyFile(t, "ed25519", "sesame"), broken, "could not be read"},
		{"a public key", public, nil, "public one"},
		{"nothing", nil, nil, "it is empty"},
		{"half a key", keyFile(t, "ed25519", "")[:150], nil, "breaks off"},
		{"another paper", []byte("%PDF-1.4"), nil, "ssh-keygen -t ed25519"},
	}
	for _, row := range rows {
		_, err := ReadKey(row.text, row.ask)
		switch {
		case row.says == "" && err != nil:
			t.Errorf("%s: %v", row.where, err)
		case row.says != "" && (err == nil || !strings.Contains(err.Error(), row.says)):
			t.Errorf("%s: %v, want %q", row.where, err, row.says)
		}
	}
	if _, ok := ReadPublic(public); !ok {
		t.Error("a public key is not read")
	}
}
