//go:build unix

package site

import (
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// A pipe in the place of what an earlier run remembered is not read: whoever opens one waits until somebody writes into it.
func TestRememberedPipeIsNotRead(t *testing.T) {
	dir := t.TempDir()
	if err := unix.Mkfifo(filepath.Join(dir, "HL74-012"), 0o600); err != nil {
		t.Skipf("no pipe here: %v", err)
	}
	if text, err := plainText(dir, "HL74-012"); err == nil {
		t.Errorf("a pipe is read: %q", text)
	}
}
