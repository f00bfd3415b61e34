package method

import (
	"reflect"
	"testing"
)

// A symbol that is followed comes out as when everything is reckoned, of every scope of every shipped sheet, also where
// values are missing; and what was used on the way can be gone through.
func TestFollowGivesWhatEvaluateGives(t *testing.T) {
	rows, left := 0, 0
	var over *Working // its room goes from question to question
	for _, sheet := range shippedSheets(t) {
		for _, sc := range sheet.Scopes {
			for skip := -1; skip < min(3, len(sc.Inputs)); skip++ {
				given := everything(sc, 7, 1, skip)
				whole := workedThrough(t, sheet, sc, given)
				for symbol := range sc.spelt {
					w, err := sheet.Follow(sc.Name, symbol, given, over)
					if err != nil {
						t.Fatal(err)
					}
					over = w
					rows++
					left += same(t, whole, w, symbol)
				}
			}
		}
	}
	if rows < 3000 || left < 3000 {
		t.Errorf("%d symbols were followed, %d results left out", rows, left)
	}
}

// same holds a symbol and all that it uses against the whole working, and counts what was not reckoned.
func same(t *testing.T, whole, w *Working, symbol string) (left int) {
	t.Helper()
	want, _ := whole.Get(symbol)
	got, ok := w.Get(symbol)
	if !ok || got.Value != want.Value || got.Word != want.Word || got.State != want.State || got.Why() != want.Why() || got.Rests != want.Rests ||
		got.Formula != want.Formula || !reflect.DeepEqual(got.Uses, want.Uses) || !reflect.DeepEqual(got.Lacks(), want.Lacks()) {
		t.Fatalf("%s, %s, %s: %+v, want %+v", w.Sheet.Name, w.Scope.Name, symbol, got, want)
	}
	for _, used := range got.Uses {
		same(t, whole, w, used)
	}
	return len(whole.Steps) - len(w.Steps)
}

func TestFollowSaysWhatIsNotThere(t *testing.T) {
	s := trial(t)
	if _, err := s.Follow("mast", "x", nil, nil); err == nil {
		t.Error("a scope that is not there was followed")
	}
	if _, err := s.Follow("craft", "k_2", with(boat(), "boat.speed_kn", num(25, "m")), nil); err == nil {
		t.Error("a speed in metres was taken")
	}
}
