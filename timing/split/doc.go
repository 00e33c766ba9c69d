// Package split sorts arrivals into groups that share one delay.
//
// The best split of numbers on a line into K groups by squared residual is
// always a split of the sorted list, and dynamic programming finds it exactly
// (W. D. Fisher, "On grouping for maximum homogeneity", J. Am. Stat. Assoc. 53
// (1958) 789). The cost obeys the quadrangle inequality, so each row of the
// table is filled by divide and conquer in n log n steps (F. F. Yao, SIAM J.
// Alg. Disc. Meth. 3 (1982) 532).
//
// It still holds where groups need at least so many members: take the cost of one
// that is too small for infinite. Where some larger size will not do it no longer
// holds, and the table is filled in full, for each size that will do. With equal
// weights the best split is one of the sorted list still: to swap two members that
// stand the wrong way round keeps all sizes and never raises the cost. With unequal
// weights and few sizes to choose from a split that is not of the sorted list can
// now and then be better by a little; it is not looked for.
package split
