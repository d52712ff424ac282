package reckon

import "fmt"

// BalanceRule is a published way to say whether cylinders are alike.
type BalanceRule int

// The three rules; they can disagree, so a result says which was used.
const (
	LowestOfHighest BalanceRule = iota // lowest at least 75 % of highest
	BelowAverage                       // none 20 % or more below the average
	WithinTen                          // all within 10 psi (one engine's manual)
)

// LeakDownLook is the loss in % on a warm engine past which AC 43.13-1B calls
// for a look inside: 60 held of 80. Makers accept other figures.
//
// Source: FAA AC 43.13-1B, 8-14 (aircraft practice).
const LeakDownLook = 25.0

// Balance is what a rule says of a set of readings: the figure that it takes
// from them, the limit, whether they are alike, the number of the lowest
// cylinder from 1, and the rule in words with its source.
type Balance struct {
	Rule         BalanceRule
	Value, Limit float64
	Unit         string
	Alike        bool
	Lowest       int
	Words        string
	Source       string
}

// CylinderBalance judges compressions in psi (0 to 700) of 2 to 16 cylinders
// by one rule. It errs when all are zero.
//
// Source: TM 5-4210-230-14&P-1, engine addendum 2 (75 %);
// TM 1-1500-204-23-1 (20 %); TM 10-3930-618-20, 2-12 (10 psi).
func CylinderBalance(rule BalanceRule, psi []float64) (Balance, error) {
	if err := within("number of cylinders", float64(len(psi)), 2, 16, ""); err != nil {
		return Balance{}, err
	}
	low, high, sum, lowest := psi[0], psi[0], 0.0, 1
	for i, p := range psi {
		if err := within("compression", p, 0, 700, "psi"); err != nil {
			return Balance{}, err
		}
		if p < low {
			low, lowest = p, i+1
		}
		high, sum = max(high, p), sum+p
	}
	if high == 0 {
		return Balance{}, fmt.Errorf("no cylinder moved the gauge: look at the gauge and the cranking first")
	}
	b := Balance{Rule: rule, Lowest: lowest}
	switch rule {
	case LowestOfHighest:
		b.Value, b.Limit, b.Unit = 100*low/high, 75, "%"
		b.Alike = b.Value >= b.Limit
		b.Words, b.Source = "lowest at least 75 % of the highest", "TM 5-4210-230-14&P-1, engine addendum 2"
	case BelowAverage:
		average := sum / float64(len(psi))
		b.Value, b.Limit, b.Unit = 100*(average-low)/average, 20, "%"
		b.Alike = b.Value < b.Limit
		b.Words, b.Source = "none 20 % below the average", "TM 1-1500-204-23-1 (aircraft)"
	case WithinTen:
		b.Value, b.Limit, b.Unit = high-low, 10, "psi"
		b.Alike = b.Value <= b.Limit
		b.Words, b.Source = "all within 10 psi", "TM 10-3930-618-20, 2-12 (one engine)"
	default:
		return Balance{}, fmt.Errorf("there is no rule %d for comparing cylinders", int(rule))
	}
	return b, nil
}

// LeakDown gives the loss in % from the pressure put into a cylinder (10 to
// 200) and the pressure that it holds (0 to that), both in one unit.
//
// Source: FAA AC 43.13-1B, 8-14.
func LeakDown(in, held float64) (float64, error) {
	if err := firstOf(
		within("pressure put in", in, 10, 200, ""),
		within("pressure held", held, 0, 200, ""),
	); err != nil {
		return 0, err
	}
	if held > in {
		return 0, fmt.Errorf("a cylinder cannot hold %s of %s put in", plain(held), plain(in))
	}
	return 100 * (in - held) / in, nil
}
