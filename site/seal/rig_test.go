package seal

import (
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"crypto/rsa"
	"crypto/sha256"
	"encoding/hex"
	"encoding/pem"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"golang.org/x/crypto/ssh"
)

// file is a small technical file on disk, of own making.
type file struct {
	t    testing.TB
	dir  string
	root *os.Root
}

func digest(text string) string {
	h := sha256.Sum256([]byte(text))
	return hex.EncodeToString(h[:])
}

// newFile writes a technical file of a few pages, with its two lists.
func newFile(t testing.TB, number string) *file {
	t.Helper()
	f := &file{t: t, dir: t.TempDir()}
	texts := map[string]string{
		"weight.html": "<p>2050 kg", "structure.html": "<p>6.0 mm", "documents/certificate.pdf": "%PDF-", "records/yard.toml": "name = \"Yard\"\n",
		"results.json": fmt.Sprintf(`{"hull":{"number":%q,"issue":2,"date":"2026-04-11"},"version":"v1"}`, number),
	}
	f.list("contents.sha256", texts)
	texts["contents.sha256"] = f.read("contents.sha256")
	texts["index.html"] = "<p>root " + digest(texts["contents.sha256"])
	for name, text := range texts {
		f.write(name, text)
	}
	f.list("SHA256SUMS", texts)
	root, err := os.OpenRoot(f.dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	f.root = root
	return f
}

func (f *file) list(name string, texts map[string]string) {
	text := ""
	for _, path := range slices.Sorted(maps.Keys(texts)) {
		text += digest(texts[path]) + "  " + path + "\n"
	}
	f.write(name, text)
}

func (f *file) at(name string) string { return filepath.Join(f.dir, filepath.FromSlash(name)) }

func (f *file) write(name, text string) {
	f.t.Helper()
	if err := os.MkdirAll(filepath.Dir(f.at(name)), 0o755); err != nil {
		f.t.Fatal(err)
	}
	if err := os.WriteFile(f.at(name), []byte(text), 0o644); err != nil {
		f.t.Fatal(err)
	}
}

func (f *file) read(name string) string {
	f.t.Helper()
	text, err := os.ReadFile(f.at(name))
	if err != nil {
		f.t.Fatal(err)
	}
	return string(text)
}

func (f *file) remove(name string) {
	f.t.Helper()
	if err := os.Remove(f.at(name)); err != nil {
		f.t.Fatal(err)
	}
}

func (f *file) verify(given Given) *Report {
	f.t.Helper()
	r, err := Verify(context.Background(), f.root.FS(), given)
	if err != nil {
		f.t.Fatal(err)
	}
	return r
}

// sealed seals the file and gives the name of the statement.
func (f *file) sealed(role, name, date string, key ssh.Signer) string {
	f.t.Helper()
	at, err := Set(context.Background(), f.root, Signing{Role: role, Name: name, Date: date, Says: "I stand for it.\n\nAll of it.", Key: key})
	if err != nil {
		f.t.Fatal(err)
	}
	return at
}

// newKey makes a key for one test; none is ever written into the tree.
func newKey(t testing.TB) ssh.Signer {
	t.Helper()
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	signer, err := ssh.NewSignerFromKey(private)
	if err != nil {
		t.Fatal(err)
	}
	return signer
}

// keyFile gives a private key as ssh-keygen would write it, locked where a passphrase is given.
func keyFile(t testing.TB, kind, passphrase string) []byte {
	t.Helper()
	var private any
	var err error
	switch kind {
	case "ed25519":
		_, private, err = ed25519.GenerateKey(rand.Reader)
	case "rsa":
		private, err = rsa.GenerateKey(rand.Reader, 2048)
	case "short":
		private, err = rsa.GenerateKey(rand.Reader, 1024)
	}
	if err != nil {
		t.Fatal(err)
	}
	var block *pem.Block
	if passphrase == "" {
		block, err = ssh.MarshalPrivateKey(private, "test")
	} else {
		block, err = ssh.MarshalPrivateKeyWithPassphrase(private, "test", []byte(passphrase))
	}
	if err != nil {
		t.Fatal(err)
	}
	return pem.EncodeToMemory(block)
}

// signersOf is a list of signers with the keys in order of the names.
func signersOf(t testing.TB, keys map[string]ssh.Signer) *Signers {
	t.Helper()
	text := "# who may seal\n"
	for _, name := range slices.Sorted(maps.Keys(keys)) {
		text += SignersLine(name, keys[name].PublicKey()) + "\n"
	}
	list, err := ReadSigners("signers", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return list
}
