package record

// What a boat must be able to show, as lists of requirements that come with the program or stand in the yard's own
// folder requirements.

// RequirementList is one file of requirements: a law, a standard, or what a yard asks of itself.
type RequirementList struct {
	Title    Val[string]   `toml:"title" must:"yes" doc:"what the list is called on the pages"`
	Work     Val[string]   `toml:"work" must:"yes" doc:"the law, standard or paper that asks"`
	Edition  Val[string]   `toml:"edition" doc:"its edition or number"`
	Kind     Val[string]   `toml:"kind" must:"yes" oneof:"law|standard|yard" doc:"who asks"`
	About    Val[string]   `toml:"about" lines:"yes" doc:"what the list covers, what it leaves out, how far its text was read"`
	Basis    Val[string]   `toml:"basis" must:"yes" oneof:"read|derived|yard|practice|recalled" doc:"how its items are known, where an item does not say otherwise"`
	When     Val[string]   `toml:"when" doc:"condition over facts of the boat under which the list applies at all"`
	Else     Val[string]   `toml:"otherwise" doc:"why it does not apply where the condition does not hold, in words"`
	Scope    Val[string]   `toml:"scope" doc:"condition over facts of the boat under which the work is about such a boat; where it does not hold or is open, a doubt says so"`
	Beyond   Val[string]   `toml:"beyond" doc:"what the work is about, and what holds for a boat outside it, in words"`
	Items    []Requirement `toml:"item" doc:"what is asked, item by item, by its number"`
	Routes   []Route       `toml:"route" doc:"rows of the table that says by which modules conformity may be assessed"`
	Evidence []Evidence    `toml:"evidence" doc:"further words for evidence"`
}

// Requirement is one item of a list. Its key is its number.
type Requirement struct {
	Entry
	Heading  Val[string]   `toml:"heading" must:"yes" doc:"what it is about, in words of our own"`
	Asks     Val[string]   `toml:"asks" must:"yes" doc:"what is asked, in one or two sentences of our own"`
	Clause   Val[string]   `toml:"clause" doc:"where it stands in the work"`
	Basis    Val[string]   `toml:"basis" oneof:"read|derived|yard|practice|recalled" doc:"how it is known"`
	When     Val[string]   `toml:"when" doc:"condition over facts of the boat under which it applies, e.g. LH < 6"`
	Else     Val[string]   `toml:"otherwise" doc:"why it does not apply where the condition does not hold, in words"`
	Needed   Val[[]string] `toml:"needed" ref:"evidence" doc:"evidence that must all be there and met"`
	Either   Val[[]string] `toml:"either" ref:"evidence" doc:"evidence of which one must be met"`
	Supports Val[[]string] `toml:"supports" ref:"evidence" doc:"evidence that is shown beside it and decides nothing"`
	Blocks   Val[string]   `toml:"blocks" must:"yes" oneof:"sale|signature|plate|handover|next work|nothing" doc:"what may not happen without it"`
	Note     Val[string]   `toml:"note" doc:"anything that a reader must know"`
}

// Route is one row of a table of conformity modules.
type Route struct {
	Entry
	When    Val[string]   `toml:"when" must:"yes" doc:"condition over facts of the boat under which the row holds"`
	Says    Val[string]   `toml:"says" must:"yes" doc:"the row in words: which boats"`
	About   Val[string]   `toml:"about" must:"yes" oneof:"construction|noise|exhaust" doc:"what the modules are about"`
	Modules Val[[]string] `toml:"modules" must:"yes" doc:"modules that are open; a plus joins two that go together"`
	Clause  Val[string]   `toml:"clause" must:"yes" doc:"where it stands in the work"`
	Basis   Val[string]   `toml:"basis" oneof:"read|derived|yard|practice|recalled" doc:"how it is known"`
	Note    Val[string]   `toml:"note" doc:"anything that a reader must know"`
}

// Evidence is a word for something that can answer a requirement. All that is written of it must be so: every rule has
// checks that are met, a paper of the kind is there, every key is written, every table has entries.
type Evidence struct {
	Entry
	Says   Val[string]   `toml:"says" must:"yes" doc:"what it is, in words"`
	How    Val[string]   `toml:"how" must:"yes" oneof:"test|result|document|record|statement" doc:"what sort of evidence it is, from strong to weak"`
	Rules  Val[[]string] `toml:"rules" doc:"rules of checks that must be there and met; a * at the end stands for any ending"`
	Also   Val[[]string] `toml:"also" doc:"rules of checks and findings that count where they are there"`
	Kinds  Val[[]string] `toml:"kinds" doc:"kinds of document of which one must be there, unchanged"`
	Named  Val[bool]     `toml:"named" doc:"true counts a document only where its own record says that it shows this word"`
	Signed Val[bool]     `toml:"signed" doc:"true counts a document only where its record says who signed it and gives its hash"`
	Keys   Val[[]string] `toml:"keys" doc:"record keys that must be written, e.g. plate.seen_from"`
	Tables Val[[]string] `toml:"tables" doc:"tables of the record that must have entries, e.g. weld"`
}

