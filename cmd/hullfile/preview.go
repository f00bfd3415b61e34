package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

func previewCommand(d *desk) *cobra.Command {
	port := 0
	cmd := &cobra.Command{
		Use:   "preview [YARD]",
		Short: "Show the technical files in a browser on this machine, made again as records are saved.",
		Long: `Makes the technical files of a yard folder (this folder if none is named) in a folder of its own, shows them at an ` +
			`address that only this machine can reach and that is told at once, and makes them again whenever a record is saved; a page that is open ` +
			`loads itself anew. Records that cannot be read are told on the page and here, and the last good pages stay. ` +
			`Ends with Ctrl-C and leaves nothing behind.`,
		Annotations: ends("ended by Ctrl-C", "", "the yard folder or the port cannot be used"),
		Example: `  hullfile preview                     this folder
  hullfile preview skerry              the yard folder skerry
  hullfile preview skerry --port 8074  the same address each time`,
		Args: atMost(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if port < 0 || port > 65535 {
				return misuse(cmd, fmt.Errorf("there is no port %d; 0 takes one that is free, 65535 is the highest", port))
			}
			p, err := openPreview(d, folderOf(args), port)
			if err != nil {
				return err
			}
			defer p.close()
			return p.run(cmd.Context())
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "the `PORT` on this machine; 0 takes one that is free")
	return cmd
}
