package planjson

import "pappus/timing"

// ball is what stands for the body in the sphere model.
type ball struct {
	Radius number `json:"radius_mm"`
	X      number `json:"x_mm"`
	Y      number `json:"y_mm"`
	Z      number `json:"z_mm"`
}

func ballOf(p *timing.Plan) ball {
	b := p.Array.Body
	return ball{mm(b.BallRadius), mm(b.BallCentre.X), mm(b.BallCentre.Y), mm(b.BallCentre.Z)}
}

// levelError is how far the level of one driver can be off because of that.
type levelError struct {
	Band []number `json:"octave_hz"`
	DB   []number `json:"db"`
}

func levelErrorOf(p *timing.Plan) levelError {
	octaves, dB := p.LevelErrors()
	return levelError{all(2, octaves), all(3, dB)}
}
