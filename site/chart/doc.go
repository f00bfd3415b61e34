// Package chart draws the figures of a technical file as SVG markup: curves of the sea trial, panels and their margins,
// the weight breakdown, centres and weighings. It reads results of the engine and writes nothing itself.
//
// # Figures
//
// Every drawing comes as a Figure:
//
//	SVG    safe markup, ready to stand inside <figure>; everything that came from a record is escaped
//	Alt    one or two sentences with the figures that matter; also the description inside the drawing
//	Note   what the caption must say: where the axes begin, what the marks mean, what was left out and why
//	Table  head row first, then rows, for the table under the figure; text, still to be escaped by the page
//	Empty  true where there was nothing to draw: the drawing then says so in words
//
// SVG holds the drawing twice, for a page (class g-wide, 720 units) and for a phone (class g-narrow, 360 units); the style
// sheet shows one of them. No text is set below 11 units. Nothing panics: a fault while drawing gives a figure that says so.
//
// # Calling it
//
//	chart.Plot(chart.Spec{...})                any x-y figure
//	chart.SpeedFuel(trial)                     speed and fuel flow over engine speed
//	chart.MileRange(trial)                     litres per nautical mile and range over speed
//	chart.Trim(trial)                          running trim over speed
//	chart.Margins(panels, link)                needed and fitted thickness, least room first; link gives the page of a panel, "" for none
//	chart.Panel(panel, boat)                   one panel: field, section, thickness, position
//	chart.WeightGroups(result)                 mass of each group by how it is known
//	chart.Centres(result, boat)                items, light, loaded and weighed centres along the boat
//	chart.Weighing(weighing)                   points, readings and the resulting centre
//	chart.Sensitivity(result)                  what moves the mass and the centre most
//	chart.Unrolled(id, title, faces)           panels and members on the skin laid flat, shaded by their room
//	chart.FrameSection(cut)                    the half section at a frame with its sizes
//	chart.RingModel(m) GrillageModel(m)        a ring or a bottom as beams, with its moments
//	chart.Section(key, name, sound, softened)  a stiffener on its plating, with neutral axis and softened strips
//	chart.BodyPlan(lines)                      the sections, aft to the left and forward to the right
//	chart.Arrangement(lines, frames)           the hull from the side and from above, with water and centres
//	chart.SeamMap(lines, seams)                the skin unrolled with the seams on it
//	chart.NewSkin(lines).Spot(mark, words)     a small picture of a place on the skin
//	chart.Isometric(lines)                     the hull in space
//	chart.Levers(conditions) Lever(condition)  righting lever over heel
//	chart.Crowd(lines, heeling, ...)           the section heeled, everybody to one side
//	chart.Shifts(inclining)                    heel of an inclining test over the moment
//	chart.FormMass(lines) FormCentres(lines)   curves of form over the draught
//
// Identifiers inside the markup are made from the kind of figure and the record key ("fig-panel-B3-t"), so a figure may
// stand once on a page. Plot takes its own in Spec.ID.
//
// # Style
//
// The block templates/chart.css belongs to this package and must stand in the style sheet of every page that shows a
// figure, after the block that sets the page's colours. It uses --ink, --soft, --rule, --paper, --faint, --accent, --met,
// --short and --open where the page sets them, and has values of its own for light, dark and print where it does not.
// Classes, all beginning with g-:
//
//	g-wide g-narrow              the two drawings         g-axis g-grid      axes, hairlines
//	g-text g-soft g-short        text, quiet, warning     g-label            text with a rim in the colour of the paper
//	g-a g-b g-c                  lines of a series        g-b-name g-c-name  their names
//	g-pa g-pb g-pc g-open        marks, filled and open   g-raw g-left       single runs, left out
//	g-area g-ring g-lead         area, ring, leader       g-blank            frame of a figure without a drawing
//	g-plate g-metal g-hatch      field, cut, hatching     g-stiff g-wanted   stiffeners, needed thickness
//	g-dim g-tip                  dimension lines, tips    g-hull             the boat seen from the side
//	g-room g-gap g-need          room, lack, what is needed
//	g-weighed g-reckoned g-maker g-estimated              how a mass is known
//	g-item g-away g-cross        item, item taken away, cross in a loaded centre
//	g-section g-station          sections of the hull, thin lines at the stations
//	g-edge g-edge-thin g-water   edges of the hull, the surface of the water
//	g-bottom g-side g-deck g-end plates of the hull in space
//	g-seam g-heavy g-bad g-lacking  seams: of the shell, short, not shown
//	g-sea g-person               water below its surface, figures of people
//	g-m (g-m0 to g-m6)           panels by their room: short, little to much, not shown
//	g-skin g-cutbar g-heavybar   plating and members cut across, a bar that bends much
//	g-d g-d-name                 a fourth line of a series, its name
//	g-key g-hit                  name of a row that is a link, the field that takes the click
//
// # Inside
//
// Open plot.go first. go-chart lays out axes, ranges and ticks; pen.go is its renderer, which hands everything on to
// sheet.go, the only place that writes markup: go-chart's own does not escape text, rounds to whole pixels, and cannot follow the
// page into dark or print. Texts are measured with an embedded font and shown with one of the same widths, so that a label fits
// on the reader's machine, which has other fonts. Pictures that are no curves draw on a sheet directly.
package chart
