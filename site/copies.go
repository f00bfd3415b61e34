package site

import (
	"hullfile/engine/record"

	"hullfile/site/results"
)

// Names of the machine copies by which files are compared.
const (
	ResultsPath = results.Name
	ValuesPath  = tablesFolder + valuesName + ".csv"
)

// Copies gives the machine copies of a hull, results.json and values.csv, without writing its file.
// An error is a fault of the program, in its templates or its own tables.
func Copies(job Job, h *record.Hull) (machine, values []byte, err error) {
	press, err := newPress(job)
	if err != nil {
		return nil, nil, err
	}
	b := newBook(press, job.open(h, newShelf(job.Yard)), nil)
	if machine, err = b.machineText(nil); err != nil {
		return nil, nil, err
	}
	return machine, b.valueTable().text(), nil
}

// results writes results.json.
func (b *book) results() error {
	text, err := b.machineText(b.press.rooms.take(usualResults))
	defer func() { b.press.rooms.back(text) }()
	if err != nil {
		return err
	}
	return b.folder.write(results.Name, text)
}

// machineText gives the text of results.json, written into a slice with nothing in it.
func (b *book) machineText(out []byte) ([]byte, error) {
	return results.Text(out, results.Of{Dossier: b.dossier, Hull: b.hull, Version: b.press.job.Version, Findings: b.findings, Counts: tellKinds(b.findings)})
}
