package site

import "hash/fnv"

// Share gives the hulls of part i of n, i from one, by their numbers. To which part a hull belongs depends on its number
// alone, so it stays there whatever hulls come and go.
func Share(numbers []string, i, n int) []string {
	var out []string
	for _, number := range numbers {
		sum := fnv.New64a()
		sum.Write([]byte(number))
		if int(mixed(sum.Sum64())%uint64(n)) == i-1 {
			out = append(out, number)
		}
	}
	return out
}

// mixed spreads a hash over all its bits: numbers that differ in their last digit only differ in few of them.
func mixed(x uint64) uint64 {
	x ^= x >> 33
	x *= 0xff51afd7ed558ccd
	x ^= x >> 33
	x *= 0xc4ceb9fe1a85ec53
	return x ^ x>>33
}
