package site

import (
	"hullfile/engine/planing"
	"hullfile/engine/ride"
	"hullfile/engine/running"
	"hullfile/site/chart"
)

// Pictures of the boat under way; picture.go has the others.

func (l *leaf) predictionPictures(c *planing.Case, key string) []Drawing {
	return drawnOnly(
		drawing("Engine power over speed", chart.EnginePower(c, key)),
		drawing("Trim over speed, predicted and measured", chart.TrimSpeed(c, key)),
		drawing("Resistance over speed", chart.Resistance(c, key)),
		drawing("Wetted length over speed", chart.WettedLength(c, key)),
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
	return drawing("Speed over wave height at which each level is reached", chart.Limits(l.dossier.Limits))
}

func (l *leaf) hoursPicture() Drawing {
	return drawing("Running hours, looks, and how hard the boat was hit", chart.Hours(&l.dossier.Hours))
}

func (l *leaf) boundPicture(p *running.Promise) Drawing {
	return drawing("Boats without a crack, at least, by running hours", chart.Bound(p, p.Record.ID))
}
