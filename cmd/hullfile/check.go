package main

import (
	"errors"

	"github.com/spf13/cobra"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func checkCommand(d *desk) *cobra.Command {
	asJSON := false
	cmd := &cobra.Command{
		Use:   "check [YARD] [HULL...]",
		Short: "Read a yard folder, reckon every hull, and say what is short, contradictory or missing.",
		Long: `Reads the records of a yard folder (this folder if none is named), reckons every hull, or those named, and prints its standing and ` +
			`its findings, each with the file and line to mend. The first lines say the one thing to do next, by this order: principal data that are ` +
			`missing; frames and stringers, where plates are written; what is too weak or does not float; what contradicts; ` +
			`what else is short; the first part of the file that is not begun; what is missing; what is doubtful. Writes nothing.`,
		Annotations: ends("nothing is short or contradictory; gaps and doubts are told", "something is short or contradictory", "the records cannot be read as they stand, or misuse"),
		Example: `  hullfile check                this folder
  hullfile check skerry         the yard folder skerry
  hullfile check skerry 014     one hull of it
  hullfile check skerry --json  the same for a machine`,
		RunE: func(_ *cobra.Command, args []string) error {
			return check(d, folderOf(args), args[min(1, len(args)):], asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "print one JSON document with hulls, checks, findings, assumptions and faults")
	return cmd
}

func check(d *desk, folder string, named []string, asJSON bool) error {
	r, err := openYard(folder)
	var hulls []*record.Hull
	if err == nil {
		defer r.close()
		hulls, err = r.choose(named)
	}
	if err != nil && asJSON {
		return errors.Join(d.machineFailure(err), errTold)
	}
	if err != nil {
		return err
	}
	return d.checked(r.dossiers(hulls), r.yardFindings(), asJSON)
}

// checked tells what was found, and gives errFindings where something is wrong.
func (d *desk) checked(hulls []*engine.Dossier, yard []finding.Finding, asJSON bool) error {
	var err error
	if asJSON {
		err = d.machineCheck(hulls, yard)
	} else {
		d.out.report(hulls, yard)
	}
	if err == nil && anythingWrong(hulls, yard) {
		return errFindings
	}
	return err
}
