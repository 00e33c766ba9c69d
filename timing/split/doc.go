// Package split sorts arrivals into groups that share one delay.
//
// The best split of numbers on a line into K groups by squared residual is
// always a split of the sorted list, and dynamic programming finds it exactly
// (W. D. Fisher, "On grouping for maximum homogeneity", J. Am. Stat. Assoc. 53
// (1958) 789). The cost obeys the quadrangle inequality, so each row of the
// table is filled by divide and conquer in n log n steps (F. F. Yao, SIAM J.
// Alg. Disc. Meth. 3 (1982) 532).
package split
