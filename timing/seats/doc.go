// Package seats sorts drivers into channels and delays them so that one set serves several
// seats.
package seats
