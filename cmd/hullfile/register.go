package main

import (
	"errors"
	"slices"

	"github.com/spf13/cobra"

	"hullfile/site"
)

func registerCommand(d *desk) *cobra.Command {
	out, only := "", false
	cmd := &cobra.Command{
		Use:   "register FOLDER... -o FOLDER",
		Short: "Join parts that were rendered apart into one output with one register.",
		Long: `Takes the technical files from outputs that hullfile render wrote, each with --part, checks every file against the list of ` +
			`hashes of its hull, copies what does not lie in the folder yet, and writes the register of all. No records are needed. ` +
			`What lies there already gives way to the parts, unless it is sealed. ` +
			`The result is the same as that of one rendering of all hulls. Two parts that differ for one hull are refused. A hull of the yard ` +
			`that is in none of the parts is told, as far as they remember which hulls there are. A hull that lies in the folder and is in ` +
			`none of the parts stays, or goes with --only, unless it is sealed.`,
		Annotations: ends("joined", "joined, and a hull of the yard is in none of the parts", "a part is not whole, misuse, or nothing could be written"),
		Example: `  hullfile register part1 part2 part3 -o files
  hullfile register part1 part2 -o files --only   and nothing else stays there
  hullfile register files -o files     the register anew from what lies there`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if out == "" || len(args) == 0 {
				return misuse(cmd, errors.New("name the parts, and the folder to write to with -o"))
			}
			made, err := site.Register(cmd.Context(), site.Join{Parts: args, Out: out, Only: only, Version: version()})
			if err != nil {
				return err
			}
			return d.out.joined(made)
		},
	}
	cmd.Flags().BoolVar(&only, "only", false, "take hulls out of the folder that are in none of the parts")
	cmd.Flags().StringVarP(&out, "output", "o", "", "the `FOLDER` to write to")
	return cmd
}

// joined tells what was joined, and which hulls are missing in it.
func (s *screen) joined(made site.JoinReport) error {
	s.line("%s, %d copied", count(made.Hulls, "hull", "hulls"), made.Copied)
	s.line("the register: %s", shown(made.Register))
	for _, number := range made.Beside {
		if slices.Contains(made.Gone, number) {
			s.paragraph("", "the file of hull "+number+" was taken out: it is in none of the parts")
		} else {
			s.paragraph("", number+" lay there already and is in none of the parts; it stays")
		}
	}
	for _, number := range made.Absent {
		s.paragraph("", "hull "+number+" of the yard is in none of the parts: render the part that is missing, and join again")
	}
	if len(made.Absent) > 0 {
		return errFindings
	}
	return nil
}
