package words_test

import (
	"testing"

	"pappus/render/words"
)

func TestWaiting(t *testing.T) {
	const want = `Another run is at work on 'my plan'; this one goes on when that is done. Ctrl-C ends it.`
	if got := words.Waiting("my plan"); got != want {
		t.Errorf("%s", got)
	}
}
