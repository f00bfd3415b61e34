// Package unit gives every kind of quantity that a record can hold its own type, so that a thickness in
// millimetres cannot be handed over as a span in metres. The unit is written at the end of the record key
// (thickness_mm) and as the name of the type (MM); a test in engine/record holds the two together.
//
// The types carry no arithmetic of their own. Code that mixes units turns them into named float64 locals
// inside one function, or leaves the sum to a method sheet.
package unit

// The quantities. Each comment is the unit in words.
type (
	MM      float64 // millimetre
	M       float64 // metre
	MM2     float64 // square millimetre
	CM2     float64 // square centimetre
	CM3     float64 // cubic centimetre
	CM4     float64 // centimetre to the fourth power, of a second moment of area
	M2      float64 // square metre
	M3      float64 // cubic metre
	Inch    float64 // inch, for propeller pitch and diameter only
	KG      float64 // kilogram
	KGPerM  float64 // kilogram per metre
	KGPerM3 float64 // kilogram per cubic metre
	KPa     float64 // kilonewton per square metre
	MPa     float64 // newton per square millimetre
	GPa     float64 // kilonewton per square millimetre
	Knot    float64 // nautical mile per hour
	Deg     float64 // degree of arc
	KW      float64 // kilowatt
	RPM     float64 // revolution per minute
	Litre   float64 // litre
	LPerH   float64 // litre per hour
	LPerNM  float64 // litre per nautical mile
	NM      float64 // nautical mile
	Percent float64 // part of a hundred
	Second  float64 // second
	Hour    float64 // hour
	Celsius float64 // degree Celsius
	Ratio   float64 // a number without unit
	G       float64 // acceleration as a multiple of standard gravity
	Hertz   float64 // cycle per second
	MPaPerG float64 // newton per square millimetre for one g
	DB      float64 // decibel, A-weighted sound pressure level

	KiloPascal float64 // kilopascal of a gauge; the same as kilonewton per square metre, by the word that stands on the dial
	NPerMM     float64 // newton per millimetre of seam
	KJPerMM    float64 // kilojoule per millimetre of seam
	Volt       float64 // volt
	Ampere     float64 // ampere
	MMPerMin   float64 // millimetre per minute
	MPerMin    float64 // metre per minute
	LPerMin    float64 // litre per minute
	Minute     float64 // minute
	MGPerCM2   float64 // milligram per square centimetre
)

// Named is one kind of quantity as the reader and the pages know it.
type Named struct {
	Suffix string // end of the record key, without the underscore; empty for a plain number
	Sign   string // as printed beside a value or in the head of a column
	Words  string // as read aloud
}

// Of names the unit of a Go type by the name of that type ("MM", "Knot"); ok is false for a type that is no quantity.
func Of(typeName string) (n Named, ok bool) {
	n, ok = byType[typeName]
	return n, ok
}

// Types lists the names of all quantity types, for tests that hold keys and types together.
func Types() []string {
	names := make([]string, 0, len(byType))
	for name := range byType {
		names = append(names, name)
	}
	return names
}

var byType = map[string]Named{
	"MM":      {"mm", "mm", "millimetre"},
	"M":       {"m", "m", "metre"},
	"MM2":     {"mm2", "mm²", "square millimetre"},
	"CM2":     {"cm2", "cm²", "square centimetre"},
	"CM3":     {"cm3", "cm³", "cubic centimetre"},
	"CM4":     {"cm4", "cm⁴", "centimetre to the fourth power"},
	"M2":      {"m2", "m²", "square metre"},
	"M3":      {"m3", "m³", "cubic metre"},
	"Inch":    {"in", "in", "inch"},
	"KG":      {"kg", "kg", "kilogram"},
	"KGPerM":  {"kg_m", "kg/m", "kilogram per metre"},
	"KGPerM3": {"kg_m3", "kg/m³", "kilogram per cubic metre"},
	"KPa":     {"kn_m2", "kN/m²", "kilonewton per square metre"},
	"MPa":     {"n_mm2", "N/mm²", "newton per square millimetre"},
	"GPa":     {"kn_mm2", "kN/mm²", "kilonewton per square millimetre"},
	"Knot":    {"kn", "kn", "knot"},
	"Deg":     {"deg", "°", "degree"},
	"KW":      {"kw", "kW", "kilowatt"},
	"RPM":     {"rpm", "rpm", "revolution per minute"},
	"Litre":   {"l", "l", "litre"},
	"LPerH":   {"l_h", "l/h", "litre per hour"},
	"LPerNM":  {"l_nm", "l/NM", "litre per nautical mile"},
	"NM":      {"nm", "NM", "nautical mile"},
	"Percent": {"percent", "%", "part of a hundred"},
	"Second":  {"s", "s", "second"},
	"Hour":    {"h", "h", "hour"},
	"Celsius": {"c", "°C", "degree Celsius"},
	"Ratio":   {"", "", "number"},
	"G":       {"g", "g", "multiple of standard gravity"},
	"Hertz":   {"hz", "Hz", "hertz"},
	"MPaPerG": {"n_mm2_g", "N/mm²/g", "newton per square millimetre for one g"},
	"DB":      {"db", "dB", "decibel"},

	"KiloPascal": {"kpa", "kPa", "kilopascal"},
	"NPerMM":     {"n_mm", "N/mm", "newton per millimetre"},
	"KJPerMM":    {"kj_mm", "kJ/mm", "kilojoule per millimetre"},
	"Volt":       {"volt", "V", "volt"},
	"Ampere":     {"amp", "A", "ampere"},
	"MMPerMin":   {"mm_min", "mm/min", "millimetre per minute"},
	"MPerMin":    {"m_min", "m/min", "metre per minute"},
	"LPerMin":    {"l_min", "l/min", "litre per minute"},
	"Minute":     {"min", "min", "minute"},
	"MGPerCM2":   {"mg_cm2", "mg/cm²", "milligram per square centimetre"},
}
