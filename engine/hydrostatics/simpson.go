package hydrostatics

// Simpson integrates ordinates at even spacing: the first rule (1-4-1, h/3) over an even number of intervals; where the
// number is odd, the second rule (1-3-3-1, 3h/8) over the last three. One interval alone is a trapezium.
// Exact for cubics from two intervals on. Source: classical naval architecture; fewer than two ordinates give nothing.
func Simpson(ordinates []float64, spacing float64) float64 {
	n := len(ordinates) - 1
	switch {
	case n < 1:
		return 0
	case n == 1:
		return spacing * (ordinates[0] + ordinates[1]) / 2
	case n%2 == 1:
		y := ordinates[n-3:]
		return Simpson(ordinates[:n-2], spacing) + 3*spacing/8*(y[0]+3*y[1]+3*y[2]+y[3])
	}
	sum := ordinates[0] + ordinates[n]
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * ordinates[i]
	}
	return spacing / 3 * sum
}
