package site

import (
	"hash/fnv"

	"hullfile/engine/record"
)

// Share gives the hulls of part i of n, i from one. To which part a hull belongs depends on its number alone, so it stays
// there whatever hulls come and go.
func Share(hulls []*record.Hull, i, n int) []*record.Hull {
	var out []*record.Hull
	for _, h := range hulls {
		sum := fnv.New64a()
		sum.Write([]byte(h.Number))
		if int(mixed(sum.Sum64())%uint64(n)) == i-1 {
			out = append(out, h)
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
