package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// What a shell offers for "hullfile ren" with nothing but the shell and the script: no package of completions beside it. Of
// zsh, which asks its own editor, only that the script is taken.
func TestShellsComplete(t *testing.T) {
	t.Parallel()
	rows := []struct {
		shell, want string
		args        []string
	}{
		{"bash", "render", []string{"--norc", "--noprofile", "-c", `source "$1" && COMP_WORDS=(hullfile ren) COMP_CWORD=1 COMP_LINE="hullfile ren" COMP_POINT=12 COMP_TYPE=9
			__start_hullfile hullfile ren hullfile && echo "${COMPREPLY[@]}"`, "test"}},
		{"fish", "render", []string{"--no-config", "-c", `source $argv[1]; complete -C "hullfile ren"`}},
		{"zsh", "_hullfile", []string{"-f", "-c", `autoload -U compinit; compinit -u -D; source "$1" && print "${_comps[hullfile]}"`, "test"}},
	}
	for _, r := range rows {
		t.Run(r.shell, func(t *testing.T) {
			if _, err := exec.LookPath(r.shell); err != nil {
				t.Skipf("left out: there is no %s here", r.shell)
			}
			script, err := exec.Command("hullfile", "completion", r.shell).Output()
			if err != nil {
				t.Fatal(err)
			}
			name := filepath.Join(t.TempDir(), "completion")
			if err := os.WriteFile(name, script, 0o644); err != nil {
				t.Fatal(err)
			}
			cmd := exec.Command(r.shell, append(r.args, name)...)
			cmd.Env = append(os.Environ(), "HOME="+t.TempDir())
			text, err := cmd.CombinedOutput()
			if err != nil || !strings.Contains(string(text), r.want) || strings.Contains(string(text), "not found") {
				t.Errorf("%v: %s", err, text)
			}
		})
	}
}
