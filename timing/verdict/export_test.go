package verdict

import (
	"sync"

	"pappus/timing/recording"
	"pappus/timing/sweep"
)

// What tests ask errors for.
var (
	ErrMeasured = errMeasured
)

// Keep has each recording analysed once, and the mean of several once.
func Keep() {
	type one struct {
		mean recording.Measured
		each []recording.Measured
		errs []error
	}
	var kept sync.Map
	mean = func(takes []recording.Take, s sweep.Sweep, o recording.Options) (recording.Measured, []recording.Measured, []error) {
		key := &takes[0].Samples[0]
		if len(takes) > 1 {
			return recording.Mean(takes, s, o)
		}
		if v, ok := kept.Load(key); ok {
			was := v.(one)
			return was.mean, was.each, was.errs
		}
		var now one
		now.mean, now.each, now.errs = recording.Mean(takes, s, o)
		kept.Store(key, now)
		return now.mean, now.each, now.errs
	}
	analyse = func(take recording.Take, s sweep.Sweep, o recording.Options) (recording.Measured, error) {
		m, _, errs := mean([]recording.Take{take}, s, o)
		return m, errs[0]
	}
}
