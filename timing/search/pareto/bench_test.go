package pareto

import (
	"fmt"
	"slices"
	"testing"
)

func BenchmarkLayers(b *testing.B) {
	for aims := 3; aims <= 5; aims++ {
		for _, thick := range []float64{0, 0.1, 10} {
			points := continuous(100_000, aims, thick, 1)
			b.Run(fmt.Sprintf("%d aims, thick %v", aims, thick), func(b *testing.B) {
				for b.Loop() {
					Layers(points)
				}
			})
		}
	}
}

func BenchmarkHypervolume(b *testing.B) {
	for aims := 2; aims <= 5; aims++ {
		for _, n := range []int{100, 400} {
			points := continuous(n, aims, 0, 1)
			b.Run(fmt.Sprintf("%d aims, %d points", aims, n), func(b *testing.B) {
				for b.Loop() {
					Hypervolume(points, slices.Repeat([]float64{1.1}, aims))
				}
			})
		}
	}
}

func BenchmarkPick(b *testing.B) {
	for aims := 3; aims <= 5; aims++ {
		points := continuous(1000, aims, 0, 1)
		b.Run(fmt.Sprintf("%d aims", aims), func(b *testing.B) {
			for b.Loop() {
				Pick(points, 10)
			}
		})
	}
}
