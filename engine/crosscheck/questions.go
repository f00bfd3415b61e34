package crosscheck

import "hullfile/engine/finding"

// Questions lists what the build record is asked, in the order in which a boat is built. What certificates, procedures and
// certificates of welders say of themselves is asked by engine/stock and engine/weld.
func Questions() []Question {
	const (
		contradiction = finding.Contradiction
		shortfall     = finding.Shortfall
		gap           = finding.Gap
		doubt         = finding.Doubt
	)
	return []Question{
		{"part-needed", shortfall, "a part is thinner than the structure asks of its panel", thinnerThanNeeded},
		{"part-sheet", contradiction, "a part in one piece is larger than a sheet of its lot", largerThanSheet},
		{"lot-unused", doubt, "the certificate of a lot lies in the file and nothing was cut from the lot", orphanLot},

		{"joint-part-twice", contradiction, "a joint names one part on both sides", partTwice},
		{"joint-part-known", contradiction, "a joint names a part that is not on the cut list", unknownPart},
		{"joint-plate", contradiction, "the plate of a joint is another than that of its part", otherPlate},
		{"joint-welded", gap, "a joint of the weld map has no weld record", notWelded},
		{"weld-on-map", contradiction, "a weld or inspection is of a joint that is not on the weld map", offTheMap},
		{"length-of-joint", doubt, "more of a joint was welded or inspected than there is", longerThanJoint},

		{"weld-procedure", gap, "a weld names no procedure that is on record", unknownProcedure},
		{"weld-revision", contradiction, "a weld was made by a revision that did not hold on its day", wrongRevision},
		{"weld-thickness", contradiction, "the plates of a joint are outside the range of its procedure", outsideThickness},
		{"weld-group", contradiction, "the metal of a joint is of a group that its procedure does not cover", otherGroup},
		{"weld-position", contradiction, "a weld was made in a position that its procedure does not cover", otherPosition},
		{"weld-joint", contradiction, "a joint is of a kind that its procedure is not for", otherJoint},
		{"weld-filler", contradiction, "a weld was made with a filler that its procedure does not name", otherFiller},
		{"weld-silicon", shortfall, "silicon filler went into metal with magnesium", siliconFiller},
		{"weld-throat", contradiction, "the throat of a joint is outside the range of its procedure", outsideThroat},
		{"weld-readings", doubt, "readings of a weld are outside the window of its procedure", outsideWindow},
		{"weld-heat", doubt, "a weld had more heat than the test of its procedure leaves", tooMuchHeat},
		{"weld-interpass", contradiction, "a weld was hotter between runs than its procedure leaves", tooHot},
		{"weld-interpass-read", doubt, "a weld of several runs has no temperature between them", noTemperature},
		{"weld-gas", doubt, "a weld was made under another gas than its procedure names", otherGas},
		{"weld-wire", doubt, "wire feed, speed and throat of a weld cannot all be true", wireAgainstLeg},
		{"weld-diameter", doubt, "a weld was made with wire of another diameter than its procedure names", otherDiameter},

		{"welder-known", gap, "a weld names no welder that is in the register", unknownStamp},
		{"welder-qualified", shortfall, "a welder held no certificate on the day of a weld", notQualified},
		{"welder-range", shortfall, "a weld lies outside what its welder is qualified for", outsideRange},
		{"welder-two-stamps", contradiction, "somebody welded under two stamps at one time", twoStamps},
		{"welder-two-places", contradiction, "a welder was welding at two joints at one time", inTwoPlaces},
		{"welder-day", doubt, "a welder laid more in a day than the arc could", tooMuchInADay},
		{"welder-repairs", doubt, "more of a welder's length than usual had to be repaired", manyRepairs},

		{"filler-known", gap, "a weld names no lot of filler that is in the stock", unknownFiller},
		{"filler-certificate", gap, "a lot of filler has no certificate", fillerWithoutCertificate},
		{"filler-life", contradiction, "a weld was made with filler whose life had ended", fillerTooOld},
		{"filler-received", contradiction, "a weld was made with filler that had not come or was not open", fillerTooSoon},
		{"filler-mass", doubt, "more wire went into the seams than was received", fillerTooLittle},

		{"inspection-order", contradiction, "a joint was inspected before it was welded", lookedTooSoon},
		{"inspection-surface", doubt, "a seam was inspected with a surface on which the method shows nothing", badSurface},
		{"inspection-own-work", contradiction, "somebody inspected what they had welded", ownWork},
		{"inspector-certified", shortfall, "an inspector was not certified for the method on the day", notCertified},
		{"inspection-by", gap, "an inspection names no inspector", nobodyLooked},
		{"inspection-there", gap, "a welded joint was not inspected", notLookedAt},
		{"inspection-extent", shortfall, "a method did not reach the share that was asked for", tooLittleSeen},
		{"inspection-joint", contradiction, "an inspection names a joint and a weld of another joint", otherJointLooked},
		{"imperfection-limit", contradiction, "an imperfection beyond its limit was accepted", beyondLimit},
		{"imperfection-crack", contradiction, "a crack was accepted", crackAccepted},
		{"imperfection-within", doubt, "an imperfection within its limit was called beyond", withinLimit},
		{"throat-drawn", shortfall, "a throat measures less than was drawn", throatTooSmall},

		{"rejected-decided", gap, "a seam was rejected and no nonconformity was raised", rejectedAndLeft},
		{"nonconformity-closed", contradiction, "a nonconformity was closed before its repair was seen to be good", closedUnseen},
		{"nonconformity-approved", gap, "something was left as it is without a fit approval", usedAsIs},
		{"nonconformity-open", gap, "a nonconformity is open and the boat is finished", openAtHandover},
		{"repair-qualified", shortfall, "a repair was made by no procedure or welder fit for it", repairUnqualified},
		{"repair-again", doubt, "one spot was repaired more than twice", repairedAgain},
		{"repair-circle", contradiction, "repairs follow each other in a circle", repairCircle},

		{"build-calibration", shortfall, "an instrument was out of calibration on a day of use", outOfCalibration},
		{"hold-released", contradiction, "a point was released before what it waits for", releasedTooSoon},
		{"hold-work", contradiction, "work went on before a hold point was released", workTooSoon},
		{"hold-open", gap, "a hold point was never released", notReleased},
		{"joints-known", contradiction, "a leak test or hold point names a joint that is not on the weld map", testNotThere},
		{"leak-again", shortfall, "a boundary was welded on after its leak test and not tested again", hotAfterTest},

		{"build-century", contradiction, "a day is years away from the building of the boat", wrongCentury},
		{"build-before-keel", contradiction, "something of the building is dated before the keel was laid", beforeKeel},
		{"build-after-launch", doubt, "something was cut or welded after the launch", afterLaunch},
		{"build-after-issue", contradiction, "something of the building is dated after the issue of the file", afterTheIssue},
		{"build-weekend", doubt, "records are dated on a Saturday or Sunday", atWeekends},
		{"build-paper", doubt, "a photograph or report that a record names is not there", photoNotThere},
		{"build-copied", doubt, "readings or hours look copied", copied},
		{"build-other-hull", doubt, "a paper in the file names another hull", otherHull},
		{"build-unit", doubt, "a figure looks as if it were in another unit", otherUnit},
	}
}
