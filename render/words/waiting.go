package words

import "pappus/layout/prose"

// Waiting says that another run is at work on a file or a folder, and this one waits for it.
func Waiting(path string) string {
	return "Another run is at work on " + prose.Path(path) + "; this one goes on when that is done. Ctrl-C ends it."
}
