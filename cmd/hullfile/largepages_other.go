//go:build !linux

package main

// largePages does nothing where the system does not let a program choose how memory is handed out.
func largePages() {}
