package record

import "hullfile/engine/unit"

// SurveyReading is one line of a survey sheet that was filled on board. In survey.csv the rows need no key: they are 1, 2, 3
// in their order.
type SurveyReading struct {
	Entry
	Item       Val[string]     `toml:"item" must:"yes" doc:"item of the survey sheet, by the key printed beside it"`
	Measured   Val[unit.Ratio] `toml:"measured" least:"-100000" most:"1000000" eg:"5.92" doc:"what was measured, in the unit that the sheet prints"`
	Seen       Val[string]     `toml:"seen" oneof:"as expected|not as expected|not reached" doc:"what was seen, where nothing is measured or beside the measurement"`
	Date       Val[Date]       `toml:"date" must:"yes" doc:"day on which it was measured or seen"`
	By         Val[string]     `toml:"by" must:"yes" doc:"who measured or looked; need not be a person of the yard"`
	Instrument Val[string]     `toml:"instrument" doc:"what was measured with, by its key in the records of the yard"`
	Document   Val[string]     `toml:"document" ref:"document" doc:"photograph or report"`
	Note       Val[string]     `toml:"note" doc:"anything that matters"`
}
