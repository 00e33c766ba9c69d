// Package console plays cases one after another, or as a blind test, as single keys say:
// on a terminal without waiting for the end of a line, else the letters of what is piped
// in. Nobody who has not heard X for half a second in a try of a blind test can answer.
package console
