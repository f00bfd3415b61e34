// Hullfile makes the technical file of a boat from a yard's plain records: it reads, reckons, holds the records against
// each other, and writes a folder of linked pages that opens in any browser with no network.
//
// This package is the only place that prints and exits. One short file a verb; what the verbs share stands in
// screen.go (the terminal), desk.go (errors and progress) and yard.go (a yard read and reckoned).
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"hullfile/engine/crew"
	"hullfile/engine/finding"
)

// The three statuses with which the command ends.
const (
	statusSound    = 0 // nothing short or contradictory
	statusFindings = 1 // something is short or contradictory, or a published check is not reproduced
	statusFailed   = 2 // unreadable records, misuse, nothing could be written, or a fault of our own
)

// errFindings ends a verb that did its work and found something; the findings are already printed.
var errFindings = errors.New("findings")

// errTold ends a verb that failed and has already said why on standard output, as a machine text.
var errTold = errors.New("told")

func main() {
	spareLooking()
	ctx, stop := signal.NotifyContext(context.Background(), endings()...)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	status := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}

// endings are the signals that end the program in order. That of a terminal which closes is among them, so that nothing
// half made is left behind, unless whoever started the program said that it shall go on.
func endings() []os.Signal {
	all := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) {
		all = append(all, syscall.SIGHUP)
	}
	return all
}

// run carries out one command line and gives the status. It never panics: a fault of our own is told as such.
func run(ctx context.Context, args []string, out, errs io.Writer) (status int) {
	defer func() {
		if fault := recover(); fault != nil {
			where := string(debug.Stack())
			if f, inCrew := fault.(*crew.Fault); inCrew {
				fault, where = f.What, f.Where
			}
			fmt.Fprintf(errs, "hullfile: a fault of its own, not of your records: %v\n\n%s", fault, where)
			status = statusFailed
		}
	}()
	d := newDesk(out, errs)
	root := rootCommand(d)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if flushed := d.out.flush(); flushed != nil && (err == nil || errors.Is(err, errFindings)) {
		err = fmt.Errorf("the result could not be written: %w", flushed)
	}
	return d.end(err)
}

// end says what went wrong, where it has not been said yet, and gives the status.
func (d *desk) end(err error) int {
	var faults finding.Faults
	switch {
	case err == nil:
		return statusSound
	case errors.Is(err, errFindings):
		return statusFindings
	case errors.Is(err, errTold):
		return statusFailed
	case errors.Is(err, context.Canceled):
		d.say("interrupted; what was there before is still whole")
	case errors.As(err, &faults):
		d.faults(faults)
	default:
		d.say(err.Error())
	}
	return statusFailed
}
