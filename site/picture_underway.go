package site

import (
	"hullfile/engine/planing"
	"hullfile/engine/ride"
	"hullfile/engine/running"
	"hullfile/site/chart"
)

// Pictures of the boat under way; picture.go has the others.

func (l *leaf) predictionPictures(c *planing.Case, key string) []Drawing {
	say := predictionSay(c)
	return drawnOnly(
		drawing("Engine power over speed", chart.EnginePower(c, key)).says(say.power),
		drawing("Trim over speed, predicted and measured", chart.TrimSpeed(c, key)).says(say.trim),
		drawing("Resistance over speed", chart.Resistance(c, key)).says(say.drag),
		drawing("Wetted length over speed", chart.WettedLength(c, key)).says(say.wetted),
	)
}

func drawnOnly(all ...Drawing) []Drawing {
	var out []Drawing
	for _, d := range all {
		if d.SVG != "" {
			out = append(out, d)
		}
	}
	return out
}

func (l *leaf) exceedancePicture(r *ride.Ride) Drawing {
	return drawing("Part of the impacts above each size", chart.Exceedance(r)).says(l.peaksSay(r))
}

func (l *leaf) limitsPicture() Drawing {
	return drawing("Speed over wave height at which each level is reached", chart.Limits(l.dossier.Limits)).says(l.seasSay())
}

func (l *leaf) hoursPicture() Drawing {
	return drawing("Running hours, looks, and how hard the boat was hit", chart.Hours(&l.dossier.Hours)).says(loggedSays(&l.dossier.Hours))
}

func (l *leaf) boundPicture(p *running.Promise) Drawing {
	return drawing("Boats without a crack, at least, by running hours", chart.Bound(p, p.Record.ID)).says(boundSays(&l.dossier.Hours, p))
}
