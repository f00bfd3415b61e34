package main

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"text/tabwriter"
	"time"
)

// measured is one run of the program as the system saw it, with what it wrote.
type measured struct {
	what         string
	n            int // hulls
	took         time.Duration
	user, system time.Duration // on all processors together, which other work on the machine changes less; system is mostly the disk's
	peak         int64         // most memory at once, bytes
	pages, files int
	each         int // files of one hull
	bytes        int64
	copied       time.Duration // to copy all of the output, file by file
	hashed       time.Duration // to read and hash it
}

// measuredAs fills the times of a run that ended.
func (m *measured) measuredAs(ended *os.ProcessState) {
	m.user, m.system = ended.UserTime(), ended.SystemTime()
}

// mostOf asks the system again and again for the most memory that a program held since it began, until it ends. What the
// system says of one that ended counts the test too, out of which it was started.
func mostOf(p *os.Process) (most func() int64) {
	last := make(chan int64, 1)
	end := make(chan bool)
	go func() {
		var most int64
		for {
			most = max(most, highest(p.Pid))
			select {
			case <-end:
				last <- most
				return
			case <-time.After(2 * time.Millisecond):
			}
		}
	}()
	return func() int64 {
		close(end)
		return <-last
	}
}

// highest is the most memory that a process held, bytes; nought where it has ended.
func highest(pid int) int64 {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	for line := range strings.Lines(string(text)) {
		var kb int64
		if _, err := fmt.Sscanf(line, "VmHWM: %d kB", &kb); err == nil {
			return kb << 10
		}
	}
	return 0
}

// tableOf sets the rows as a table. What fleets need a hull stands beside what they need together, and their memory beside
// that of the smallest fleet of their kind.
func tableOf(rows []measured) string {
	var out strings.Builder
	w := tabwriter.NewWriter(&out, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "what\ttime\tuser\tsystem\tuser a hull\tsystem a hull\tmost memory\tof the smallest\tpages\tfiles\tsize\tcopying\thashing\ttimes copying\t")
	smallest := map[string]int64{}
	for i := range rows {
		kind := strings.TrimLeft(rows[i].what, "0123456789")
		if smallest[kind] == 0 {
			smallest[kind] = rows[i].peak
		}
		fmt.Fprintln(w, rows[i].line(smallest[kind]))
	}
	w.Flush()
	return out.String()
}

func (m *measured) line(smallest int64) string {
	if m.peak == 0 {
		return fmt.Sprintf("%s\t%.0f ms\t%.0f ms\t%.0f ms", m.what, float64(m.took)/1e6, float64(m.user)/1e6, float64(m.system)/1e6) + strings.Repeat("\t", 11)
	}
	ms := func(d time.Duration) string { return fmt.Sprintf("%.0f ms", float64(d)/1e6) }
	mb := func(n int64) string { return fmt.Sprintf("%.1f MB", float64(n)/1e6) }
	cells := []string{m.what, ms(m.took), ms(m.user), ms(m.system)}
	if m.n > 0 {
		a := func(d time.Duration) string { return fmt.Sprintf("%.2f ms", float64(d)/1e6/float64(m.n)) }
		cells = append(cells, a(m.user), a(m.system), mb(m.peak), fmt.Sprintf("%.2f", float64(m.peak)/float64(smallest)))
	} else {
		cells = append(cells, "", "", mb(m.peak), "")
	}
	if m.files > 0 {
		cells = append(cells, fmt.Sprint(m.pages), fmt.Sprint(m.files), mb(m.bytes), ms(m.copied), ms(m.hashed), fmt.Sprintf("%.1f", float64(m.took)/float64(m.copied)))
	} else {
		cells = append(cells, "", "", "", "", "", "")
	}
	return strings.Join(cells, "\t") + "\t"
}

// machine names what was measured on.
func machine(t *testing.T, dir string) string {
	t.Helper()
	return fmt.Sprintf("%s, %d processors, %s/%s, %s; output on %s", processor(), runtime.NumCPU(), runtime.GOOS, runtime.GOARCH, runtime.Version(), diskOf(t, dir))
}

// diskOf names the file system of a folder.
func diskOf(t *testing.T, dir string) string {
	t.Helper()
	var is syscall.Statfs_t
	if err := syscall.Statfs(dir, &is); err != nil {
		t.Fatal(err)
	}
	names := map[int64]string{0x01021994: "tmpfs (memory)", 0xef53: "ext4", 0x58465342: "xfs", 0x9123683e: "btrfs", 0x794c7630: "overlayfs"}
	if name := names[int64(is.Type)]; name != "" {
		return name
	}
	return fmt.Sprintf("file system %#x", is.Type)
}

// free is the room that a folder's disk has, bytes.
func free(t *testing.T, dir string) int64 {
	t.Helper()
	var is syscall.Statfs_t
	if err := syscall.Statfs(dir, &is); err != nil {
		t.Fatal(err)
	}
	return int64(is.Bavail) * is.Bsize
}

// processor names the machine.
func processor() string {
	text, err := os.ReadFile("/proc/cpuinfo")
	if err != nil {
		return "unknown processor"
	}
	for line := range strings.Lines(string(text)) {
		if key, value, _ := strings.Cut(line, ":"); strings.TrimSpace(key) == "model name" {
			return strings.TrimSpace(value)
		}
	}
	return "unknown processor"
}
