package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"hullfile/site/seal"
)

func sealCommand(d *desk) *cobra.Command {
	var what seal.Signing
	keyFile := ""
	cmd := &cobra.Command{
		Use:   "seal FOLDER --key FILE --role ROLE --name NAME --date DAY --statement TEXT",
		Short: "Sign a technical file with an SSH key, as its builder or its surveyor.",
		Long: `Looks first whether the technical file of a hull is as its lists say. Then it writes a statement that names the hash of ` +
			`SHA256SUMS, the root, the role, the name, the day and your words, signs it, and sets both into the folder seals inside the file. ` +
			`Nothing else is changed. A second person seals beside the first, and the second statement names the hash of the first. ` +
			`With a public key the statement is written alone, and the line is printed by which ssh-keygen signs it: for keys on a ` +
			`token or in an agent. It prints the line by which a list of signers names the key.`,
		Annotations: ends("sealed", "", "the file is not as its lists say, misuse, or nothing could be written"),
		Example: `  hullfile seal files/HL74-012 --key ~/.ssh/yard --role builder \
      --name "Maren Tveit" --date 2026-08-08 \
      --statement "I built this boat as this file says."`,
		Args: atMost(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 || keyFile == "" {
				return misuse(cmd, errors.New("name the folder of the technical file, and the key with --key"))
			}
			return sealFile(cmd.Context(), d, args[0], keyFile, what)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&keyFile, "key", "", "the `FILE` with the private SSH key, or the public one of a key on a token")
	flags.StringVar(&what.Role, "role", "", "`ROLE` in which you sign: builder or surveyor")
	flags.StringVar(&what.Name, "name", "", "your `NAME` in full")
	flags.StringVar(&what.Date, "date", "", "the `DAY` on which you sign, 2026-08-08")
	flags.StringVar(&what.Says, "statement", "", "what you state, the `TEXT` in your own words")
	return cmd
}

func sealFile(ctx context.Context, d *desk, dir, keyFile string, what seal.Signing) error {
	key, err := readSealKey(d, keyFile, &what)
	if err != nil {
		return err
	}
	if _, err := os.Stat(dir); errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no technical file %q", dir)
	}
	root, err := openFolder(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	name, err := seal.Set(ctx, root, what)
	if err != nil {
		return fmt.Errorf("%q is not sealed: %w", dir, err)
	}
	at := seal.Folder + "/" + name
	if what.Key == nil {
		d.out.line("%s is written and not signed yet; sign it in %s:", at, dir)
		d.out.line("  ssh-keygen -Y sign -f %s -n %s %s", keyFile, seal.Namespace, at)
		return nil
	}
	d.out.line("%s and %s.sig are set into %s", at, at, dir)
	d.out.line("the line for a list of signers, to be handed over by another way than the file:")
	d.out.line("  %s", seal.SignersLine(what.Name, key))
	return nil
}
