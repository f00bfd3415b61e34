package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// rootCommand is the whole command: its verbs, its help and its way of refusing.
func rootCommand(d *desk) *cobra.Command {
	root := &cobra.Command{
		Use:   "hullfile",
		Short: "Makes the technical file of a boat from a yard's plain records.",
		Example: `  hullfile demo                    write an invented yard and its files
  hullfile start skerry            begin the records of a yard of your own
  hullfile check skerry            say what is next, short or missing
  hullfile render skerry -o files  write the technical files of the yard's hulls`,
		Version:                    version(),
		SilenceUsage:               true,
		SilenceErrors:              true,
		SuggestionsMinimumDistance: 2,
		Args:                       refuseVerb,
		RunE:                       func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		CompletionOptions:          cobra.CompletionOptions{DisableDefaultCmd: true}, // ours speaks our words
	}
	root.SetOut(d.out.to)
	root.SetErr(d.errs)
	root.SetVersionTemplate("hullfile {{.Version}}\n")
	verbs := verbsInOrder(d)
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) {
		if cmd == root {
			helpAll(d.out, cmd, verbs)
			return
		}
		help(d.out, cmd)
	})
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return misuse(cmd, err) })
	for _, part := range verbs {
		root.AddCommand(part.verbs...)
	}
	return root
}

// verbPart is some verbs that are used at one time of a boat's life.
type verbPart struct {
	when  string
	verbs []*cobra.Command
}

// verbsInOrder gives all verbs in the order in which a yard comes to use them.
func verbsInOrder(d *desk) []verbPart {
	return []verbPart{
		{"To begin", []*cobra.Command{demoCommand(d), startCommand(d)}},
		{"While records are written", []*cobra.Command{keysCommand(d), checkCommand(d), previewCommand(d), traceCommand(d)}},
		{"The technical files", []*cobra.Command{renderCommand(d), registerCommand(d), sealCommand(d), verifyCommand(d), compareCommand(d), handoverCommand(d)}},
		{"About the program", []*cobra.Command{proofCommand(d), schemaCommand(d), completionCommand(d)}},
	}
}

// refuseVerb refuses a word that is not a verb and names the nearest ones.
func refuseVerb(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := "hullfile --help lists the verbs"
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		hint = "did you mean " + strings.Join(near, " or ") + "?"
	}
	return fmt.Errorf("there is no verb %q; %s", args[0], hint)
}

// misuse adds to a refusal where the right use stands.
func misuse(cmd *cobra.Command, err error) error {
	return fmt.Errorf("%w; %s --help shows how it is used", err, cmd.CommandPath())
}

// atMost takes up to n arguments, and refuses more by name.
func atMost(n int) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) <= n {
			return nil
		}
		return misuse(cmd, fmt.Errorf("%q is one word too many", args[n]))
	}
}
