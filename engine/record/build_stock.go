package record

import "hullfile/engine/unit"

// Stock is what lies in the folder stock: metal as it was delivered, and what is used up while a boat is built.
type Stock struct {
	Lots        []Lot        `toml:"lot" csv:"lots" doc:"lots of plate, bar and extrusion as delivered, with what their certificates say"`
	Consumables []Consumable `toml:"consumable" csv:"consumables" doc:"filler, gas, paint, foam and sealant, lot by lot"`
}

// Lot is one delivery of one cast in one thickness, with the values that its certificate prints.
type Lot struct {
	Entry
	Kind        Val[string]        `toml:"kind" must:"yes" oneof:"plate|bar|extrusion|tube" doc:"form of the metal"`
	Alloy       Val[string]        `toml:"alloy" must:"yes" ref:"alloy" doc:"alloy and temper that the certificate names, e.g. 5083-H116"`
	Thickness   Val[unit.MM]       `toml:"thickness_mm" must:"yes" above:"0" most:"100" likely:"1.5..25" eg:"6.0" doc:"thickness as ordered"`
	Width       Val[unit.MM]       `toml:"width_mm" above:"0" most:"10000" eg:"1500" doc:"width of one piece"`
	Length      Val[unit.MM]       `toml:"length_mm" above:"0" most:"20000" eg:"4000" doc:"length of one piece"`
	Pieces      Val[int]           `toml:"pieces" least:"1" most:"10000" eg:"4" doc:"how many pieces were received"`
	Area        Val[unit.M2]       `toml:"area_m2" above:"0" most:"100000" eg:"24" doc:"area received; width times length times pieces if not written"`
	Remnant     Val[unit.M2]       `toml:"remnant_m2" least:"0" most:"100000" eg:"3.1" doc:"area that is still in store"`
	Metres      Val[unit.M]        `toml:"received_m" above:"0" most:"1000000" eg:"120" doc:"length received, for bar, extrusion and tube"`
	Cast        Val[string]        `toml:"cast" doc:"cast number, also called heat number, as printed and as marked on the metal"`
	MakersLot   Val[string]        `toml:"makers_lot" doc:"the maker's own lot or batch number"`
	Standard    Val[string]        `toml:"standard" doc:"product standard that the certificate names, e.g. EN 485-2"`
	Edition     Val[string]        `toml:"edition" doc:"edition of that standard, e.g. 2016"`
	Certificate Val[string]        `toml:"certificate" doc:"number of the certificate; the paper itself is a document of the hull with this number"`
	Type        Val[string]        `toml:"certificate_type" oneof:"2.1|2.2|3.1|3.2" doc:"kind of certificate by EN 10204"`
	Certified   Val[Date]          `toml:"certificate_date" doc:"day printed on the certificate"`
	Received    Val[Date]          `toml:"received" doc:"day on which the lot came into the yard"`
	ReceivedBy  Val[string]        `toml:"received_by" ref:"person" doc:"who held the metal against the certificate"`
	Maker       Val[string]        `toml:"maker" doc:"works that made the metal"`
	Supplier    Val[string]        `toml:"supplier" doc:"who delivered it"`
	Tensile     Val[unit.MPa]      `toml:"tensile_n_mm2" above:"0" most:"700" likely:"100..450" eg:"331" doc:"tensile strength as printed"`
	Yield       Val[unit.MPa]      `toml:"yield_n_mm2" above:"0" most:"700" likely:"50..400" eg:"246" doc:"0.2 % proof strength as printed"`
	Elongation  Val[unit.Percent]  `toml:"elongation_percent" above:"0" most:"60" eg:"15.5" doc:"elongation as printed"`
	Gauge       Val[string]        `toml:"elongation_on" oneof:"A50|A" doc:"gauge length of the elongation: 50 mm, or 5.65 times the root of the section; A50 up to 12.5 mm if not written"`
	Si          Val[unit.Percent]  `toml:"si_percent" least:"0" most:"15" eg:"0.15" doc:"silicon as printed"`
	Fe          Val[unit.Percent]  `toml:"fe_percent" least:"0" most:"5" eg:"0.26" doc:"iron as printed"`
	Cu          Val[unit.Percent]  `toml:"cu_percent" least:"0" most:"10" eg:"0.03" doc:"copper as printed"`
	Mn          Val[unit.Percent]  `toml:"mn_percent" least:"0" most:"5" eg:"0.61" doc:"manganese as printed"`
	Mg          Val[unit.Percent]  `toml:"mg_percent" least:"0" most:"12" eg:"4.51" doc:"magnesium as printed"`
	Cr          Val[unit.Percent]  `toml:"cr_percent" least:"0" most:"2" eg:"0.09" doc:"chromium as printed"`
	Zn          Val[unit.Percent]  `toml:"zn_percent" least:"0" most:"10" eg:"0.04" doc:"zinc as printed"`
	Ti          Val[unit.Percent]  `toml:"ti_percent" least:"0" most:"2" eg:"0.02" doc:"titanium as printed"`
	OtherEach   Val[unit.Percent]  `toml:"other_each_percent" least:"0" most:"2" eg:"0.01" doc:"greatest of the other elements as printed"`
	OtherTotal  Val[unit.Percent]  `toml:"other_total_percent" least:"0" most:"5" eg:"0.04" doc:"other elements together as printed"`
	G67         Val[unit.MGPerCM2] `toml:"mass_loss_mg_cm2" least:"0" most:"200" eg:"4" doc:"mass loss in the nitric acid test of ASTM G67"`
	G67Edition  Val[string]        `toml:"mass_loss_edition" doc:"edition of ASTM G67 that was used, e.g. 18"`
	G67Acid     Val[string]        `toml:"mass_loss_acid" oneof:"70-72|67-70" doc:"nitric acid of that test in mass per cent; the weaker acid of newer editions gives a higher loss"`
	G66         Val[string]        `toml:"exfoliation" oneof:"N|PA|PB|PC|EA|EB|EC|ED" doc:"rating in the exfoliation test of ASTM G66: none, pitting A to C, exfoliation A to D"`
	G66Edition  Val[string]        `toml:"exfoliation_edition" doc:"edition of ASTM G66 that was used"`
	Structure   Val[string]        `toml:"metallography" oneof:"accepted|rejected" doc:"what a look at the structure said, where the mass loss asked for one"`
	Note        Val[string]        `toml:"note" doc:"anything that matters"`
}

