package engine

import "longstand/advisor"

// Cautions lists the safety notes of some hazards as they apply to a case, for
// whoever is about to look at the car. Not known counts as applying.
func (e *Engine) Cautions(c *advisor.Case, hazards []string) []advisor.CautionAdvice {
	s := situation{reading: e.read(c, false), c: c}
	return s.cautions(e.cautionsOf(hazards))
}
