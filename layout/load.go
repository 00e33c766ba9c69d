package layout

import (
	"fmt"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/wiring"
)

// checkLoad returns an error where the amplifier may not even drive all drivers in
// one string, so that no channel can be wired. Channels laid out by hand, and the
// counting on a channel for each driver, are warned of instead.
func checkLoad(d *design.Design, a *Array) error {
	n := len(a.Mounts)
	if d.Wiring.Channels == 0 || len(d.Channels) > 0 {
		return nil
	}
	one := wiring.Arrangement{{Series: n, Parallel: 1}}
	if one.Check(a.Driver.LeastOhm(), a.Wiring.MinimumLoad) == nil {
		return nil
	}
	return fault(d, "wiring.minimum_load_ohm", fmt.Sprint(d.Wiring.MinimumLoadOhm), prose.Sprintf(
		"%s of %.3g ohm in one string load the amplifier with %.3g ohm, and no other way with more; must be at most that, and only if the amplifier allows it: else take more drivers, or some of more ohm",
		prose.Count(n, "driver", "drivers"), a.Driver.LeastOhm(), one.Load(a.Driver.LeastOhm())), wiring.ErrLoad)
}
