package section

import "hullfile/engine/unit"

// Kind is the sort of a section, in the words of the trade.
type Kind string

// The kinds of section.
const (
	FlatBar Kind = "flat bar"
	Angle   Kind = "angle"
	Tee     Kind = "tee"
	Bulb    Kind = "bulb flat"
	TopHat  Kind = "top hat"
	Box     Kind = "box"
	Pipe    Kind = "pipe"
	BuiltUp Kind = "built up"
)

// Kinds lists them all.
func Kinds() []Kind {
	return []Kind{FlatBar, Angle, Tee, Bulb, TopHat, Box, Pipe, BuiltUp}
}

// Shape is a section as it is ordered: its kind and its dimensions over all. A dimension that the kind does not have stays
// nought; New refuses one that is given all the same.
//
//	flat bar   Height Web
//	angle      Height Web Flange FlangeThickness             the flange over all, from the back of the web
//	tee        Height Web Flange FlangeThickness             the flange over all, its middle on the web
//	bulb flat  Height Web, and either Area and Centroid of the maker, or neither: then its bulb is approximated
//	top hat    Height Web Flange FlangeThickness Foot FootThickness Base
//	box        Height Web Flange FlangeThickness             Flange is the breadth, FlangeThickness of top and bottom
//	pipe       Diameter Wall
//	built up   Pieces
type Shape struct {
	Kind            Kind
	Height          unit.MM // from the foot to the free edge, over all
	Web             unit.MM // thickness of the web; of each of two in a top hat or box
	Flange          unit.MM // breadth of the flange over all; of the crown of a top hat; of a box
	FlangeThickness unit.MM
	Foot            unit.MM // top hat: breadth of each of the two feet outside the webs; nought where the webs are welded to the plating
	FootThickness   unit.MM // top hat with feet
	Base            unit.MM // top hat: breadth over the webs at the plating; nought where the webs stand upright under the crown
	Diameter        unit.MM // pipe, outside
	Wall            unit.MM // pipe
	Area            unit.MM2
	Centroid        unit.MM // bulb flat: height of the centroid above the foot, from the maker
	Pieces          []Piece // built up
	Joined          bool    // web and flange are pieces welded together, and not rolled, bent or extruded as one
}

// Piece is one rectangle of a built-up section.
type Piece struct {
	Name    string
	Role    Role
	Left    unit.MM // of its left side, across from the middle of the section; may be below nought
	Foot    unit.MM // of its lower side, above the foot of the section
	Breadth unit.MM // across
	Height  unit.MM // up
}

// Role is what a part of a section does.
type Role string

// The roles. Shear is carried by webs.
const (
	Web     Role = "web"
	Flange  Role = "flange"
	Foot    Role = "foot"
	Plating Role = "plating"
)
