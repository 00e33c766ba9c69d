// Package sorting says which drivers go into which string, so that all of them do as much alike
// as can be.
//
// In series the current is one. To first order, with z the logarithm of a driver's impedance
// and t that of its velocity for an ampere, both over a nominal driver's and complex, a driver in
// a string of mean z gives, over the mean of all,
//
//	e = t - mean(z of its string) - mean(e)
//
// which is the logarithm of what it adds at the spot, and of how far its cone moves. Drivers
// whose impedances rise together with their velocities (near the resonance) so belong
// together, whereas those that differ in resistance alone make their whole string loud or
// quiet, and are better mixed. Nobody need say which counts more: what is minimised is
//
//	cost = sum of a abs(e)2, mean over the frequencies,  a = (1/n + w)/2
//
// half of it over all n drivers alike, for the loads, and half by what each place weighs at
// the spot, w, which sum to 1. Spares are chosen by the same cost.
//
// Drivers are put in order along the direction in which they differ most (the first principal
// component; I. T. Jolliffe, Principal Component Analysis, 2nd ed., 2002), dealt out to
// strings, and pairs are swapped, spares with them, as long as that lowers the cost (pairwise
// interchange: a two-exchange as in S. Lin, Bell Syst. Tech. J. 44 (1965) 2245). Other starts
// guard against poor ends; the lowest cost counts.
package sorting
