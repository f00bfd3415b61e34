package results

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"hullfile/engine/finding"
)

// What appendJSON writes is what encoding/json writes of the same.
func TestResultsAreWrittenAsTheLibraryDoes(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		writtenAlike(t, anyObject(chance, 0))
	}
	writtenAlike(t, object(nil))
	writtenAlike(t, object{{"b", 0}, {"a", 1}, {"c", 2}, {"a", 3}, {"b", 4}, {"a", 5}})
	for _, n := range []float64{0, math.Copysign(0, -1), 1, -1, 0.1, 10, 9.9999999996, 99.999999999, 1e-5, 9.9999999999e-6, 1e-6, 1e-7, 1e20, 9.99999999999e19, 1e21, 123456789012, math.Pi, -1234.5, 0.00012345678912, math.Inf(1), math.NaN()} {
		writtenAlike(t, object{{"n", full(n)}})
	}
}

// hostile is a text that does harm where it is not written as a text.
const hostile = `"'><xss y=z>&amp;<!-- ]]></script> javascript:alert(1) \22 */ {{.}} {# ` + "\u202e"

func FuzzResults(f *testing.F) {
	f.Add(hostile, 1.5)
	f.Add("\x00\x1f\b\f\n\r\t\\\"\x7f\xff\u2028\u2029<&>", -1e-300)
	f.Fuzz(func(t *testing.T, text string, n float64) {
		writtenAlike(t, object{{text, text}, {text + "x", finding.Standing(text)}, {text + "y", full(n)}, {text + "z", []string{text}}})
	})
}

// writtenAlike writes an object both ways.
func writtenAlike(t *testing.T, o object) {
	t.Helper()
	want, err := json.MarshalIndent(asMap(o), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	got, err := appendJSON(nil, o, 0)
	if err != nil || string(got) != string(want) {
		t.Fatalf("%s, %v\nwant %s", got, err, want)
	}
}

// asMap gives what encoding/json writes as an object.
func asMap(v any) any {
	switch v := v.(type) {
	case object:
		out := map[string]any{}
		for _, m := range v {
			out[m.key] = asMap(m.value)
		}
		return out
	case []object:
		if v == nil {
			return nil
		}
		out := []any{}
		for _, o := range v {
			out = append(out, asMap(o))
		}
		return out
	}
	return v
}

func anyObject(chance *rand.Rand, depth int) object {
	var o object
	for _, key := range []string{"b", "a", "ø", "<", "a_b", "ab"}[:chance.IntN(7)] {
		o.add(key, anyValue(chance, depth))
	}
	return o
}

func anyValue(chance *rand.Rand, depth int) any {
	kinds := []func() any{
		func() any { return hostile },
		func() any { return full((chance.Float64() - 0.5) * math.Pow(10, float64(chance.IntN(60)-30))) },
		func() any { return chance.IntN(9) - 4 },
		func() any { return chance.IntN(2) == 0 },
		func() any { return [][]string{nil, {}, {"x", "y"}}[chance.IntN(3)] },
		func() any { return finding.Met },
		func() any { return map[string]int{"k": 1, "a": 2} },
		func() any { return []full{1.5, full(math.NaN())} },
		func() any { return anyObject(chance, depth+1) },
		func() any { return [][]object{nil, {}, {anyObject(chance, depth+1), nil}}[chance.IntN(3)] },
	}
	if depth > 3 {
		kinds = kinds[:8]
	}
	return kinds[chance.IntN(len(kinds))]()
}
