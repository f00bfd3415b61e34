package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// ends says in what cases a verb ends with the statuses 0, 1 and 2; an empty text where it never does.
func ends(zero, one, two string) map[string]string {
	return map[string]string{"0": zero, "1": one, "2": two}
}

// helpAll prints what the whole command is for, and its verbs in the order in which they are used.
func helpAll(s *screen, root *cobra.Command, parts []verbPart) {
	helpAbout(s, root)
	s.line("Use: %s VERB", root.CommandPath())
	for _, part := range parts {
		s.line("\n%s:", part.when)
		for _, verb := range part.verbs {
			s.paragraph(fmt.Sprintf("  %-10s ", verb.Name()), verb.Short)
		}
	}
	s.line("\nEach verb has its own help: %s VERB --help", root.CommandPath())
}

// help prints what a verb is for: what it does, examples, how it is used, and how it ends.
func help(s *screen, cmd *cobra.Command) {
	helpAbout(s, cmd)
	s.paragraph("Use: ", strings.TrimSuffix(cmd.UseLine(), " [flags]"))
	s.line("")
	helpFlags(s, cmd.Flags())
	if len(cmd.Annotations) == 0 {
		return
	}
	s.line("\nEnds with:")
	for _, status := range []string{"0", "1", "2"} {
		if says := cmd.Annotations[status]; says != "" {
			s.paragraph("  "+status+"  ", says)
		}
	}
}

// helpAbout prints what a command does, and examples.
func helpAbout(s *screen, cmd *cobra.Command) {
	about := cmd.Long
	if about == "" {
		about = cmd.Short
	}
	s.paragraph("", about)
	s.line("")
	if cmd.HasExample() {
		s.line("Examples:\n%s\n", cmd.Example)
	}
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
