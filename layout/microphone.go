package layout

import "pappus/layout/csvtable"

// microphoneColumns are those of a microphone's correction.
var microphoneColumns = []csvtable.Column{{Name: "frequency_hz", Low: 1, High: 100000}, {Name: "level_db", Low: -100, High: 100}}

// MicrophonePoint is one line of a microphone's correction.
type MicrophonePoint struct {
	Frequency float64 // Hz
	Level     float64 // dB by which the microphone reads too high
}

// ReadMicrophone reads a microphone's correction from a file: a CSV table of frequency in
// Hz, rising, and by how many dB the microphone reads too high there, below the line
// frequency_hz,level_db. Any error is a *design.Error that names the file, and the line
// where one is to blame.
func ReadMicrophone(path string) ([]MicrophonePoint, error) {
	return readTable(path, parseMicrophone)
}

// parseMicrophone reads the table.
func parseMicrophone(path string, data []byte) ([]MicrophonePoint, error) {
	return rising(csvtable.Table{File: path, Columns: microphoneColumns}, data, func(v []float64) MicrophonePoint {
		return MicrophonePoint{v[0], v[1]}
	})
}
