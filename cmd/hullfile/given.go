package main

import (
	"errors"
	"fmt"
	"os"
	"regexp"

	"hullfile/site/seal"
)

// rootDigits is the form in which a cover prints the root.
var rootDigits = regexp.MustCompile(`^[0-9a-fA-F]{64}$`)

// given reads what the person brings to hold a file against.
func (v *verifying) given() (given seal.Given, err error) {
	if v.root != "" && !rootDigits.MatchString(v.root) {
		return given, errors.New("the root is not 64 hexadecimal digits; the cover prints it")
	}
	given.Root = v.root
	if v.signers == "" {
		return given, nil
	}
	text, err := os.ReadFile(v.signers)
	if err != nil {
		return given, fmt.Errorf("the list of signers cannot be read: %w", err)
	}
	given.Signers, err = seal.ReadSigners(v.signers, text)
	return given, err
}
