package reckon

import "fmt"

// CylinderShare gives the lowest compression in % of the highest, both in one
// unit (0 to 800). It errs when the highest is nothing, or under the lowest.
// The rule of this name calls cylinders alike from 75 %. Two more rules are
// published and can disagree with it: CylinderLag, and a spread of 10 psi (TM
// 10-3930-618-20, 2-12, one engine); whoever shows a result says which was used.
//
// Source: TM 5-4210-230-14&P-1, engine addendum 2.
func CylinderShare(lowest, highest float64) (float64, error) {
	if err := cylinders(lowest, highest, "highest compression"); err != nil {
		return 0, err
	}
	return 100 * lowest / highest, nil
}

// CylinderLag gives by how many % the lowest compression lies under the mean
// of all, both in one unit (0 to 800). It errs when the mean is nothing, or
// under the lowest. The rule of this name asks for a look from 20 %.
//
// Source: TM 1-1500-204-23-1 (aircraft practice).
func CylinderLag(lowest, mean float64) (float64, error) {
	if err := cylinders(lowest, mean, "mean compression"); err != nil {
		return 0, err
	}
	return 100 * (mean - lowest) / mean, nil
}

// cylinders guards the lowest compression and the figure that it is held to.
func cylinders(lowest, other float64, name string) error {
	if err := firstOf(
		within("lowest compression", lowest, 0, 800, ""),
		within(name, other, 0, 800, ""),
	); err != nil {
		return err
	}
	switch {
	case other == 0:
		return fmt.Errorf("no cylinder moved the gauge: look at the gauge and the cranking first")
	case lowest > other:
		return fmt.Errorf("the lowest compression %s cannot lie over the %s %s", plain(lowest), name, plain(other))
	}
	return nil
}

// LeakDown gives the loss in % from the pressure put into a cylinder (10 to
// 200) and the pressure that it holds (0 to that), both in one unit. Past 25 %
// on a warm engine, 60 held of 80, aircraft practice looks inside; makers accept
// other figures.
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
