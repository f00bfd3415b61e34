package site

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/tracklog"
)

// trackContents lays the pages of logs, manoeuvres and runs out below the trials.
func (b *book) trackContents(above *section) {
	names := slugs{}
	page1 := func(subject, title, stem, kind string, body func(*leaf) (any, error)) {
		path := "trials/" + names.take(stem) + ".html"
		b.tracks[subject] = path
		below(above, title, path, kind, body)
	}
	logs := &b.dossier.Logs
	for i := range logs.Logs {
		log := &logs.Logs[i]
		if !log.Present || log.Report.Samples == 0 {
			continue
		}
		page1(log.Subject(), "Log "+log.Record.ID+" of trial "+log.Trial.ID, log.Trial.ID+"-log-"+log.Record.ID, "track",
			page(func(l *leaf) (TrackPage, error) { return l.trackPage(log) }))
	}
	if moves := b.moves(); moves.any() {
		page1("manoeuvres", "Manoeuvres", "manoeuvres", "moves", page(func(l *leaf) (MovesPage, error) { return l.movesPage(moves) }))
	}
	for i := range logs.Runs {
		run := &logs.Runs[i]
		if run.Window == nil || run.Window.Samples == 0 {
			continue
		}
		page1(run.Subject(), "Run "+run.Record.ID+" of trial "+run.Trial.ID, run.Trial.ID+"-run-"+run.Record.ID, "run",
			page(func(l *leaf) (RunPage, error) { return l.runPage(run) }))
	}
}

// trackSubjects are the subjects that these pages show.
func (b *book) trackSubjects(add func(subject, path, anchor string)) {
	logs := &b.dossier.Logs
	for i := range logs.Logs {
		b.trackSubject(add, logs.Logs[i].Subject())
	}
	for i := range logs.Runs {
		b.trackSubject(add, logs.Runs[i].Subject())
	}
	for _, m := range b.moves().subjects() {
		if path, has := b.tracks["manoeuvres"]; has {
			add(m, path, b.anchors.take(strings.ReplaceAll(m, " ", "-")))
		}
	}
}

func (b *book) trackSubject(add func(subject, path, anchor string), subject string) {
	if path, has := b.tracks[subject]; has {
		add(subject, path, "")
	}
}

// trackDisciplines says which page works out what logs and manoeuvres are checked for.
func (b *book) trackDisciplines(of func(path string, checks []finding.Check, findings []finding.Finding)) {
	of(trialsPath, b.dossier.Logs.Checks, b.dossier.Logs.Findings)
	of(trialsPath, nil, b.dossier.Moves.Findings)
}

// logs copies the logs that were read into the book. A log that changed since would make the pages untrue.
func (b *book) logs() error {
	root := b.press.job.Root
	for i := range b.dossier.Logs.Logs {
		log := &b.dossier.Logs.Logs[i]
		if log.Out == "" || root == nil {
			continue
		}
		if !strings.HasPrefix(log.Out, "logs/") {
			return fmt.Errorf("log %s: %q is not in the folder logs", log.Record.ID, log.Out)
		}
		if err := b.copyLog(log); err != nil {
			return fmt.Errorf("log %s: %w", log.Record.ID, err)
		}
	}
	return nil
}

func (b *book) copyLog(log *tracklog.Log) error {
	from, err := b.press.job.Root.Open(log.Path)
	if err != nil {
		return err
	}
	defer from.Close()
	hash, err := b.folder.take(log.Out, from)
	if err == nil && log.SHA256 != "" && !strings.EqualFold(hash, log.SHA256) {
		return fmt.Errorf("%s changed while it was being copied; run again", log.Path)
	}
	return err
}
