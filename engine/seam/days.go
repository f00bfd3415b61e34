package seam

import (
	"time"

	"hullfile/engine/record"
)

// Days counts the days from one to another; negative where the second is earlier.
func Days(from, to record.Date) int {
	return int(number(to) - number(from))
}

const secondsOfADay = 24 * 60 * 60

// number is the day counted from the first of January 1970.
func number(d record.Date) int64 {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).Unix() / secondsOfADay
}

// Weekday gives the day of the week.
func Weekday(d record.Date) time.Weekday {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).Weekday()
}

// Later gives the day so many months after another: 31 August and six months is 28 February, not 3 March.
func Later(d record.Date, months int) record.Date {
	at := int(d.Month) - 1 + months
	year, month := d.Year+at/12, time.Month(at%12+1)
	last := time.Date(year, month+1, 0, 0, 0, 0, 0, time.UTC).Day()
	return record.Date{Year: year, Month: month, Day: min(d.Day, last)}
}
