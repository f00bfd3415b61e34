package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"hullfile/engine/finding"
	"hullfile/site/seal"
)

// verifying is what was asked of verify.
type verifying struct {
	signers, root   string
	rebuild, asJSON bool
}

func verifyCommand(d *desk) *cobra.Command {
	var v verifying
	cmd := &cobra.Command{
		Use:   "verify FOLDER",
		Short: "Hold a technical file against its hashes, its seals and its own records.",
		Long: `Reads every file of the technical file of a hull (a folder, or the zip of one) and says which were altered, taken away or ` +
			`added, whether each seal is whole, of this state of the file, and by whom, and whether the root is the one you hold. With ` +
			`--rebuild it also makes the file anew from the records inside it and compares. What nobody brought is "not shown" and not wrong.`,
		Annotations: ends("nothing is wrong", "something is not as it was listed or signed", "it cannot be told, or misuse"),
		Example: `  hullfile verify files/HL74-012                      the files and the seals
  hullfile verify files/HL74-012 --signers signers    and whose keys they are
  hullfile verify files/HL74-012 --root 3f0c... --rebuild`,
		Args: atMost(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse(cmd, errors.New("name the folder of the technical file"))
			}
			return v.run(cmd.Context(), d, args[0])
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&v.signers, "signers", "", "the `FILE` that names who may sign, in the form of ssh-keygen")
	flags.StringVar(&v.root, "root", "", "the 64 `DIGITS` of the root that you hold, on paper or in a letter")
	flags.BoolVar(&v.rebuild, "rebuild", false, "make the file anew from the records inside it, and compare")
	flags.BoolVar(&v.asJSON, "json", false, "print one JSON document")
	return cmd
}

func (v *verifying) run(ctx context.Context, d *desk, path string) error {
	given, err := v.given()
	if err != nil {
		return err
	}
	from, closing, err := openFile(path)
	if err != nil {
		return err
	}
	defer closing()
	r, err := seal.Verify(ctx, from, given)
	if err != nil {
		return fmt.Errorf("%q: %w", path, err)
	}
	if v.rebuild {
		check, err := rebuilt(ctx, d, from, r)
		if err != nil {
			return err
		}
		r.Checks = append(r.Checks, check)
	}
	if v.asJSON {
		r.Files.Troubles, r.Seals = list(r.Files.Troubles), list(r.Seals)
		err = d.json(r)
	} else {
		d.out.verified(r)
	}
	if err == nil && r.Standing() == finding.Short {
		return errFindings
	}
	return err
}
