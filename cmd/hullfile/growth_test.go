package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

var growthSizes = flag.String("growth", "", "numbers of records of one kind, of which TestGrowth prints the time, the memory and the size")
var growthProgram = flag.String("growth-program", "", "")
var growthOnly = flag.String("growth-only", "", "")

func TestGrowth(t *testing.T) {
	for _, n := range sizes(t, *growthSizes) {
		for _, g := range growths {
			if !strings.Contains(g.what, *growthOnly) {
				continue
			}
			yard := grownYard(t, g, n)
			out := filepath.Join(t.TempDir(), "out")
			ctx, stop := context.WithTimeout(context.Background(), 60*time.Second)
			cmd := exec.CommandContext(ctx, *growthProgram, "render", yard, "-o", out)
			var said bytes.Buffer
			cmd.Stdout, cmd.Stderr = &said, &said
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			most := mostOf(cmd.Process)
			err := cmd.Wait()
			stop()
			peak := most()
			files, pages, size := 0, 0, int64(0)
			biggest, name := int64(0), ""
			if _, e := os.Stat(out); e == nil {
				for f, s := range filesIn(t, out) {
					files++
					size += s
					if filepath.Ext(f) == ".html" {
						pages++
						if s > biggest {
							biggest, name = s, f
						}
					}
				}
			}
			fmt.Printf("%-30s %6d  user %6.2f sys %5.2f peak %5d MB pages %6d files %6d %6.1f MB biggest %5.2f MB %s\n", g.what, n, cmd.ProcessState.UserTime().Seconds(), cmd.ProcessState.SystemTime().Seconds(), peak>>20, pages, files, float64(size)/1e6, float64(biggest)/1e6, strings.TrimPrefix(name, out))
			if err != nil {
				s := said.String()
				if len(s) > 400 {
					s = s[:400]
				}
				fmt.Printf("   %v: %s\n", err, s)
			}
			os.RemoveAll(out)
			os.RemoveAll(yard)
		}
	}
}
