package main

import (
	"fmt"
	"os"
	"runtime/debug"
)

// release is the version that .ci/release builds; nothing else sets it.
var release string

// version is that of the release, else that of the module as it was built, or "development" from a working copy.
func version() string {
	if release != "" {
		return release
	}
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "development"
	}
	return info.Main.Version
}

// build tells two builds of one version apart, so that what a developer changes is written anew. It is never printed.
// Where the program cannot find itself, the version alone counts.
func build() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	return fmt.Sprintf("%d %d", info.Size(), info.ModTime().UnixNano())
}
