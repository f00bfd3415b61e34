package main

import (
	"github.com/spf13/cobra"

	"hullfile/content"
	"hullfile/engine"
	"hullfile/engine/proof"
)

func proofCommand(d *desk) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "proof",
		Short: "Run the published check values through this calculator and print the table.",
		Long: `Runs published worked examples and tables through this calculator, on this machine, and prints what was printed, ` +
			`what came out and where the value stands in print. Ends with 1 where one is not reproduced.`,
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
		err = d.json(ref.Proofs)
	} else {
		d.out.proofs(ref.Proofs)
	}
	if err == nil && failed(ref.Proofs.Cases) > 0 {
		return errFindings
	}
	return err
}

func failed(cases []proof.Case) int {
	n := 0
	for _, c := range cases {
		if !c.Pass {
			n++
		}
	}
	return n
}
