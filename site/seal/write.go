package seal

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strconv"

	"golang.org/x/crypto/ssh"

	"hullfile/engine/document"
	"hullfile/engine/finding"
)

// Signing is what somebody says who seals a file.
type Signing struct {
	Role, Name, Date, Says string
	Key                    ssh.Signer // nil writes the statement alone, for ssh-keygen to sign
	Print                  string     // fingerprint of the key, where there is no Key
}

// Set seals a technical file. It refuses a file that is not as its lists say, and one whose seals are broken. The seal is
// set beside those that lie there; nothing else is written. It gives the name of the statement.
// The error says what is not whole, or what could not be written.
func Set(ctx context.Context, root *os.Root, what Signing) (name string, err error) {
	r, err := Verify(ctx, document.Plain(root.FS()), Given{})
	if err != nil {
		return "", err
	}
	for _, c := range r.Checks {
		if c.Standing == finding.Short {
			return "", fmt.Errorf("what is not whole cannot be sealed: %s: %s", c.Subject, c.Says)
		}
	}
	st := Statement{Hull: r.Hull, Issue: r.Issue, Issued: r.Issued, Sums: r.Sums, Root: r.Root, Role: what.Role, Name: what.Name, Date: what.Date, Key: what.Print, Says: what.Says}
	if what.Key != nil {
		st.Key = Fingerprint(what.Key.PublicKey())
	}
	place := 1
	for _, s := range r.Seals {
		if s.Statement.Key == st.Key && s.Statement.Role == st.Role {
			return "", fmt.Errorf("this key has sealed the file already as %s: %s", st.Role, inFolder(s.Name))
		}
		if s.Statement.Date > st.Date {
			return "", fmt.Errorf("%s is dated %s, after %s; a seal is not set below a later one", inFolder(s.Name), s.Statement.Date, st.Date)
		}
		st.After = append(st.After, Earlier{Name: s.Name, Hash: hashOf(s.text)})
		place = placeOf(s.Name) + 1
	}
	if err := st.Check(); err != nil {
		return "", err
	}
	name = strconv.Itoa(place) + "-" + st.Role + ".txt"
	return name, put(root, name, st.Text(), what.Key)
}

// put writes the signature first and then the statement, each beside its place, so that a run that breaks off leaves a
// signature of nothing, which verify tells, and never a statement that nobody signed.
func put(root *os.Root, name string, text []byte, key ssh.Signer) error {
	if err := root.Mkdir(Folder, 0o755); err != nil && !errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("the folder of seals could not be made: %w", err)
	}
	if key != nil {
		armour, err := sign(text, key)
		if err != nil {
			return err
		}
		if err := place(root, signatureOf(name), armour); err != nil {
			return err
		}
	}
	return place(root, name, text)
}

// place writes a file that is not there yet.
func place(root *os.Root, name string, text []byte) error {
	to, part := path.Join(Folder, name), path.Join(Folder, name+".part")
	if _, err := root.Lstat(to); err == nil {
		return fmt.Errorf("%s is there already", to)
	}
	if err := root.WriteFile(part, text, 0o644); err != nil {
		return fmt.Errorf("the seal could not be written: %w", errors.Join(err, root.Remove(part)))
	}
	if err := root.Rename(part, to); err != nil {
		return fmt.Errorf("the seal could not be written: %w", errors.Join(err, root.Remove(part)))
	}
	return nil
}
