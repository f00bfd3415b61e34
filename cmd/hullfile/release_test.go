package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestReleaseIsTheSameFromTwoFolders copies the sources to two folders, makes a release of one machine in each, and
// holds them against each other.
func TestReleaseIsTheSameFromTwoFolders(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("left out: two builds take long")
	}
	if runtime.GOOS != "linux" || runtime.GOARCH != "amd64" {
		t.Skip("left out: the release is made on linux/amd64")
	}
	var made []string
	for _, name := range []string{"here", "a folder/with another name"} {
		sources := filepath.Join(t.TempDir(), name)
		copySources(t, sources)
		out := filepath.Join(t.TempDir(), "release")
		cmd := exec.Command("bash", filepath.Join(sources, ".ci", "release"), "v0.1.2", out, "linux/amd64")
		if text, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		made = append(made, out)
	}
	a, err := treeOf(made[0])
	if err != nil {
		t.Fatal(err)
	}
	b, err := treeOf(made[1])
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"hullfile-v0.1.2-linux-amd64", "completions/hullfile.bash", "completions/hullfile.powershell", "SHA256SUMS", "BUILD.txt"} {
		if a[name] == "" {
			t.Errorf("the release lacks %s", name)
		}
	}
	if diff := differences(a, b); len(diff) > 0 {
		t.Errorf("two folders give different releases: %v", diff)
	}
	if err := checkSums(made[0]); err != nil {
		t.Error(err)
	}
	program := filepath.Join(made[0], "hullfile-v0.1.2-linux-amd64")
	if said, err := exec.Command(program, "--version").Output(); err != nil || string(said) != "hullfile v0.1.2\n" {
		t.Errorf("the program says it is %q: %v", said, err)
	}
	text, err := os.ReadFile(program)
	if err != nil {
		t.Fatal(err)
	}
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{moduleRoot(t), os.TempDir() + "/", strings.TrimSpace(string(goroot)) + "/src"} {
		if strings.Contains(string(text), path) {
			t.Errorf("the program holds the path %s of this machine", path)
		}
	}
}

// copySources copies what the module is made of.
func copySources(t *testing.T, to string) {
	t.Helper()
	eachFile(t, func(path string, text []byte) {
		name := filepath.Join(to, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, text, 0o644); err != nil {
			t.Fatal(err)
		}
	})
}

func TestReleaseAsksForAVersion(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("left out: bash is not there")
	}
	for _, word := range []string{"", "1.2.0", "v1", "v1.2.0; true"} {
		cmd := exec.Command("bash", filepath.Join(moduleRoot(t), ".ci", "release"), word, t.TempDir())
		if text, err := cmd.CombinedOutput(); err == nil || !strings.Contains(string(text), "name the version") {
			t.Errorf("version %q: %v %s", word, err, text)
		}
	}
}
