package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
)

func startCommand(d *desk) *cobra.Command {
	return &cobra.Command{
		Use:   "start FOLDER",
		Short: "Begin a yard folder with commented records to fill in.",
		Long: `Writes a yard folder with one hull. Its record, hulls/001/hull.toml, asks from top to bottom for what a builder ` +
			`knows first, in comments with examples: take the mark away from a line and write your own value. Lists stand in ` +
			`tables beside it, for a spreadsheet. After each step run hullfile check: its first lines say what is next.`,
		Annotations: ends("written", "", "nothing could be written, or the folder is not empty"),
		Example: `  hullfile start skerry
  hullfile check skerry`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse(cmd, fmt.Errorf("name the folder to begin"))
			}
			return atMost(1)(cmd, args)
		},
		RunE: func(_ *cobra.Command, args []string) error { return start(d, args[0]) },
	}
}

func start(d *desk, folder string) error {
	records, err := shippedRecords("start", "")
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("the yard folder could not be written: %w", err)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return fmt.Errorf("the yard folder could not be written: %w", err)
	}
	defer root.Close()
	if entries, err := fs.ReadDir(root.FS(), "."); err != nil || len(entries) > 0 {
		return fmt.Errorf("%q is not empty; name a new folder", folder)
	}
	if err := writeRecords(root, records); err != nil {
		return fmt.Errorf("the yard folder could not be written: %w", err)
	}
	for _, f := range records {
		d.out.line("wrote %s", filepath.Join(folder, filepath.FromSlash(f.name)))
	}
	d.out.paragraph("", "Write your own values, then run: hullfile check "+folder)
	return nil
}
