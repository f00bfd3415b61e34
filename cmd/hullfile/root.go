package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// rootCommand is the whole command: its verbs, its help and its way of refusing.
func rootCommand(d *desk) *cobra.Command {
	root := &cobra.Command{
		Use:   "hullfile",
		Short: "Makes the technical file of a boat from a yard's plain records.",
		Example: `  hullfile demo                    write an invented yard and its files
  hullfile check skerry            say what is short, contradictory or missing
  hullfile render skerry -o files  write the technical files of the yard's hulls`,
		Version:                    version(),
		SilenceUsage:               true,
		SilenceErrors:              true,
		SuggestionsMinimumDistance: 2,
		Args:                       refuseVerb,
		RunE:                       func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
		CompletionOptions:          cobra.CompletionOptions{HiddenDefaultCmd: true},
	}
	root.SetOut(d.out.to)
	root.SetErr(d.errs)
	root.SetVersionTemplate("hullfile {{.Version}}\n")
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { help(d.out, cmd) })
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return misuse(cmd, err) })
	root.AddCommand(demoCommand(d), startCommand(d), checkCommand(d), traceCommand(d), renderCommand(d), registerCommand(d), sealCommand(d), verifyCommand(d), compareCommand(d), handoverCommand(d), previewCommand(d), proofCommand(d), schemaCommand(d))
	return root
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

// help prints what a command is for: examples first, because they are what is read.
func help(s *screen, cmd *cobra.Command) {
	about := cmd.Long
	if about == "" {
		about = cmd.Short
	}
	s.paragraph("", about)
	s.line("")
	if cmd.HasExample() {
		s.line("Examples:\n%s\n", cmd.Example)
	}
	use := cmd.UseLine()
	if cmd.HasAvailableSubCommands() {
		use = cmd.CommandPath() + " VERB"
	}
	s.line("Use: %s\n", strings.TrimSuffix(use, " [flags]"))
	if cmd.HasAvailableSubCommands() {
		s.line("Verbs:")
		for _, verb := range cmd.Commands() {
			if verb.IsAvailableCommand() {
				s.paragraph(fmt.Sprintf("  %-8s ", verb.Name()), verb.Short)
			}
		}
		s.line("\nEach verb has its own help: %s VERB --help", cmd.CommandPath())
		return
	}
	helpFlags(s, cmd.Flags())
}

func helpFlags(s *screen, flags *pflag.FlagSet) {
	s.line("Flags:")
	flags.VisitAll(func(f *pflag.Flag) {
		name, usage := pflag.UnquoteUsage(f)
		text := "    --" + f.Name
		if f.Shorthand != "" {
			text = "-" + f.Shorthand + ", --" + f.Name
		}
		if name != "" {
			text += " " + name
		}
		s.paragraph(fmt.Sprintf("  %-20s ", text), usage)
	})
}
