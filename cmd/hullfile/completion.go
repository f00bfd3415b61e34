package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

func completionCommand(d *desk) *cobra.Command {
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "Print a script by which a shell completes verbs and flags.",
		Long: `Prints a script by which a shell completes verbs and flags when you press Tab. SHELL is bash, zsh, fish or ` +
			`powershell. Write it into a file, and let the file that your shell starts with read it.`,
		Annotations: ends("printed", "", "there is no script for this shell"),
		Example: `  hullfile completion bash > ~/.hullfile.bash
      then add to ~/.bashrc:  source ~/.hullfile.bash
  hullfile completion zsh > ~/.hullfile.zsh
      then add to ~/.zshrc:   autoload -U compinit; compinit
                              source ~/.hullfile.zsh
  hullfile completion fish > ~/.config/fish/completions/hullfile.fish
  hullfile completion powershell > hullfile.ps1
      then add to $PROFILE:   . PATH\hullfile.ps1`,
		ValidArgs: []string{"bash", "zsh", "fish", "powershell"},
		Args:      atMost(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return misuse(cmd, fmt.Errorf("name the shell: bash, zsh, fish or powershell"))
			}
			return completion(cmd.Root(), args[0], d.out.to)
		},
	}
}

func completion(root *cobra.Command, shell string, to io.Writer) error {
	switch shell {
	case "bash":
		return bashCompletion(root, to)
	case "zsh":
		return root.GenZshCompletion(to)
	case "fish":
		return root.GenFishCompletion(to, true)
	case "powershell":
		return root.GenPowerShellCompletionWithDesc(to)
	}
	return fmt.Errorf("there is no script for the shell %q; write bash, zsh, fish or powershell", shell)
}

// What the library's script for bash asks of a package that many machines do not have, Macs among them, and what stands in
// for it there: the word before the cursor and those around it, as bash itself parts them.
const (
	askedWords = `    _get_comp_words_by_ref "$@" cur prev words cword
`
	ownWords = `    if declare -F _get_comp_words_by_ref >/dev/null; then
        _get_comp_words_by_ref "$@" cur prev words cword
    else
        cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD - 1]} words=("${COMP_WORDS[@]}") cword=$COMP_CWORD
    fi
`
)

func bashCompletion(root *cobra.Command, to io.Writer) error {
	var script bytes.Buffer
	if err := root.GenBashCompletionV2(&script, true); err != nil {
		return err
	}
	if !bytes.Contains(script.Bytes(), []byte(askedWords)) {
		return errors.New("the library's script for bash is not the one that this was written for")
	}
	_, err := to.Write(bytes.Replace(script.Bytes(), []byte(askedWords), []byte(ownWords), 1))
	return err
}
