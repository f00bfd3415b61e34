package site

import "hullfile/engine/record"

// Lack is a record key that nobody wrote, with what it means in a builder's words; Means is empty for a key of no record.
type Lack struct{ Key, Means string }

func missingKeys(keys []string) []Lack {
	out := make([]Lack, 0, len(keys))
	for _, key := range keys {
		out = append(out, Lack{key, record.Means(key)})
	}
	return out
}

func lackOf(key string) *Lack {
	if key == "" {
		return nil
	}
	return &Lack{key, record.Means(key)}
}
