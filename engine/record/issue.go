package record

// PastIssue is an issue of the technical file before the present one. What changed between two of them is told by
// comparing the files themselves.
type PastIssue struct {
	Entry
	Number Val[int]    `toml:"number" must:"yes" least:"1" most:"999" eg:"1" doc:"number of that issue"`
	Date   Val[Date]   `toml:"date" must:"yes" doc:"day of that issue"`
	Reason Val[string] `toml:"reason" doc:"why it was made"`
	By     Val[string] `toml:"by" ref:"person" doc:"who issued it"`
}
