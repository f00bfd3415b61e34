//go:build !linux

package site

import "errors"

// trade would let two names change places in one step. This system has no such step.
func trade(a, b string) error { return errors.ErrUnsupported }
