package main

import (
	"fmt"
	"os"
	"runtime"

	"golang.org/x/crypto/ssh"
	"golang.org/x/term"

	"hullfile/site/seal"
)

// readSealKey reads the key, private or public.
func readSealKey(d *desk, name string, what *seal.Signing) (ssh.PublicKey, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, fmt.Errorf("the key cannot be read: %w", err)
	}
	if key, ok := seal.ReadPublic(text); ok {
		what.Print = seal.Fingerprint(key)
		return key, nil
	}
	if what.Key, err = seal.ReadKey(text, d.passphrase(name)); err != nil {
		return nil, fmt.Errorf("the key %q: %w", name, err)
	}
	if openToOthers(name) {
		fmt.Fprintf(d.errs, "the key %s may be read by others on this machine; chmod 600 keeps it yours\n", clean(name))
	}
	return what.Key.PublicKey(), nil
}

// openToOthers reports whether somebody else than the owner may use a file. Windows says that in another way, which is not asked.
func openToOthers(name string) bool {
	info, err := os.Stat(name)
	return err == nil && runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0
}

// passphrase asks for the passphrase of a key where a person sits at a terminal.
func (d *desk) passphrase(name string) func() ([]byte, error) {
	in := int(os.Stdin.Fd())
	if !term.IsTerminal(in) {
		return nil
	}
	return func() ([]byte, error) {
		fmt.Fprintf(d.errs, "passphrase of %s: ", clean(name))
		defer fmt.Fprintln(d.errs)
		return term.ReadPassword(in)
	}
}
