package proof

import (
	"fmt"

	"hullfile/engine/identity"
)

// textFunction is a function of the calculator that reads a text; ok is false where the text does not say.
type textFunction func(text string) (v int, ok bool)

// textFunctionNamed finds one under the name by which proofs call it. Its only input is called number.
func textFunctionNamed(name string) (textFunction, bool) {
	switch name {
	case "hull number: month":
		return func(text string) (int, bool) {
			n := identity.Parse(text)
			month, ok := n.MonthOf()
			return int(month), ok
		}, true
	case "hull number: year":
		return func(text string) (int, bool) {
			n := identity.Parse(text)
			return n.YearOf()
		}, true
	case "hull number: model year":
		return func(text string) (int, bool) {
			n := identity.Parse(text)
			return n.ModelYear()
		}, true
	}
	return nil, false
}

// ofText calls it with the input of a case.
func (f textFunction) ofText(c *row) (outcome, error) {
	text, ok := c.Inputs["number"].(string)
	if !ok || len(c.Inputs) != 1 {
		return outcome{}, fmt.Errorf("the function takes one text, called number")
	}
	out := outcome{inputs: "number " + text}
	v, ok := f(text)
	if !ok {
		return out, fmt.Errorf("%s does not say", text)
	}
	out.got = float64(v)
	return out, nil
}
