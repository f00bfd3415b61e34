package main

import (
	"errors"

	"github.com/spf13/cobra"

	"hullfile/site"
)

func registerCommand(d *desk) *cobra.Command {
	out := ""
	cmd := &cobra.Command{
		Use:   "register FOLDER... -o FOLDER",
		Short: "Join parts that were rendered apart into one output with one register.",
		Long: `Takes the technical files from outputs that hullfile render wrote, each with --part, checks every file against the list of ` +
			`hashes of its hull, copies what does not lie in the folder yet, and writes the register of all. No records are needed. ` +
			`The result is the same as that of one rendering of all hulls. Two different files of one hull are refused.`,
		Annotations: ends("joined", "", "a part is not whole, misuse, or nothing could be written"),
		Example: `  hullfile register part1 part2 part3 -o files
  hullfile register files -o files     the register anew from what lies there`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if out == "" || len(args) == 0 {
				return misuse(cmd, errors.New("name the parts, and the folder to write to with -o"))
			}
			made, err := site.Register(cmd.Context(), site.Join{Parts: args, Out: out, Version: version()})
			if err != nil {
				return err
			}
			d.out.line("%s, %d copied", count(made.Hulls, "hull", "hulls"), made.Copied)
			d.out.line("the register: %s", shown(made.Register))
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "the `FOLDER` to write to")
	return cmd
}
