package survey

import "strings"

// listed takes from each class as many as its rule allows, and every item that has a reading.
func listed(all []Item) (items []Item, left []Left) {
	for _, rule := range Rules() {
		taken, over := 0, 0
		for _, i := range all {
			switch {
			case i.Class != rule.Class:
			case taken < rule.Most || len(i.Readings) > 0:
				items = append(items, i)
				taken++
			default:
				over++
			}
		}
		if over > 0 {
			left = append(left, Left{rule.Class, over, rule.Rest})
		}
	}
	return items, left
}

// key makes the key of an item of its class and subject: letters, digits and hyphens, so that it can be typed.
func key(class, subject string) string {
	var b strings.Builder
	for _, r := range class + " " + subject {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '_', r == '.':
			b.WriteRune(r)
		default:
			if s := b.String(); s != "" && !strings.HasSuffix(s, "-") {
				b.WriteByte('-')
			}
		}
	}
	return strings.Trim(b.String(), "-")
}
