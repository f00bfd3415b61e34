package main

import (
	"errors"

	"github.com/spf13/cobra"
)

func renderCommand(d *desk) *cobra.Command {
	out, part, print, every := "", "", false, false
	cmd := &cobra.Command{
		Use:   "render [YARD] -o FOLDER [HULL...]",
		Short: "Write the technical files of all hulls, or of those named.",
		Long: `Reads the records of a yard folder (this folder if none is named) and writes one technical file a hull and a register above ` +
			`them. A file that would come out as it lies there is left alone; the others are replaced at the end and in one go; after an ` +
			`error or an interruption the earlier output is still whole. The file of a hull that the yard no longer has is removed, ` +
			`unless somebody changed it. Only hulls whose records changed are read. A page that somebody changed in its place is written anew ` +
			`when its turn comes: each run looks at some thousand files of the output one by one, and of the others at their folders and ` +
			`lists; --every-file looks at all, and hullfile verify reads them. What they say about the boats is judged by hullfile check.`,
		Annotations: ends("the files were written, whatever they say about the boats", "", "the records cannot be read, misuse, or nothing could be written"),
		Example: `  hullfile render -o files                   this folder, all hulls
  hullfile render skerry -o files            the yard folder skerry
  hullfile render skerry -o files HL74-012   one hull of it
  hullfile render skerry -o part2 --part 2/3 a third; register joins the parts
  hullfile render skerry -o files --print    with the print edition of each file`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if out == "" {
				return misuse(cmd, errors.New("name the folder to write to with -o"))
			}
			root, err := openFolder(folderOf(args))
			if err != nil {
				return err
			}
			defer root.Close()
			r := rendering{root: root, print: print, every: every, part: part, named: args[min(1, len(args)):], shelf: &shelf{}}
			made, err := r.write(cmd.Context(), d, out)
			if err != nil {
				return err
			}
			d.out.rendered(made)
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "the `FOLDER` to write to")
	cmd.Flags().BoolVar(&print, "print", false, "write each file for paper too: print.html, and in volumes")
	cmd.Flags().BoolVar(&every, "every-file", false, "look at every file of the earlier output, not at folders and lists alone")
	cmd.Flags().StringVar(&part, "part", "", "only the hulls of part `I/N`, told apart by their numbers")
	return cmd
}
