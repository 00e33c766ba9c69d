package planjson

import "pappus/timing"

// strung is a split that no other beats in both smear and level.
type strung struct {
	Longest   int    `json:"longest_string"`
	Smear     number `json:"smear_us"`
	CombOnset number `json:"comb_onset_hz"`
	Louder    number `json:"louder_db"`
	Volt      number `json:"driver_v"`
	Limit     string `json:"limited_by"`
	LeastOhm  number `json:"least_ohm"`
	Most      int    `json:"most_drivers"`
	InStep    bool   `json:"in_step"`
	Rule      bool   `json:"rule"`
	Chosen    bool   `json:"chosen"`
}

func frontOf(p *timing.Plan) []strung {
	out := []strung{}
	for _, f := range p.Front {
		out = append(out, strung{f.Longest, us(f.Smear), to(1, f.CombOnset), db(f.Louder), to(4, f.DriverVolt), f.Limit(),
			to(3, f.LeastOhm), f.Most, f.InStep, f.Rule, f.Chosen})
	}
	return out
}
