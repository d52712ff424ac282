package reckon

import "fmt"

// PedalReserve gives how much of a brake pedal's travel is left in %, from its
// height over the floor free and pressed, both in one unit (free above 0 to
// 400, pressed 0 to free). 20 % or more is called for.
//
// Source: 49 CFR 570.55(c); RCW 46.37.360.
func PedalReserve(free, pressed float64) (float64, error) {
	if err := firstOf(
		within("free pedal height", free, 0, 400, ""),
		within("pressed pedal height", pressed, 0, 400, ""),
	); err != nil {
		return 0, err
	}
	if free == 0 || pressed > free {
		return 0, fmt.Errorf("a pedal %s high when free cannot stand at %s when pressed", plain(free), plain(pressed))
	}
	return 100 * pressed / free, nil
}
