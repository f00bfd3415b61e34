package beam

import "sort"

// order numbers the nodes so that those that members join stand near each other, which keeps the equations narrow:
// from the node with the fewest neighbours outward, neighbours with few neighbours first (Cuthill and McKee, 1969).
// It gives for each node its place.
func (m Model) order() []int {
	next := m.neighbours()
	place := make([]int, len(m.Nodes))
	for i := range place {
		place[i] = -1
	}
	starts := make([]int, len(m.Nodes))
	for i := range starts {
		starts[i] = i
	}
	sort.SliceStable(starts, func(a, b int) bool { return len(next[starts[a]]) < len(next[starts[b]]) })
	count := 0
	queue := make([]int, 0, len(m.Nodes))
	for _, s := range starts {
		if place[s] >= 0 {
			continue
		}
		place[s] = count
		count++
		queue = append(queue[:0], s)
		for head := 0; head < len(queue); head++ {
			for _, n := range next[queue[head]] {
				if place[n] < 0 {
					place[n] = count
					count++
					queue = append(queue, n)
				}
			}
		}
	}
	return place
}

// neighbours lists for each node those that members join to it, those with few neighbours first.
func (m Model) neighbours() [][]int {
	next := make([][]int, len(m.Nodes))
	for _, b := range m.Members {
		next[b.From] = append(next[b.From], b.To)
		next[b.To] = append(next[b.To], b.From)
	}
	for _, list := range next {
		sort.SliceStable(list, func(a, b int) bool { return len(next[list[a]]) < len(next[list[b]]) })
	}
	return next
}
