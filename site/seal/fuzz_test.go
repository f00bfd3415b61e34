package seal

import (
	"bytes"
	"context"
	"testing"
)

// What a reader takes, it writes again byte for byte.
func FuzzStatement(f *testing.F) {
	st := Statement{Hull: "HL74-012", Issue: 2, Issued: "2026-04-11", Sums: digest("a"), Root: digest("b"), Role: "builder", Name: "B", Date: "2026-04-20", Key: "SHA256:abc",
		After: []Earlier{{Name: "1-builder.txt", Hash: digest("c")}}, Says: "Yes.\n\nAll."}
	f.Add(st.Text())
	f.Add([]byte("hullfile-seal: 1\n\nx\n"))
	f.Add([]byte("\n\n\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		got, err := ParseStatement(text)
		if err == nil && !bytes.Equal(got.Text(), text) {
			t.Errorf("%q is taken and written as %q", text, got.Text())
		}
	})
}

func FuzzSigners(f *testing.F) {
	f.Add([]byte("maren namespaces=\"hullfile\" ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIDmfIO2n6hlWqRBqBGWyWvTGuKsl5I1hTMUBWKCAHq0e x\n# x\n\n\"a b\" x"))
	f.Fuzz(func(t *testing.T, text []byte) {
		if list, err := ReadSigners("signers", text); err == nil && len(list.all) == 0 {
			t.Error("a list of nobody is taken")
		}
	})
}

func FuzzSums(f *testing.F) {
	f.Add([]byte(digest("a") + "  a\n" + digest("b") + "  b/c.html\n"))
	f.Add([]byte(digest("a") + "  ../a"))
	f.Fuzz(func(t *testing.T, text []byte) {
		list, wrong := ReadSums(text)
		var again bytes.Buffer
		for _, l := range list {
			again.WriteString(l.Hash + "  " + l.Path + "\n")
		}
		if len(wrong) == 0 && !bytes.Equal(again.Bytes(), text) {
			t.Errorf("%q is taken for good and reads as %q", text, again.Bytes())
		}
	})
}

func FuzzSignature(f *testing.F) {
	key := newKey(f)
	statement := []byte("statement")
	armour, err := sign(statement, key)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(statement, armour)
	f.Add(statement, []byte("-----BEGIN SSH SIGNATURE-----\nAAAA\n-----END SSH SIGNATURE-----\n"))
	f.Fuzz(func(t *testing.T, text, sig []byte) {
		by, err := signedBy(text, sig)
		if err == nil && bytes.Equal(by.Marshal(), key.PublicKey().Marshal()) && !bytes.Equal(text, statement) {
			t.Errorf("a signature of another text is taken for one of %q", text)
		}
	})
}

// A zip of any bytes is refused, or is held against its list like any folder.
func FuzzZip(f *testing.F) {
	f.Add(zipOf(f, "H/SHA256SUMS", digest("x")+"  a.txt\n", "H/a.txt", "x", "H/results.json", `{"hull":{"number":"H"}}`, "H/seals/1-builder.txt", "x"))
	f.Add(zipOf(f, "../a", "x"))
	f.Fuzz(func(t *testing.T, text []byte) {
		from, err := OpenZip(bytes.NewReader(text), int64(len(text)))
		if err != nil {
			return
		}
		r, err := Verify(context.Background(), from, Given{})
		if err == nil && (len(r.Checks) < 3 || r.Sums == "") {
			t.Errorf("a zip is verified by %d checks", len(r.Checks))
		}
	})
}
