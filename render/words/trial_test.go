package words_test

import (
	"testing"

	"pappus/render/words"
	"pappus/timing/trial"
	"pappus/timing/verdict"
)

// TestTrial: what was found is said with how often that is wrong, and where nothing was found
// what may be there all the same.
func TestTrial(t *testing.T) {
	table := trial.Table{
		{Of: "dead string", What: trial.Missed, Count: trial.Count{Cases: 20, Times: 3}},
		{Of: "channel 3 dB loud", What: trial.Missed, Count: trial.Count{Cases: 20, Times: 8}},
		{Of: "reversed channel", What: trial.Missed, Count: trial.Count{Cases: 20}},
		{Of: "late", What: trial.FalseAlarm, Count: trial.Count{Cases: 480, Times: 11}},
		{Of: "silent", What: trial.FalseAlarm, Count: trial.Count{Cases: 480}},
		{Of: "too odd to say", What: trial.FalseAlarm, Count: trial.Count{Cases: 480}},
	}
	all := new(verdict.Channels)
	for _, test := range []struct {
		name  string
		found verdict.Found
		table trial.Table
		want  string
	}{
		{"two faults", verdict.Found{Channels: all, Faults: []verdict.Fact{{Code: verdict.Late}, {Code: verdict.Silent}, {Code: verdict.Silent}}}, table,
			"Of up to 480 made-up loudspeakers, in rooms with noise, echoes and a microphone placed by hand, a channel of which that was not true was called late in 2 of 100 (1 to 5) and silent in none of 100 (0 to 1); in brackets is the 95 percent interval, which so many cases leave open."},
		{"none", verdict.Found{Channels: all}, table,
			"No fault was found, which does not exclude all: of made-up ones were missed: channel 3 dB loud in 40 of 100 (22 to 62), dead string in 15 of 100 (5 to 37); in brackets is the 95 percent interval, which so many cases leave open. Of up to 20 each of these none was: reversed channel."},
		{"none ever missed", verdict.Found{Channels: all}, table[2:], "Of up to 20 made-up loudspeakers with each kind of fault none was missed."},
		{"a fault of a recording", verdict.Found{Channels: all, Faults: []verdict.Fact{{Code: verdict.Unusable}}}, table, ""},
		{"not recorded one by one", verdict.Found{}, table, ""},
		{"no table", verdict.Found{Channels: all}, nil, ""},
	} {
		if got := words.Trial(test.found, test.table); got != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
	if verdict.Trial().Of("reversed channel", trial.Missed).Cases == 0 {
		t.Error("the table beside the verdicts tells nothing of reversed channels")
	}
}
