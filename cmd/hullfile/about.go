package main

import "strings"

// about puts what a sentence is about before it, unless the sentence begins with that itself: "part BI is marked …" and not
// "part BI: part BI is marked …".
func about(subject, says string) string {
	if len(says) <= len(subject) || !strings.EqualFold(says[:len(subject)], subject) {
		return subject + ": " + says
	}
	if rest := says[len(subject):]; subject == "" || strings.HasPrefix(rest, " ") || strings.HasPrefix(rest, ": ") {
		return says
	}
	return subject + ": " + says
}
