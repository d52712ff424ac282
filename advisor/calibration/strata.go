package calibration

// Stratum is a group of suspects that were alike before anyone looked: how many
// there were, how many were looked at, and of those how many were there.
type Stratum struct{ All, Looked, There int }

// Corrected is the share of what was there, among all, if in each stratum what
// was not looked at is like what was looked at: C. B. Begg and R. A. Greenes,
// Biometrics 39 (1983) 207-215. Counting only what was looked at overstates it,
// since one looks where one suspects. Strata in which nobody looked say
// nothing; covered is how many of all are in the others.
func Corrected(strata []Stratum) (share float64, covered int) {
	there := 0.0
	for _, s := range strata {
		if s.Looked > 0 {
			covered += s.All
			there += float64(s.All) * float64(s.There) / float64(s.Looked)
		}
	}
	if covered == 0 {
		return 0, 0
	}
	return there / float64(covered), covered
}
