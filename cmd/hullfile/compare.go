package main

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"hullfile/engine/compare"
	"hullfile/site"
)

func compareCommand(d *desk) *cobra.Command {
	yard, page, asJSON, all := "", "", false, false
	cmd := &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "Say what changed between two issues of a file, two hulls, or a hull and its design.",
		Long: `Holds two technical files against each other, folders or zips: which records, results, standings, findings and documents ` +
			`changed, by how much, grouped by what a surveyor must look at again. With --yard, OLD and NEW are numbers of hulls or names ` +
			`of designs in that yard folder, and nothing needs to be rendered.`,
		Annotations: ends("compared, whatever changed", "", "a file cannot be read, or misuse"),
		Example: `  hullfile compare issue-3/HL74-012 files/HL74-012      two issues of a file
  hullfile compare --yard skerry HL74-012 HL74-013      two hulls
  hullfile compare --yard skerry HL74 HL74-012 --page c a hull and its design,
                                                        as a page in folder c`,
		Args: atMost(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) != 2 {
				return misuse(cmd, errors.New("name an old and a new file"))
			}
			c, err := compareFiles(cmd.Context(), d, args, yard, page)
			switch {
			case err != nil:
				return err
			case asJSON:
				return d.json(c)
			}
			d.out.compared(&c, all)
			return nil
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&yard, "yard", "", "the yard `FOLDER` whose hulls or designs are compared")
	flags.StringVar(&page, "page", "", "write the comparison as a page into this new `FOLDER`")
	flags.BoolVar(&all, "all", false, "print each change, however many there are")
	flags.BoolVar(&asJSON, "json", false, "print one JSON document")
	return cmd
}

// compareFiles compares two sides, and writes the page where one is asked for.
func compareFiles(ctx context.Context, d *desk, names []string, yard, page string) (compare.Comparison, error) {
	read := readSide
	if yard != "" {
		read = func(name string) (*compare.Side, error) { return yardSide(yard, name) }
	}
	var sides [2]*compare.Side
	for i, name := range names {
		var err error
		if sides[i], err = read(name); err != nil {
			return compare.Comparison{}, err
		}
	}
	c := compare.Between(sides[0], sides[1])
	if page == "" {
		return c, nil
	}
	at, err := site.Compared(ctx, &c, page, version())
	if err == nil {
		d.say("the page: " + shown(at))
	}
	return c, err
}
