package finding

import (
	"errors"
	"fmt"
	"testing"
)

func TestCountSaysWhereTheFaultsAre(t *testing.T) {
	own, shipped := Fault{Place: Place{File: "yard.toml"}}, Fault{Place: Place{File: "a.toml"}, Shipped: true}
	for _, row := range []struct {
		all  Faults
		want string
	}{
		{Faults{own}, "1 fault in the records"},
		{Faults{own, own}, "2 faults in the records"},
		{Faults{shipped}, "1 fault in what comes with the program, not in the records"},
		{Faults{own, own, shipped}, "2 faults in the records and 1 fault in what comes with the program"},
	} {
		if got := row.all.Count(); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}

func TestShippedNamesTheFolderOnce(t *testing.T) {
	faults := Faults{{Place: Place{File: "alloys/a.toml", Line: 3}, Says: "no"}}
	err := Shipped(fmt.Errorf("tables: %w", Shipped(faults, "content")), "content")
	if err.Error() != "content/alloys/a.toml:3: no" || faults[0].Shipped {
		t.Errorf("%v; the faults that were given: %+v", err, faults)
	}
	other := errors.New("not to be read")
	if Shipped(other, "content") != other || Shipped(nil, "content") != nil {
		t.Error("another error is not given back as it is")
	}
}
