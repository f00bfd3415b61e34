package running

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/unit"
)

// words puts the claim, its limits and the hours at risk into sentences. Bounds are rounded down, so that no sentence
// says more than its number.
func (in *Input) words(r *Result) {
	c := &r.Claim
	if len(r.Rows) > 0 && r.AtRisk > slack && len(r.Looks) > 0 {
		c.Risk = fmt.Sprintf("%s h have been run since the last look; they are at risk and prove nothing yet", hours(r.AtRisk))
	}
	if !c.Has {
		return
	}
	found, how := in.outcome(r)
	ran, sure := fmt.Sprintf("%s, %s h run up to %s, %s", in.who(r), hours(c.Hours), lookWords(c.Boats), found), unit.Text(100*c.Confidence, 0)
	c.Says = fmt.Sprintf("%s%s. At %s %% confidence, and if the chance of a crack does not change with age, the mean time to a first crack is at least %s h",
		ran, how, sure, Down(c.MeanTime))
	c.Short = fmt.Sprintf("%s. At %s %% confidence that shows a mean time to a first crack of at least %s h%s", ran, sure, Down(c.MeanTime), r.notShown())
	c.But = in.but(r)
}

// notShown names the promises, in hours, that the hours do not show.
func (r *Result) notShown() string {
	var not []string
	for i := range r.Promises {
		if s, ok := r.Promises[i].At(1, confidence); ok && s.All < wanted {
			not = append(not, hours(r.Promises[i].Hours)+" h")
		}
	}
	if len(not) == 0 {
		return ""
	}
	return "; that a boat outlasts its warranty of " + strings.Join(not, " and ") + " is not shown"
}

func (in *Input) who(r *Result) string {
	if r.Claim.Boats == 1 {
		return "One boat"
	}
	return fmt.Sprintf("%d boats of the design together", r.Claim.Boats)
}

func lookWords(boats int) string {
	if boats == 1 {
		return "the last look that counts"
	}
	return "the last looks that count"
}

// outcome says what was found and, in brackets, how good the look was.
func (in *Input) outcome(r *Result) (found, quality string) {
	c := &r.Claim
	if c.Cracked > 0 && c.Boats == 1 {
		return "and then a crack", ""
	}
	if c.Cracked > 0 {
		return fmt.Sprintf("and %d of them cracked after that", c.Cracked), ""
	}
	own := r.Pool[0]
	if own.Why != "" || c.Boats > 1 || len(r.Looks) == 0 {
		return "no crack found at the places looked at", ""
	}
	last := r.Looks[len(r.Looks)-1].Record
	var how []string
	if last.Smallest.Set {
		how = append(how, fmt.Sprintf("one of %s mm would have been seen", unit.Plain(last.Smallest.V)))
	}
	if last.Share.Set && last.Share.V < 100 {
		how = append(how, fmt.Sprintf("over %s %% of the seam length there", unit.Plain(last.Share.V)))
	}
	if len(how) > 0 {
		quality = " (" + strings.Join(how, "; ") + ")"
	}
	return fmt.Sprintf("no crack found at the %s looked at", unit.Count(len(last.Places.V), "place", "places")), quality
}

// but says how far the claim falls short of each promise.
func (in *Input) but(r *Result) string {
	var parts []string
	for i := range r.Promises {
		p := &r.Promises[i]
		s, ok := p.At(1, confidence)
		if !p.Has || !ok {
			continue
		}
		years := unit.Plain(p.Record.Years.V)
		if s.All >= wanted {
			parts = append(parts, fmt.Sprintf("For the warranty of %s years on %s, %s h, it shows that at least %s %% of such boats run that long without a crack",
				years, p.Record.Part.V, hours(p.Hours), part(s.All)))
			continue
		}
		not := fmt.Sprintf("It does not show that a boat outlasts the warranty of %s years on %s, %s h: ", years, p.Record.Part.V, hours(p.Hours))
		if s.All < 0.001 {
			parts = append(parts, not+"of the part of such boats that run that long nothing is shown that could be told from nought")
			continue
		}
		parts = append(parts, not+fmt.Sprintf("all that is shown is that at least %s %% of such boats run that long without a crack", part(s.All)))
	}
	return strings.Join(parts, ". ")
}

func hours(v float64) string {
	if v >= 100 || v == math.Trunc(v) {
		return unit.Text(v, 0)
	}
	return unit.Text(v, 1)
}

// Down gives a lower bound in hours, rounded down: to tenths under ten hours, else to whole hours. The hair that is added
// first keeps a bound of 12 from being written as 11 for the last bit of its reckoning.
func Down(v float64) string {
	if v < 10 {
		return unit.Text(math.Floor(10*v+1e-9)/10, 1)
	}
	return unit.Text(math.Floor(v+1e-9), 0)
}

// part gives a part as percent, rounded down to a tenth.
func part(v float64) string { return unit.Text(math.Floor(1000*v+1e-9)/10, 1) }
