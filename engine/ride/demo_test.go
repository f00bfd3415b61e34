package ride

import (
	"bytes"
	"flag"
	"math"
	"os"
	"strconv"
	"testing"
)

var update = flag.Bool("update", false, "write the invented record of the demo yard anew; its hash then stands wrong in the demo's hull.toml")

// demoRecord is where the demo yard keeps it.
const demoRecord = "../../content/demo/hulls/HL74-012/documents/ride-R1.csv"

// TestDemoRecordIsTheGenerators holds the record of the demo yard against its generator: it is invented, and made here.
func TestDemoRecordIsTheGenerators(t *testing.T) {
	made := invented()
	if *update {
		if err := os.WriteFile(demoRecord, made, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(demoRecord)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(made, kept) {
		t.Error("the demo's acceleration record is not what the generator makes; run the test with -update and put the new hash on record")
	}
	log, err := ReadCSV(bytes.NewReader(kept), Column{Name: "vertical_g", G: 1})
	if err != nil {
		t.Fatal(err)
	}
	p, err := found(Record{Rate: 500, Values: log.Values}, Standard())
	if err != nil {
		t.Fatal(err)
	}
	if top, _, ok := p.Highest(10); !ok || top < 1.5 || top > 3.5 || len(kept) > 150_000 {
		t.Errorf("highest tenth %g g of %d impacts in %d bytes: no longer the ride it is meant to be", top, len(p.Sizes), len(kept))
	}
}

// invented makes 50 s of a boat at 22 kn in a short head sea: an easy heave with an impact at almost every crest, the
// impacts spread by the exponential law, a little noise of the engines.
func invented() []byte {
	const rate, seconds = 500, 50
	chance := uint64(20260618)
	draw := func() float64 {
		chance = chance*6364136223846793005 + 1442695040888963407
		return (float64(chance>>40) + 0.5) / (1 << 24)
	}
	v := make([]float64, rate*seconds)
	for i := range v {
		at := float64(i) / rate
		v[i] = 0.16*math.Sin(2*math.Pi*at/0.92) + 0.05*math.Sin(2*math.Pi*31*at) + 0.02*(draw()-0.5)
	}
	for at := 0.4; at < seconds-0.6; at += 0.74 + 0.26*draw() {
		size, width := 0.34-0.78*math.Log(draw()), 0.13+0.05*draw()
		start, n := int(at*rate), int(width*rate)
		for k := 0; k < n; k++ {
			v[start+k] += size * math.Sin(math.Pi*float64(k)/float64(n))
		}
	}
	out := []byte("vertical_g\n")
	for _, x := range v {
		out = strconv.AppendFloat(out, math.Round(x*100)/100+0, 'f', 2, 64)
		out = append(out, '\n')
	}
	return out
}
