package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"hullfile/engine/record"
)

func schemaCommand(d *desk) *cobra.Command {
	file := ""
	cmd := &cobra.Command{
		Use:   "schema [hull|yard|stock|procedures|requirements]",
		Short: "Print the JSON Schema of the records, for editors that check while you write.",
		Long: `Prints the JSON Schema (2020-12) of hull.toml and design.toml, or that of yard.toml, of stock/*.toml, ` +
			`procedures/*.toml or requirements/*.toml. An editor that knows TOML schemas shows each key with its meaning, unit and range while you write.`,
		Annotations: ends("printed or written", "", "there is no such schema, or the file could not be written"),
		Example: `  hullfile schema -o hull.schema.json
  hullfile schema yard -o yard.schema.json`,
		Args:      atMost(1),
		ValidArgs: []string{"hull", "yard", "stock", "procedures", "requirements"},
		RunE:      func(_ *cobra.Command, args []string) error { return schema(d, args, file) },
	}
	cmd.Flags().StringVarP(&file, "output", "o", "", "write to `FILE` instead of the terminal")
	return cmd
}

func schema(d *desk, args []string, file string) error {
	text, err := schemaOf(args)
	if err != nil {
		return err
	}
	if file == "" {
		d.out.raw(text)
		return nil
	}
	if err := os.WriteFile(file, text, 0o644); err != nil {
		return fmt.Errorf("the schema could not be written: %w", err)
	}
	return nil
}

func schemaOf(args []string) ([]byte, error) {
	switch {
	case len(args) == 0 || args[0] == "hull":
		return record.Schema()
	case args[0] == "yard":
		return record.YardSchema()
	case args[0] == "stock":
		return record.StockSchema()
	case args[0] == "procedures":
		return record.ProceduresSchema()
	case args[0] == "requirements":
		return record.ListSchema()
	}
	return nil, fmt.Errorf("there is no schema %q; write hull, yard, stock, procedures or requirements", args[0])
}
