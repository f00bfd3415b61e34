package main

import "runtime/debug"

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
