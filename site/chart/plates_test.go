package chart

import (
	"strings"
	"testing"

	"hullfile/engine/capacity"
	"hullfile/engine/finding"
)

// sampleLabel is an invented plate: figures read off the boat, one that is only reckoned, one that is missing.
func sampleLabel(text string) capacity.Label {
	return capacity.Label{Key: "eu" + text, Title: "Builder's plate" + text, Why: "for information" + text, Fields: []capacity.Field{
		{Name: "design category" + text, Stated: "C" + text, Large: true, Source: "law" + text, Basis: finding.Read},
		{Name: "persons", Stated: "6", Large: true, Source: "law", Basis: finding.Read},
		{Name: "greatest load" + text, Reckoned: "1 993 lb (904 kg)", Large: true, Note: "without tanks" + text, Source: "law", Basis: finding.Read},
		{Name: "greatest power", Large: true, Source: "law", Basis: finding.Recalled},
		{Name: "motors", Stated: "125 hp (93 kW)", Large: true, Source: "law", Basis: finding.Recalled},
		{Name: "maker" + text, Reckoned: "A Yard with a Name that Takes more than One Line of a Plate on a Phone, Harbour Street 12" + text, Source: "law", Basis: finding.Read},
		{Name: "contact address", Source: "law", Basis: finding.Recalled},
	}}
}

func TestLabelsAreSound(t *testing.T) {
	for _, text := range []string{"", hostile} {
		f := Label(sampleLabel(text))
		sound(t, "label"+text, f)
		if strings.Contains(f.SVG, "<script") || strings.Contains(f.SVG, "<x ") {
			t.Error("a label lets markup through")
		}
	}
	f := Label(sampleLabel(""))
	for _, want := range []string{">C<", ">from the record<", ">not recorded<", "1 993 lb (904 kg)", "A Yard with a Name"} {
		if !strings.Contains(f.SVG, want) {
			t.Errorf("the label does not show %q", want)
		}
	}
	if !strings.Contains(f.Alt, "persons 6") || !strings.Contains(f.Alt, "greatest power not recorded") || len(f.Table) != 8 {
		t.Errorf("said %q, table of %d rows", f.Alt, len(f.Table))
	}
	if empty := Label(capacity.Label{Key: "x"}); !empty.Empty {
		t.Error("a label without fields is drawn")
	}
}

func BenchmarkLabel(b *testing.B) {
	l := sampleLabel("")
	for b.Loop() {
		Label(l)
	}
}
