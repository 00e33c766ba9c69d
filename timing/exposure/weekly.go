package exposure

// Listener is for whom an allowance for listening in one's free time is made.
type Listener int8

// The listeners of ITU-T H.870.
const (
	Adult Listener = iota
	Child          // and whoever else is sensitive
)

// weeklyHours is how long in a week each listener's level may last.
const weeklyHours = 40.0

// Level returns the level in dBA that a listener may hear for 40 hours a week: 80 for adults, 75
// for children (Recommendation ITU-T H.870 (2018), Guidelines for safe listening devices and
// systems, clause on the standard and the sensitive mode: 1.6 and 0.51 Pa2h in seven days; from
// memory).
func (l Listener) Level() float64 { return [...]float64{80, 75}[l] }

// Weekly returns for how many hours a week a listener may hear a level in dBA, if there is no
// other sound: 40 h / 2^((level-Level)/3), an equal energy for each. It is NaN for a level that
// is no number, 0 above 140 dBA.
func (l Listener) Weekly(level float64) float64 { return lasting(weeklyHours, l.Level(), level) }
