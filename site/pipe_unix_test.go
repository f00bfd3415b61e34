//go:build unix

package site

import (
	"errors"
	"io/fs"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// A pipe in the place of what an earlier run remembered is not read: whoever opens one waits until somebody writes into it.
func TestRememberedPipeIsNotRead(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "HL74-012")
	if err := unix.Mkfifo(pipe, 0o600); err != nil {
		t.Skipf("no pipe here: %v", err)
	}
	if _, err := plainText(pipe); !errors.Is(err, fs.ErrInvalid) {
		t.Errorf("a pipe is read: %v", err)
	}
}
