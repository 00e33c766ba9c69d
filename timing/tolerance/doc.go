// Package tolerance is what drivers that are not alike do to a plan before any is bought: many
// lots are drawn, each driver with values of its own, and heard in the plan.
//
// Where no more than limits are known, values are taken to be spread evenly between them
// (JCGM 100:2008, 4.3.7). Of fs and sensitivity data sheets promise some 10 to 15 percent and
// 1 to 2 dB (common practice). Draws are plain ones, so that what is said of percentiles needs no
// more than counting: among so many lots, how many lie below a percentile is binomial, and the
// order statistics about it bound it (H. A. David and H. N. Nagaraja, Order Statistics, 3rd ed.,
// 7.1). Latin hypercubes help means; of percentiles in hundreds of dimensions they say no more
// and bound nothing.
//
// A lot hangs on the seed and its number alone, and each cause by itself has the very draws
// that it has among all: results are the same to the bit on any number of cores.
package tolerance