// Consumable is one lot of something that is used up.
type Consumable struct {
	Entry
	Kind           Val[string]       `toml:"kind" must:"yes" oneof:"filler|gas|paint|foam|sealant|penetrant" doc:"what it is"`
	Classification Val[string]       `toml:"classification" doc:"what it is by its standard: S Al 5183 for filler, I1 for argon"`
	Standard       Val[string]       `toml:"standard" doc:"standard of that classification, e.g. ISO 18273"`
	Make           Val[string]       `toml:"make" doc:"name it is sold by"`
	Batch          Val[string]       `toml:"batch" doc:"lot or batch number on the pack"`
	Cast           Val[string]       `toml:"cast" doc:"cast number of the wire"`
	Diameter       Val[unit.MM]      `toml:"diameter_mm" above:"0" most:"10" likely:"0.6..5" eg:"1.2" doc:"diameter of the wire or rod"`
	Mass           Val[unit.KG]      `toml:"mass_kg" above:"0" most:"100000" eg:"42" doc:"mass received"`
	Volume         Val[unit.Litre]   `toml:"volume_l" above:"0" most:"10000000" eg:"9100" doc:"volume received; for gas as it leaves the nozzle"`
	Received       Val[Date]         `toml:"received" doc:"day on which the lot came into the yard"`
	Opened         Val[Date]         `toml:"opened" after:"received" doc:"day on which the first pack was opened"`
	OpenLife       Val[int]          `toml:"open_life_days" least:"1" most:"3650" eg:"90" doc:"how many days an opened pack may be used, by its maker or the yard's own rule"`
	Expires        Val[Date]         `toml:"expires" doc:"last day on which it may be used"`
	Certificate    Val[string]       `toml:"certificate" doc:"number of its certificate; the paper itself is a document of the hull with this number"`
	Type           Val[string]       `toml:"certificate_type" oneof:"2.1|2.2|3.1|3.2" doc:"kind of certificate by EN 10204"`
	Certified      Val[Date]         `toml:"certificate_date" doc:"day printed on the certificate"`
	Supplier       Val[string]       `toml:"supplier" doc:"who delivered it"`
	Si             Val[unit.Percent] `toml:"si_percent" least:"0" most:"15" eg:"0.10" doc:"silicon as printed"`
	Fe             Val[unit.Percent] `toml:"fe_percent" least:"0" most:"5" eg:"0.15" doc:"iron as printed"`
	Cu             Val[unit.Percent] `toml:"cu_percent" least:"0" most:"10" eg:"0.01" doc:"copper as printed"`
	Mn             Val[unit.Percent] `toml:"mn_percent" least:"0" most:"5" eg:"0.65" doc:"manganese as printed"`
	Mg             Val[unit.Percent] `toml:"mg_percent" least:"0" most:"12" eg:"4.9" doc:"magnesium as printed"`
	Cr             Val[unit.Percent] `toml:"cr_percent" least:"0" most:"2" eg:"0.10" doc:"chromium as printed"`
	Zn             Val[unit.Percent] `toml:"zn_percent" least:"0" most:"10" eg:"0.02" doc:"zinc as printed"`
	Ti             Val[unit.Percent] `toml:"ti_percent" least:"0" most:"2" eg:"0.08" doc:"titanium as printed"`
	Be             Val[unit.Percent] `toml:"be_percent" least:"0" most:"1" eg:"0.0002" doc:"beryllium as printed"`
	Note           Val[string]       `toml:"note" doc:"anything that matters"`
}
