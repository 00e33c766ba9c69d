package timing

import "pappus/layout/advice"

// warn adds a finding to those of the plan.
func (plan *Plan) warn(f advice.Finding) { plan.Warnings = append(plan.Warnings, f) }