// EvidenceFile is one file of words for evidence, with the facts that conditions may name.
type EvidenceFile struct {
	Evidence []Evidence    `toml:"evidence" doc:"words for evidence"`
	Facts    []Fact        `toml:"fact" doc:"facts of the boat that conditions may name, by their symbol"`
	Silent   Val[[]string] `toml:"answers_nothing" doc:"rules of checks and findings that answer no requirement"`
	Because  Val[string]   `toml:"because" doc:"why they answer none"`
}

// Fact is a value of the boat that a condition may name.
type Fact struct {
	Entry
	From  Val[string]   `toml:"from" must:"yes" doc:"record key that it is taken from, e.g. boat.length_hull_m; day. before it turns a day into a number such as 20260314"`
	Name  Val[string]   `toml:"name" must:"yes" doc:"what it is, in words"`
	Unit  Val[string]   `toml:"unit" doc:"its unit, for a number that has one"`
	Words Val[[]string] `toml:"words" doc:"the words that it can be; yes and no for a key that is true or false"`
}

// Fitted is what the boat has on board, as far as it decides what is asked of it.
type Fitted struct {
	Gas      Val[bool]   `toml:"gas" doc:"true where an appliance burns gas"`
	Toilet   Val[bool]   `toml:"toilet" doc:"true where a toilet is fitted"`
	Cabin    Val[bool]   `toml:"cabin" doc:"true where people can live or sleep inside"`
	Lights   Val[bool]   `toml:"navigation_lights" doc:"true where navigation lights are fitted"`
	Fuel     Val[string] `toml:"fuel" oneof:"petrol|diesel|battery|none" doc:"what the engines run on"`
	Integral Val[bool]   `toml:"integral_exhaust" doc:"true where the exhaust of an inboard or sterndrive is part of the engine"`
	Tiller   Val[bool]   `toml:"tiller" doc:"true where an outboard is steered by hand at the engine"`
	Adapted  Val[bool]   `toml:"adapted_engine" doc:"true where the yard makes an engine or adapts one"`
	Hulls    Val[int]    `toml:"hulls" least:"1" most:"3" eg:"1" doc:"number of hulls; one if not written is not taken: it must be written where a rule asks"`
}

// Conformity is what a declaration of conformity needs beside the boat.
type Conformity struct {
	Lists     Val[[]string] `toml:"requirements" ref:"list" doc:"lists of requirements that this boat must answer, instead of those in yard.toml"`
	Use       Val[string]   `toml:"intended_use" oneof:"private|hire|work|passengers|rescue" doc:"what the boat is sold for; some rules leave work boats out"`
	Stability Val[bool]     `toml:"stability_standard" doc:"true where the harmonised standard for stability and freeboard is followed in full"`
	Buoyancy  Val[bool]     `toml:"buoyancy_standard" doc:"true where the harmonised standard for buoyancy and flotation is followed in full"`
	Noise     Val[string]   `toml:"noise_by" oneof:"standard|other test|reference boat|Froude number" doc:"how sound is shown, for a boat whose sound is the builder's business"`
	Module    Val[string]   `toml:"module" oneof:"A|A1|B+C|B+D|B+E|B+F|G|H" doc:"module of conformity that was chosen for the construction"`
	Assessed  Val[bool]     `toml:"after_construction" doc:"true where somebody other than the builder has conformity assessed after the boat was built"`
	Number    Val[string]   `toml:"number" doc:"number of the declaration"`
	Standards Val[[]string] `toml:"standards" doc:"harmonised or designated standards and other specifications that the maker says were used, with edition"`
	Body      Val[string]   `toml:"body" doc:"name of the notified or approved body"`
	BodyNo    Val[string]   `toml:"body_number" doc:"its number"`
	BodyTask  Val[string]   `toml:"body_task" doc:"what it did"`
	Paper     Val[string]   `toml:"body_certificate" doc:"number of its certificate"`
	For       Val[string]   `toml:"representative" doc:"name and address of the authorised representative, where one signs"`
	Place     Val[string]   `toml:"place" doc:"place of signing"`
	By        Val[string]   `toml:"signed_by" ref:"person" doc:"who is to sign"`
	As        Val[string]   `toml:"signed_as" doc:"the function in which that person signs"`
	Engine    Val[string]   `toml:"engine_declaration" ref:"document" doc:"declaration of the maker of the engine, with what it says of exhaust and sound"`
}

// Accepted is who took an item of a list as answered, and when. It makes nothing met: it says who looked.
type Accepted struct {
	Entry
	List Val[string] `toml:"list" must:"yes" ref:"list" doc:"list of requirements, by its file name without .toml"`
	Item Val[string] `toml:"item" must:"yes" doc:"number of the item, or all for every item of the list"`
	By   Val[string] `toml:"by" must:"yes" ref:"person" doc:"who accepted it"`
	As   Val[string] `toml:"as" doc:"in what capacity"`
	Date Val[Date]   `toml:"date" must:"yes" doc:"day on which it was accepted"`
	Note Val[string] `toml:"note" doc:"what was accepted, where words are needed"`
}
