package main

import (
	"context"
	"path/filepath"

	"github.com/spf13/cobra"
)

func demoCommand(d *desk) *cobra.Command {
	folder := ""
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Write an invented yard and its technical files here, and say what to open.",
		Long: `Writes the records of an invented yard and the technical files of its hulls, and says what to open, what stands short, ` +
			`what contradicts and what is missing. A folder of an earlier demo is written anew; any other folder that is not empty, ` +
			`or a demo record that was changed by hand, is left alone.`,
		Annotations: ends("written; that hulls of the demo are short is on purpose", "", "nothing could be written"),
		Example: `  hullfile demo             to the folder hullfile-demo
  hullfile demo -o elsewhere`,
		Args: atMost(0),
		RunE: func(cmd *cobra.Command, _ []string) error { return demo(cmd.Context(), d, folder) },
	}
	cmd.Flags().StringVarP(&folder, "output", "o", "hullfile-demo", "the `FOLDER` to write")
	return cmd
}

// demo ends well although hulls of the demo yard are short and contradictory: they are so on purpose, and the verb was
// asked to write them, not to judge them.
func demo(ctx context.Context, d *desk, folder string) error {
	var s shelf
	s.begun() // read while the records are written
	if err := writeDemoYard(folder); err != nil {
		return err
	}
	yard, files := filepath.Join(folder, "yard"), filepath.Join(folder, "files")
	r, err := openYardBy(yard, &s)
	if err != nil {
		return err
	}
	defer r.close()
	r.keep = true // three hulls, written and then told
	made, err := r.render(ctx, d, files, nil)
	if err != nil {
		return err
	}
	for _, h := range r.dossiers(r.yard.Hulls) {
		d.out.brief(h)
	}
	d.out.paragraph("", "Yard, people and boats are invented, and what is wrong with them is so on purpose. The records are in "+yard+"; copy that folder, change a record and see what follows.")
	d.out.line("")
	d.out.paragraph("", "Open "+shown(made.Register)+" in a browser; it needs no network.") // last, where the eye is when it is done
	return nil
}
