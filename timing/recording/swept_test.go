package recording

import (
	"testing"

	"pappus/testdata/trialtable"
)

// swept are constants that sweeps.csv has at other places, too.
var swept = map[string]float64{
	"faded": faded, "evened": float64(evened), "overload": overload, "over": float64(over), "overFloor": float64(overFloor),
	"wide": float64(wide), "gapShort": gapShort, "driftMost": driftMost, "levelMost": levelMost, "levelTold": levelTold,
	"wholeShare": wholeShare, "leastShare": leastShare, "honestSNR": honestSNR, "noiseFrom": noiseFrom, "noiseTo": noiseTo,
	"noiseWidth": float64(noiseWidth), "steep": float64(steep), "clipMost": float64(clipMost), "crest": crest, "sure": sure,
	"faint": faint, "leadWaves": float64(leadWaves), "near": near,
}

// TestSwept: none of them is better at another place, beyond chance.
func TestSwept(t *testing.T) { trialtable.Swept(t, "sweeps.csv", swept) }
