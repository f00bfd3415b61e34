package site

import "hullfile/engine/record"

// Names of the machine copies by which files are compared.
const (
	ResultsPath = resultsName
	ValuesPath  = tablesFolder + valuesName + ".csv"
)

// Copies gives the machine copies of a hull, results.json and values.csv, without writing its file.
// An error is a fault of the program, in its templates or its own tables.
func Copies(job Job, h *record.Hull) (results, values []byte, err error) {
	press, err := newPress(job)
	if err != nil {
		return nil, nil, err
	}
	b := newBook(press, job.open(h, newShelf(job.Yard)), nil)
	if results, err = b.machineText(nil); err != nil {
		return nil, nil, err
	}
	return results, b.valueTable().text(), nil
}
