package design

// Build is what building takes beside the driver and the print.
type Build struct {
	Spares       float64  // of the drivers that are built in: 0.05 is one more for twenty
	Slack        float64  // m of wire left over at each joint
	InnerSection float64  // m2 of copper, of the wire inside
	WirePrice    *float64 // of a metre of it; nil: not known
	JointTime    float64  // s to strip, solder, sleeve and test one joint
	DriverTime   float64  // s to put one driver in
}

// Part is one more row of the bill of parts: screws, terminals, a hook, varnish.
type Part struct {
	Name  string
	Count int      // for all bodies together
	Price *float64 // of one; nil: not known
	Mass  float64  // kg of one; 0: not known, or not part of the loudspeaker
	Time  float64  // s of work for one
}

// maxParts is the most rows that a design may add to its bill.
const maxParts = 200
