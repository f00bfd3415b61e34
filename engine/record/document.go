package record

// Document is a paper of the file: a certificate, photograph, report or signed sheet.
type Document struct {
	Entry
	File   Val[string] `toml:"file" must:"yes" form:"file" doc:"file name inside the documents folder beside the record; never outside the yard folder"`
	Kind   Val[string] `toml:"kind" must:"yes" oneof:"material certificate|weld procedure|welder qualification|inspection report|photograph|drawing|trial sheet|weighing sheet|calibration certificate|declaration|statement|manual|test sheet|release note|invoice|other" doc:"what kind of paper it is"`
	Title  Val[string] `toml:"title" must:"yes" doc:"title as it should stand in the list"`
	Number Val[string] `toml:"number" doc:"number printed on it"`
	Date   Val[Date]   `toml:"date" doc:"day printed on it"`
	By     Val[string] `toml:"issued_by" doc:"who issued it"`
	Until  Val[Date]   `toml:"valid_until" after:"date" doc:"last day on which it is valid"`
	SHA256 Val[string] `toml:"sha256" form:"hash" doc:"hash of the file when it was put on record, 64 hexadecimal digits"`

	Shows    Val[[]string] `toml:"shows" ref:"evidence" doc:"words for evidence that this paper is, e.g. fuel-system"`
	SignedBy Val[string]   `toml:"signed_by" doc:"who signed it; a declaration or statement without it stays a draft"`

	System Val[string] `toml:"system" oneof:"structure|engines|electrical|fuel|gas|fire|steering|trailer|whole boat" doc:"part of the boat that it belongs to, for the owner's book"`
	Owner  Val[bool]   `toml:"for_owner" doc:"true puts a copy into the owner's book; nothing else among the documents goes there"`
}
