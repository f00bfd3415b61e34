package beam

import "math"

// equations is a symmetric set K u = p, kept row by row from the first value that is not nought to the diagonal.
type equations struct {
	first []int       // column of the first value of each row
	row   [][]float64 // row[i][j-first[i]]; after factor the lower part of L D Lᵀ, with D on the diagonal
}

func newEquations(first []int) *equations {
	total := 0
	for i, f := range first {
		total += i - f + 1
	}
	e := &equations{first: first, row: make([][]float64, len(first))}
	all := make([]float64, total)
	for i, f := range first {
		n := i - f + 1
		e.row[i], all = all[:n:n], all[n:]
	}
	return e
}

// add adds to one value of the lower part; i is not below j.
func (e *equations) add(i, j int, v float64) { e.row[i][j-e.first[i]] += v }

// freedom is the part of a diagonal that may be left by elimination before a row counts as held by nothing. What
// rounding leaves of a free one is some 1e-16; the softest real structure that the bounds allow keeps far more.
const freedom = 1e-12

// factor turns K into L D Lᵀ. Where a row is held by nothing it asks idle with that row: true goes on with the row held,
// false ends, and the row is given back. -1 is success.
func (e *equations) factor(idle func(i int) bool) int {
	for i, row := range e.row {
		f := e.first[i]
		for j := f; j < i; j++ {
			from := max(f, e.first[j])
			a, b := row[from-f:j-f], e.row[j][from-e.first[j]:j-e.first[j]]
			sum := row[j-f]
			for k, v := range a {
				sum -= float64(v * b[k])
			}
			row[j-f] = sum
		}
		diagonal := row[i-f]
		left := diagonal
		for j := f; j < i; j++ {
			g := row[j-f]
			l := g / e.pivot(j)
			left -= float64(l * g)
			row[j-f] = l
		}
		row[i-f] = left
		if left > freedom*diagonal {
			continue
		}
		if !idle(i) {
			return i
		}
		row[i-f] = math.Max(diagonal, 1)
	}
	return -1
}

func (e *equations) pivot(i int) float64 { return e.row[i][i-e.first[i]] }

// solve replaces p by u.
func (e *equations) solve(p []float64) {
	for i, row := range e.row {
		f := e.first[i]
		sum := p[i]
		for j := f; j < i; j++ {
			sum -= float64(row[j-f] * p[j])
		}
		p[i] = sum
	}
	for i := range p {
		p[i] /= e.pivot(i)
	}
	e.back(p)
}

// back solves Lᵀ u = p.
func (e *equations) back(p []float64) {
	for i := len(p) - 1; i >= 0; i-- {
		f := e.first[i]
		for j := f; j < i; j++ {
			p[j] -= float64(e.row[i][j-f] * p[i])
		}
	}
}

// mode gives the movement against which a row is held by nothing: the row moves by one, those before it follow.
func (e *equations) mode(i int) []float64 {
	u := make([]float64, i+1)
	u[i] = 1
	e.back(u)
	return u
}
