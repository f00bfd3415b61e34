package main

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"hullfile/engine/finding"
)

// handing is what was asked of handover.
type handing struct{ whom, out string }

func handoverCommand(d *desk) *cobra.Command {
	var h handing
	cmd := &cobra.Command{
		Use:   "handover [YARD] HULL -o FILE.zip",
		Short: "Pack what the owner or the surveyor gets into one zip.",
		Long: `Packs the technical file of a hull for the surveyor, or the owner's book alone for the owner, with a text that says what to ` +
			`open, how to print and how to prove it. HULL is the number of a hull of the yard folder (this folder if none is named), ` +
			`which is then rendered for it, or the folder of a technical file, whose seals go with it. A file that is not as its lists say ` +
			`is refused. The same file gives the same zip, byte for byte.`,
		Annotations: ends("packed", "", "the file is not as its lists say, misuse, or nothing could be written"),
		Example: `  hullfile handover skerry HL74-012 -o owner.zip         the owner's book
  hullfile handover files/HL74-012 --for surveyor -o HL74-012.zip
                                                         the sealed file`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse(cmd, errors.New("name a hull, or the folder of a technical file"))
			}
			return atMost(2)(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if h.out == "" {
				return misuse(cmd, errors.New("name the zip to write with -o"))
			}
			if !slices.Contains([]string{"owner", "surveyor"}, h.whom) {
				return misuse(cmd, fmt.Errorf("--for takes owner or surveyor, not %q", h.whom))
			}
			return h.run(cmd.Context(), d, args)
		},
	}
	cmd.Flags().StringVar(&h.whom, "for", "owner", "for `WHOM`: owner or surveyor")
	cmd.Flags().StringVarP(&h.out, "output", "o", "", "the `FILE` to write")
	return cmd
}

func (h *handing) run(ctx context.Context, d *desk, args []string) error {
	dir, done, err := fileFor(ctx, d, args)
	if err != nil {
		return err
	}
	defer done()
	packed, err := h.pack(ctx, dir)
	if err != nil {
		return err
	}
	d.out.line("%s: %s, %.1f MB", shown(packed.path), count(packed.entries, "file", "files"), float64(packed.bytes)/1e6)
	d.out.line("for the %s, of %s", h.whom, packed.of)
	if packed.stands != finding.Met {
		d.out.paragraph("", fmt.Sprintf("The file of this boat stands as %s. Settle with the owner, in writing, what is open before the boat goes; what of it touches strength, load and floating stands on the first page of the owner's book.", packed.stands))
	}
	if h.whom == "surveyor" && packed.seals == 0 {
		d.out.paragraph("", "Nobody has sealed it; hullfile seal signs a technical file before it is handed over.")
	}
	return nil
}
