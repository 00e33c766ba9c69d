package words

import (
	"fmt"
	"math"
	"strconv"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/prose"
	"pappus/timing/loom"
)

// KitSteps is the order of work that makes a body of a kit's parts.
func KitSteps(a *layout.Array, m kit.Made) []string {
	vents := m.Vents.Count > 0
	steps := []string{
		"Print seat-test first, and try a driver and its screws in it. Then print plate after plate, kit-plate-1.3mf and so on, with four lines round and as good as solid: walls that breathe are leaks. Supports go where kit.csv has overhang. " + Small,
		prose.Sprintf("Clear edges, threads and holes. Try two segments that meet%s: they go together by hand. Where they bind or rattle, change kit.gap_mm (%.2g mm now) and print these anew before the rest.", only(vents, ", and a lid on its vent"), 1e3*a.Kit.Gap),
		joining(a, m),
	}
	if len(m.Ground.Outline) > 0 {
		steps = append(steps, flooring(a, m))
	} else {
		steps = append(steps, "Fit the gland, "+Outlet(a, m)+".")
	}
	if vents {
		steps = append(steps, "Vents: weigh the fibre for each cartridge on a letter scale, tease it apart, put it in evenly up to the end, and screw the lid on: loose fibre moves and hisses. Screw cartridges in from outside, by hand, with a little grease on the thread.")
	}
	steps = append(steps, seating(a), closed(m),
		"Find leaks: "+only(vents, "tape the vents over, and ")+"press one cone in gently with a finger beside its cap, for ten seconds. The others move out and stay out; where they sink back, look for light through seams from inside, and seal them with glue.",
		only(vents, "Take the tape off. ")+"Measure each channel's impedance: the Q that it reads is what all this is for.")
	return steps
}

// only returns words that are said only where something is so.
func only(is bool, text string) string {
	if !is {
		return ""
	}
	return text
}

// joining says how segments become a shell.
func joining(a *layout.Array, m kit.Made) string {
	if !prints(m, "segment-1") {
		return "The shell is printed in one: F^ inside is in front, and each mount has its number."
	}
	text := "Lay segments out by the numbers inside: S1^ and so on are their own, the arrow up, F^ in front, and at each joint stands its neighbour's. "
	text += goingOn(m)
	if a.Kit.Joint == kit.Flange {
		return text + "Put filament dowels and a seal or glue in, and screw flange to flange by M3, all loosely first, tight once all are in."
	}
	return text + "Tongues lie inside of the wall of those that come after. Dowels of filament and glue in the groove, then the screws of 2.2 mm from inside: they hold while the glue sets. Try the ring dry before you glue it; wear gloves with epoxy, and air the room."
}

// goingOn says in which order segments go together, and from where.
func goingOn(m kit.Made) string {
	text := "Go by the numbers, from segment-1 on: each goes onto those before it in one straight line from outside. From where, as an azimuth from the front to the left and an elevation, and by how much it may lean, stands in kit.csv and in the table of segments below"
	least, name := math.Inf(1), ""
	for _, p := range m.Parts {
		if _, _, ok := p.From(); ok && p.Lean < least {
			least, name = p.Lean, p.Name
		}
	}
	switch degrees := math.Floor(least * 180 / math.Pi); {
	case name == "":
	case degrees < 1:
		text += "; one that may not lean, such as " + name + ", slides in along an edge"
	default:
		text += "; " + name + " must go the straightest, within " + prose.Count(int(degrees), "degree", "degrees")
	}
	return text + ". "
}

// prints tells whether a part is in a kit.
func prints(m kit.Made, name string) bool {
	for _, p := range m.Parts {
		if p.Name == name {
			return true
		}
	}
	return false
}

// flooring says how the floor is made.
func flooring(a *layout.Array, m kit.Made) string {
	text := "Floor: "
	if m.Ground.Sectors > 1 {
		text += "join its parts, F1 to the next, glue between them and screws of 2.2 mm from above through the strips. "
	}
	if len(m.Ground.Feet) > 0 {
		text += "Screw the feet on from above by M3. "
	}
	return text + "Fit the gland, " + Outlet(a, m) + "." + asideOf(m) + borne(a)
}

// borne says what bears a body that does not stand on its floor; nothing of one that does.
func borne(a *layout.Array) string {
	if a.On != layout.OnCeiling && a.On != layout.OnWall {
		return ""
	}
	return " Feet keep the floor off the " + a.On + " and bear nothing, and the shell hangs from the floor by screws in plastic: fix the floor through holes of its own, with wide washers inside, and lead a second line from the shell, not from the floor, to what bears it alone. Have somebody qualified see both."
}

// asideOf says by how much wires to the terminals are to be longer where the gland is off the axis,
// which wiring.pdf takes it to be on; nothing where that is less than wires are cut to.
func asideOf(m kit.Made) string {
	if m.Ground.Gland == nil {
		return ""
	}
	aside := math.Hypot(m.Ground.Gland.X, m.Ground.Gland.Y)
	if aside < loom.Step {
		return ""
	}
	return fmt.Sprintf(" It is %.0f mm off the middle, where wiring.pdf has the terminals: cut red and black wires %.0f mm longer than it says.", 1e3*aside, 10*math.Ceil(1e2*aside))
}

// seating says how drivers come in.
func seating(a *layout.Array) string {
	if a.Kit.Mounting == kit.Rear {
		return "Drivers: put them in from the rear, before the floor is on, each with a gasket where it has none. All wiring is in wiring.pdf."
	}
	return "Drivers: put them in from outside, strings joined before, each with a gasket where it has none; screws just tight, plastic strips. All wiring is in wiring.pdf, and which mount is which is cut inside."
}

// closed says how the body is closed.
func closed(m kit.Made) string {
	text := "Put the stuffing in, off coils and cones" + only(m.Vents.Count > 0, ", not over vents")
	if len(m.Ground.Outline) == 0 {
		return text + ", before the last driver."
	}
	return text + ". Stick the foam strip on the ledge without a gap where its ends meet, and screw the floor on from below, a little at each screw in turn, until the foam is half as thick." + bareLedge(m.Ground.Bare)
}

// bareLedge says what to do where low drivers leave no room for the floor's ledge.
func bareLedge(drivers []int) string {
	if len(drivers) == 0 {
		return ""
	}
	var ids []string
	for _, id := range drivers {
		ids = append(ids, strconv.Itoa(id))
	}
	return prose.Sprintf(" Behind %s %s there is no ledge, since the driver is in its place: lay a second piece of foam on the floor there, against the wall, or air leaks past its edge.",
		prose.Noun(len(ids), "driver", "drivers"), prose.Each(ids))
}
