package main

import "testing"

func TestAbout(t *testing.T) {
	for _, c := range []struct{ subject, says, want string }{
		{"part BI", "part BI is marked with another cast", "part BI is marked with another cast"},
		{"part BI", "Part BI: marked with another cast", "Part BI: marked with another cast"},
		{"part B", "part BI is marked with another cast", "part B: part BI is marked with another cast"},
		{"boat", "the length is not written", "boat: the length is not written"},
		{"joint K1", "joint K1", "joint K1: joint K1"},
		{"", "the yard has no name", "the yard has no name"},
		{"welder ö", "welder Ö has no certificate", "welder Ö has no certificate"},
	} {
		if got := about(c.subject, c.says); got != c.want {
			t.Errorf("%q about %q: %q, want %q", c.says, c.subject, got, c.want)
		}
	}
}
