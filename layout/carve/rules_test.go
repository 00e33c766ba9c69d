package carve_test

import (
	"pappus/layout/carve"
	"pappus/layout/poly"
)

// union returns what is in any of some solids.
func union(meshes ...poly.Mesh) (poly.Mesh, error) {
	return carve.Combine(func(in []bool) bool {
		for _, i := range in {
			if i {
				return true
			}
		}
		return false
	}, meshes...)
}

// difference returns what of a solid is in none of others.
func difference(from poly.Mesh, others ...poly.Mesh) (poly.Mesh, error) {
	return carve.Combine(func(in []bool) bool {
		for _, i := range in[1:] {
			if i {
				return false
			}
		}
		return in[0]
	}, append([]poly.Mesh{from}, others...)...)
}

// intersection returns what is in all of some solids.
func intersection(meshes ...poly.Mesh) (poly.Mesh, error) {
	return carve.Combine(func(in []bool) bool {
		for _, i := range in {
			if !i {
				return false
			}
		}
		return true
	}, meshes...)
}
