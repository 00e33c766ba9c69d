package boundary

// Choices is exported for tests.
type Choices = choices

// Choices are those of a solver, for tests that change one.
func (s *Solver) Choices() *choices { return &s.choices }

// NoTurns takes a solver's symmetry away.
func (s *Solver) NoTurns() { s.turn = s.turn[:1] }

// Turns is how many turns a solver has found.
func (s *Solver) Turns() int { return len(s.turn) }

// Nodes is how many nodes a solution has.
func (x *Pressure) Nodes() int { return len(x.mesh.at) }

// Rounds is how many times the equations were multiplied.
func (x *Pressure) Rounds() int { return x.rounds }

// Rougher is the mesh that tells how far a solver's is off, at most the second times what it changes.
func (s *Solver) Rougher() (*Solver, float64) { return s.rougher(), roughness }
