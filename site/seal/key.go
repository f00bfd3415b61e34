package seal

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/hiddeco/sshsig"
	"golang.org/x/crypto/ssh"
)

// leastRSA is the least length of an RSA key in bits that is taken, as in the present versions of OpenSSH (recalled).
const leastRSA = 2048

// ReadKey reads a private key in the form of OpenSSH or PEM. ask is called where it is locked by a passphrase; it may be
// nil. Errors say what the file is instead, and never hold any part of it.
func ReadKey(text []byte, ask func() ([]byte, error)) (ssh.Signer, error) {
	signer, err := ssh.ParsePrivateKey(text)
	var locked *ssh.PassphraseMissingError
	if errors.As(err, &locked) {
		if signer, err = unlock(text, ask); err != nil {
			return nil, err
		}
	}
	if err != nil {
		return nil, fmt.Errorf("it is no private SSH key%s", insteadOf(text))
	}
	return signer, mayCount(signer.PublicKey())
}

func unlock(text []byte, ask func() ([]byte, error)) (ssh.Signer, error) {
	if ask == nil {
		return nil, errors.New("it is locked by a passphrase, and there is no terminal to ask for it; sign with ssh-keygen instead")
	}
	phrase, err := ask()
	if err != nil {
		return nil, fmt.Errorf("the passphrase could not be read: %w", err)
	}
	signer, err := ssh.ParsePrivateKeyWithPassphrase(text, phrase)
	if err != nil {
		return nil, errors.New("the passphrase does not open it")
	}
	return signer, nil
}

// insteadOf says what a file is that is not a private key, where that can be told.
func insteadOf(text []byte) string {
	if _, _, _, _, err := ssh.ParseAuthorizedKey(text); err == nil {
		return ": it is a public one; name the file without .pub"
	}
	switch {
	case len(bytes.TrimSpace(text)) == 0:
		return ": it is empty"
	case bytes.Contains(text, []byte("PRIVATE KEY")):
		return ": it looks like one, and breaks off or was changed"
	}
	return "; ssh-keygen -t ed25519 -f FILE makes one"
}

// kinds are the keys whose signatures count. Keys on a token (sk-) sign by ssh-keygen alone; they are verified here.
func kinds() []string {
	return []string{ssh.KeyAlgoED25519, ssh.KeyAlgoECDSA256, ssh.KeyAlgoECDSA384, ssh.KeyAlgoECDSA521, ssh.KeyAlgoRSA, ssh.KeyAlgoSKED25519, ssh.KeyAlgoSKECDSA256}
}

// mayCount refuses a kind of key that is not trusted any more, and one that is too short.
func mayCount(key ssh.PublicKey) error {
	for _, kind := range kinds() {
		if key.Type() != kind {
			continue
		}
		if bits := rsaBits(key); bits > 0 && bits < leastRSA {
			return fmt.Errorf("an RSA key of %d bits does not count; %d are the least", bits, leastRSA)
		}
		return nil
	}
	return fmt.Errorf("a key of the kind %s does not count; use ed25519", key.Type())
}

// Fingerprint names a key as ssh-keygen -l does.
func Fingerprint(key ssh.PublicKey) string { return ssh.FingerprintSHA256(key) }

// SignersLine gives the line by which a list of signers names a key. The principal is taken from the name.
func SignersLine(name string, key ssh.PublicKey) string {
	return principalOf(name) + ` namespaces="` + Namespace + `" ` + strings.TrimSpace(string(ssh.MarshalAuthorizedKey(key)))
}

// principalOf makes one word of a name, e.g. maren-tveit.
func principalOf(name string) string {
	word := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '.' || r == '@' {
			return r
		}
		return '-'
	}, strings.ToLower(name))
	if word = strings.Trim(word, "-"); word == "" {
		return "signer"
	}
	return word
}

// sign gives the signature of a statement as ssh-keygen -Y sign writes it.
func sign(statement []byte, key ssh.Signer) ([]byte, error) {
	sig, err := sshsig.Sign(bytes.NewReader(statement), key, sshsig.HashSHA512, Namespace)
	if err != nil {
		return nil, fmt.Errorf("the statement could not be signed: %w", err)
	}
	return sshsig.Armor(sig), nil
}

// mostSignature is the greatest length of a signature in bytes; one of the longest keys takes a tenth of it.
const mostSignature = 64 << 10

// signedBy gives the key by which a statement was signed, or says why the signature is none of it.
func signedBy(statement, armour []byte) (ssh.PublicKey, error) {
	if len(armour) > mostSignature {
		return nil, errors.New("the signature is too long to be one")
	}
	if !bytes.HasPrefix(armour, []byte("-----BEGIN "+sshsig.PEMType+"-----\n")) {
		return nil, errors.New("what stands in its place is no SSH signature")
	}
	sig, err := sshsig.Unarmor(armour)
	if err != nil || sig.Signature == nil {
		return nil, errors.New("the signature breaks off or was changed")
	}
	if sig.Namespace != Namespace {
		return nil, fmt.Errorf("the signature was made for %q, not for %q", sig.Namespace, Namespace)
	}
	if err := mayCount(sig.PublicKey); err != nil {
		return nil, err
	}
	if err := sshsig.Verify(bytes.NewReader(statement), sig, sig.PublicKey, sig.HashAlgorithm, Namespace); err != nil {
		return nil, errors.New("the signature is not one of this statement: one of the two was changed or exchanged")
	}
	return sig.PublicKey, nil
}

// ReadPublic reads a public key in the form of one line.
func ReadPublic(text []byte) (ssh.PublicKey, bool) {
	key, _, _, rest, err := ssh.ParseAuthorizedKey(text)
	return key, err == nil && len(bytes.TrimSpace(rest)) == 0 && mayCount(key) == nil
}
