//go:build unix

package preview

import (
	"net/http"
	"path/filepath"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

// A pipe in the output is not opened: whoever opens one waits until somebody writes into it.
func TestAPipeIsNotOpened(t *testing.T) {
	s := opened(t)
	if err := unix.Mkfifo(filepath.Join(s.out.Name(), "H 1", "pipe.txt"), 0o600); err != nil {
		t.Skipf("no pipe here: %v", err)
	}
	told := make(chan int, 1)
	go func() {
		got, _ := answer(s, "GET", "/H%201/pipe.txt")
		told <- got.StatusCode
	}()
	select {
	case got := <-told:
		if got != http.StatusNotFound {
			t.Errorf("a pipe gives %d", got)
		}
	case <-time.After(patience):
		t.Error("a pipe keeps whoever asks for it waiting")
	}
}
