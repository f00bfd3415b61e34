package engine

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path"
	"strings"
	"testing"

	"hullfile/engine/record"
)

// misprinted is the lot that one paper of the demo names otherwise than the stock: planted, see testdata/demo-planted.toml.
var misprinted = map[string]string{"5K0231": "5K0213"}

// TestCertificatesOfTheDemo holds the plate certificates of the demo against the lots: a surveyor reads the same figures, with
// the same decimals, on paper and in the records. With HULLFILE_UPDATE=1 the papers are written anew; their hashes are then
// to be put into the records.
func TestCertificatesOfTheDemo(t *testing.T) {
	yard, _, _ := demo(t)
	lots := map[string]*record.Lot{}
	for i := range yard.Stock.Lots {
		lots[yard.Stock.Lots[i].Certificate.V] = &yard.Stock.Lots[i]
	}
	papers := 0
	for _, h := range yard.Hulls {
		for i := range h.Documents {
			d := &h.Documents[i]
			lot := lots[d.Number.V]
			if d.Kind.V != "material certificate" || lot == nil {
				continue
			}
			file := path.Join(contentFolder, "demo/hulls", h.Number, "documents", d.File.V)
			want := certificate(lot)
			if os.Getenv("HULLFILE_UPDATE") == "1" {
				if _, err := os.Stat(file); err == nil {
					if err := os.WriteFile(file, want, 0o644); err != nil {
						t.Fatal(err)
					}
				}
			}
			got, err := os.ReadFile(file)
			if os.IsNotExist(err) {
				continue // a paper that is named and not there is a gap of the demo
			}
			if err != nil {
				t.Fatal(err)
			}
			papers++
			if !bytes.Equal(got, want) {
				t.Errorf("%s does not print what lot %s says", file, lot.ID)
			}
			sum := sha256.Sum256(got)
			if same := hex.EncodeToString(sum[:]) == d.SHA256.V; same == (misprinted[lot.ID] != "") {
				t.Errorf("%s: the hash %x is on record: %t", file, sum, same)
			}
		}
	}
	if papers < 6 {
		t.Errorf("only %d certificates were read", papers)
	}
}

// certificate prints the paper of a lot as a PDF of one page.
func certificate(l *record.Lot) []byte {
	lot := l.ID
	if other := misprinted[lot]; other != "" {
		lot = other
	}
	alloy, temper, _ := strings.Cut(l.Alloy.V, "-")
	row := func(name, value string) string { return fmt.Sprintf("%-30s%s", name, value) }
	lines := []string{
		row("Certificate no.", l.Certificate.V), row("Day", l.Certified.V.ISO()), row("Works", l.Maker.V), row("Kind, EN 10204", l.Type.V), "",
		row("Product", l.Kind.V+", EN AW-"+alloy+", temper "+temper), row("Product standard", l.Standard.V+":"+l.Edition.V), row("Thickness", l.Thickness.Text+" mm"),
		row("Pieces", fmt.Sprintf("%d of %s x %s mm", l.Pieces.V, l.Width.Text, l.Length.Text)), row("Cast", l.Cast.V), row("Lot", lot), "",
		"Composition of the cast, mass per cent; aluminium the rest",
		fmt.Sprintf("  %-7s%-7s%-7s%-7s%-7s%-7s%-7s%-7s", "Si", "Fe", "Cu", "Mn", "Mg", "Cr", "Zn", "Ti"),
		fmt.Sprintf("  %-7s%-7s%-7s%-7s%-7s%-7s%-7s%-7s", l.Si.Text, l.Fe.Text, l.Cu.Text, l.Mn.Text, l.Mg.Text, l.Cr.Text, l.Zn.Text, l.Ti.Text), "",
		"Tests of the delivered lot",
		row("  Tensile strength", l.Tensile.Text+" N/mm2"), row("  0.2 % proof strength", l.Yield.Text+" N/mm2"), row("  Elongation "+l.Gauge.V, l.Elongation.Text+" %"),
		row("  Mass loss, ASTM G67-"+l.G67Edition.V, l.G67.Text+" mg/cm2, nitric acid "+l.G67Acid.V+" %"), row("  Exfoliation, ASTM G66-"+l.G66Edition.V, l.G66.V), "",
		"Marked on every piece: cast, lot, alloy, temper, thickness.",
		"Signed: inspector of the works, apart from production.",
	}
	return onePage("Plate certificate "+l.Certificate.V, lines)
}

// onePage writes lines of text as a PDF that says of itself that it is invented.
func onePage(title string, lines []string) []byte {
	escape := strings.NewReplacer("\\", "\\\\", "(", "\\(", ")", "\\)")
	var text strings.Builder
	text.WriteString("BT\n/F2 9 Tf\n0.45 0.1 0.1 rg\n56 800 Td\n(INVENTED FOR DEMONSTRATION. No such yard, works, boat or person exists.) Tj\n0 g\n/F2 15 Tf\n0 -34 Td\n")
	fmt.Fprintf(&text, "(%s) Tj\n/F1 10 Tf\n0 -12 Td\n", escape.Replace(title))
	for _, line := range lines {
		fmt.Fprintf(&text, "0 -15 Td\n(%s) Tj\n", escape.Replace(strings.TrimRight(line, " ")))
	}
	text.WriteString("ET\n0.5 w\n56 782 m\n539 782 l\nS\n")
	objects := []string{
		"<< /Type /Catalog /Pages 2 0 R /Lang (en) >>",
		"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
		"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Resources << /Font << /F1 4 0 R /F2 5 0 R >> >> /Contents 6 0 R >>",
		"<< /Type /Font /Subtype /Type1 /BaseFont /Courier /Encoding /WinAnsiEncoding >>",
		"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica-Bold /Encoding /WinAnsiEncoding >>",
		fmt.Sprintf("<< /Length %d >>\nstream\n%sendstream", text.Len(), text.String()),
		fmt.Sprintf("<< /Title (%s, invented for demonstration) >>", escape.Replace(title)),
	}
	var b bytes.Buffer
	b.WriteString("%PDF-1.4\n%\xe2\xe3\xcf\xd3\n")
	var at []int
	for i, o := range objects {
		at = append(at, b.Len())
		fmt.Fprintf(&b, "%d 0 obj\n%s\nendobj\n", i+1, o)
	}
	start := b.Len()
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, one := range at {
		fmt.Fprintf(&b, "%010d 00000 n \n", one)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R /Info 7 0 R >>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
	return b.Bytes()
}
