package main

import (
	"github.com/spf13/cobra"

	"hullfile/content"
	"hullfile/engine"
)

func proofCommand(d *desk) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "proof",
		Short: "Run the published check values through this calculator and print the table.",
		Long: `Runs published worked examples and tables through this calculator, on this machine, and prints what was printed, ` +
			`what came out and where the value stands in print.`,
		Annotations: ends("all are reproduced", "one is not reproduced", "misuse"),
		Example: `  hullfile proof         the table
  hullfile proof --json  the same for a machine`,
		Args: atMost(0),
		RunE: func(*cobra.Command, []string) error { return prove(d, asJSON) },
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON document")
	return cmd
}

func prove(d *desk, asJSON bool) error {
	ref, err := engine.NewReference(content.Files, nil)
	if err != nil {
		return err
	}
	if asJSON {
		err = d.json(*ref.Proofs())
	} else {
		d.out.proofs(*ref.Proofs())
	}
	if err == nil && len(ref.Proofs().Failed()) > 0 {
		return errFindings
	}
	return err
}
