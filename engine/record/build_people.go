package record

import "hullfile/engine/unit"

// Welder is somebody who welds, with the stamp that stands beside the seams.
type Welder struct {
	Entry
	Person Val[string] `toml:"person" must:"yes" ref:"person" doc:"who it is"`
	Stamp  Val[string] `toml:"stamp" must:"yes" doc:"stamp or mark beside the seams, as weld records name it"`
	Since  Val[Date]   `toml:"since" doc:"first day on which this stamp was used"`
	Until  Val[Date]   `toml:"until" after:"since" doc:"last day on which it was used"`
}

// Qualification is one certificate of a welder.
type Qualification struct {
	Entry
	Welder        Val[string]    `toml:"welder" must:"yes" ref:"welder" doc:"whose it is"`
	Standard      Val[string]    `toml:"standard" must:"yes" doc:"standard of the test, e.g. ISO 9606-2"`
	Edition       Val[string]    `toml:"edition" doc:"edition of that standard, e.g. 2004"`
	Designation   Val[string]    `toml:"designation" doc:"designation as printed, e.g. ISO 9606-2 131 P FW 22 S t6 PF ml"`
	Certificate   Val[string]    `toml:"certificate" doc:"number of the certificate; the paper itself is a document of the hull with this number"`
	Process       Val[string]    `toml:"process" must:"yes" oneof:"131|141|142|15|43" doc:"welding process by ISO 4063"`
	Product       Val[string]    `toml:"product" oneof:"P|T" doc:"plate or tube"`
	Weld          Val[string]    `toml:"weld_type" must:"yes" oneof:"butt|fillet" doc:"butt or fillet weld"`
	Group         Val[string]    `toml:"group" must:"yes" oneof:"21|22|23|24|25|26" doc:"material group of the test piece by ISO/TR 15608, without what follows the point"`
	Filler        Val[string]    `toml:"filler" doc:"kind of filler of the test, S for solid wire or rod"`
	Thickness     Val[unit.MM]   `toml:"thickness_mm" must:"yes" above:"0" most:"150" eg:"6" doc:"thickness of the test piece"`
	Diameter      Val[unit.MM]   `toml:"diameter_mm" above:"0" most:"5000" eg:"150" doc:"outside diameter of a test piece of tube"`
	Position      Val[string]    `toml:"position" must:"yes" oneof:"PA|PB|PC|PD|PE|PF|PG|PH|PJ|H-L045|J-L045" doc:"position by ISO 6947"`
	Sides         Val[string]    `toml:"sides" oneof:"ss nb|ss mb|bs" doc:"single side without backing, single side with backing material, both sides"`
	Layers        Val[string]    `toml:"layers" oneof:"sl|ml" doc:"single layer or several layers"`
	Tested        Val[Date]      `toml:"tested" must:"yes" doc:"day of the test; the certificate holds from then"`
	Until         Val[Date]      `toml:"valid_until" after:"tested" doc:"last day as printed; two years from the test for ISO 9606-2 if not written"`
	Prolonged     Val[Date]      `toml:"prolonged" after:"tested" doc:"day on which it was prolonged"`
	Evidence      Val[string]    `toml:"prolonged_on" doc:"on what tests the prolongation rests"`
	Examiner      Val[string]    `toml:"examiner" doc:"who examined the test piece"`
	Confirmations []Confirmation `toml:"confirmation" csv:"confirmations" rows:"yes" doc:"signatures every six months that the welder has worked within the range"`
	Note          Val[string]    `toml:"note" doc:"anything that matters"`
}

// Confirmation is one signature under a certificate. In confirmations.csv the column qualification says whose it is.
type Confirmation struct {
	Entry
	Date Val[Date]   `toml:"date" must:"yes" doc:"day of the signature"`
	By   Val[string] `toml:"by" ref:"person" doc:"who answers for the welding and signed"`
}

// Inspector is somebody who may judge seams by one method. Somebody with two methods has two entries.
type Inspector struct {
	Entry
	Person      Val[string] `toml:"person" must:"yes" ref:"person" doc:"who it is"`
	Method      Val[string] `toml:"method" must:"yes" oneof:"visual|penetrant|radiographic|ultrasonic|leak" doc:"method that the certificate is for"`
	Level       Val[int]    `toml:"level" least:"1" most:"3" eg:"2" doc:"level of the certificate"`
	Standard    Val[string] `toml:"standard" doc:"standard of the certificate, e.g. ISO 9712"`
	Certificate Val[string] `toml:"certificate" doc:"number of the certificate"`
	From        Val[Date]   `toml:"valid_from" doc:"first day of the certificate"`
	Until       Val[Date]   `toml:"valid_until" after:"valid_from" doc:"last day of the certificate"`
	Vision      Val[Date]   `toml:"vision_tested" doc:"day of the last vision test"`
	Note        Val[string] `toml:"note" doc:"anything that matters"`
}
