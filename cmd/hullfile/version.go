package main

import "runtime/debug"

// version is that of the module as it was built, or "development" from a working copy.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "development"
	}
	return info.Main.Version
}
