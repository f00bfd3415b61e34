package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"hullfile/engine/record"
)

func keysCommand(d *desk) *cobra.Command {
	return &cobra.Command{
		Use:   "keys [WORD]",
		Short: "Say what may be written into the records, table by table.",
		Long: `Lists the tables of the records. With the name of a table it lists the keys that the table takes, with what each means, ` +
			`its unit, its range and the words that are allowed; with any other word it finds the keys that speak of it.`,
		Annotations: ends("printed", "", "nothing in the records goes by that word"),
		Example: `  hullfile keys            all tables
  hullfile keys panel      what [panel.KEY] takes, and the heads of panels.csv
  hullfile keys temper     the keys that speak of temper`,
		Args: atMost(1),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return tableNames(record.Reference()), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				d.out.tables(record.Reference())
				return nil
			}
			return keysOf(d.out, strings.Trim(args[0], "[] "))
		},
	}
}

// keysOf prints the tables of a name, or the keys that speak of a word.
func keysOf(s *screen, word string) error {
	all := record.Reference()
	named := slices.DeleteFunc(slices.Clone(all), func(t record.TableDoc) bool { return !answersTo(t, word) })
	if len(named) > 0 {
		for i, t := range named {
			if i > 0 {
				s.line("")
			}
			s.table(t)
		}
		return nil
	}
	found := 0
	for _, t := range all {
		found += s.keysAbout(t, strings.ToLower(word))
	}
	if found == 0 {
		return fmt.Errorf("no table and no key of the records goes by %q; hullfile keys lists the tables", word)
	}
	return nil
}

// answersTo reports whether a table is called so: by its heading, its last part, its file or its CSV table, runs.csv or
// runs.
func answersTo(t record.TableDoc, word string) bool {
	heading := strings.Trim(t.Heading, "[]")
	if rows, is := strings.CutSuffix(t.CSV, ".csv"); is && rows == word {
		return true
	}
	return slices.Contains([]string{heading, t.Key, t.CSV}, word) || heading == "" && word == strings.TrimSuffix(t.File, ".toml") ||
		strings.HasSuffix(t.Key, "."+word)
}

func tableNames(all []record.TableDoc) []string {
	var names []string
	for _, t := range all {
		if t.Key != "" && !slices.Contains(names, t.Key) {
			names = append(names, t.Key)
		}
	}
	return names
}
