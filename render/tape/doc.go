// Package tape says where people sit and walk as they would measure it: with a tape
// along the floor, a height, an angle, and whose left is meant. The straight line
// through the air, which the sound takes, is no length that a tape finds.
package tape
