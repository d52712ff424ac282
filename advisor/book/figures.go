package book

import (
	"math"
	"strconv"
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// maxOf is the largest number of cars that a count may speak of.
const maxOf = 100_000

// countSlot is "3 of 10".
type countSlot struct{ to *advisor.Count }

func counted(to *advisor.Count) slot { return countSlot{to} }

func (s countSlot) form() form { return form{Type: asCount} }

func (s countSlot) read(d *decoder, f *tomltext.Field) {
	left, right, found := strings.Cut(f.Value.Str, " of ")
	n, err := strconv.Atoi(strings.TrimSpace(left))
	of, err2 := strconv.Atoi(strings.TrimSpace(right))
	switch {
	case f.Value.Kind != tomltext.String || !found || err != nil || err2 != nil:
		d.list.Errorf(f.Value.Span, "wrong-kind", "%s is so many of so many, and this is %s", f.Key, f.Value.Raw()).Help = countHelp(f.Value.Raw())
	case of < 1 || of > maxOf || n < 0 || n > of:
		d.list.Errorf(f.Value.Span, "out-of-range", "%q cannot be counted", f.Value.Str).Help = "at least 0 of the cars, at most all of them, and at least 1 car"
	default:
		*s.to = advisor.Count{N: n, Of: of}
	}
}

// countHelp says how a count is written; a percentage of whole tens is counted out.
func countHelp(raw string) string {
	if tens, ok := strings.CutSuffix(strings.Trim(raw, `"' `), "0%"); ok && len(tens) == 1 && tens[0] >= '0' && tens[0] <= '9' {
		return `a percentage does not say of how many cars; write "` + tens + ` of 10" if that is what was seen`
	}
	return `write "3 of 10"`
}

// threeSlot is three figures: 1 in 10 is less, usual, 1 in 10 is more.
type threeSlot struct {
	to  *advisor.Three
	ptr **advisor.Three // instead of to, when it may be absent
	max float64
}

// The most hours and money that one operation may take: enough to catch a
// slipped decimal point, and low enough that sums stay within their bounds.
const (
	maxHours = 1000
	maxMoney = 100_000
)

func hours(to *advisor.Three) slot { return threeSlot{to: to, max: maxHours} }
func parts(to *advisor.Three) slot { return threeSlot{to: to, max: maxMoney} }

func ownHours(to **advisor.Three) slot { return threeSlot{ptr: to, max: maxHours} }
func ownParts(to **advisor.Three) slot { return threeSlot{ptr: to, max: maxMoney} }

func (s threeSlot) form() form { return form{Type: asFigures} }

func (s threeSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Array || len(f.Value.Items) != 3 {
		d.list.Errorf(f.Value.Span, "wrong-kind", "%s are three figures", f.Key).Help = "write [1 in 10 is less, usual, 1 in 10 is more], as [1, 1.5, 3]"
		return
	}
	var x [3]float64
	for i, n := range f.Value.Items {
		v, ok := d.number(n, f.Key, 0, s.max)
		if !ok {
			return
		}
		x[i] = v
	}
	if x[0] > x[1] || x[1] > x[2] {
		d.list.Errorf(f.Value.Span, "not-increasing", "the three figures of %s do not increase", f.Key).Help = "less, usual, more"
	}
	three := advisor.Three{Low: x[0], Usual: x[1], High: x[2]}
	if s.ptr != nil {
		*s.ptr = &three
	} else {
		*s.to = three
	}
}

// moneySlot is a sum in units of the currency, kept in minor units.
type moneySlot struct{ to *int64 }

func money(to *int64) slot { return moneySlot{to} }

func (s moneySlot) form() form { return form{Type: asNumber} }

func (s moneySlot) read(d *decoder, f *tomltext.Field) {
	if x, ok := d.number(f.Value, f.Key, 0, maxMoney); ok {
		*s.to = int64(math.Round(x * d.minor))
	}
}

// shareSlot is a decimal written as a number or, to keep it exact, in quotes.
type shareSlot struct {
	to        *float64
	low, high float64
}

func share(to *float64, low, high float64) slot { return shareSlot{to, low, high} }

func (s shareSlot) form() form { return form{Type: asDecimal} }

func (s shareSlot) read(d *decoder, f *tomltext.Field) {
	x, err := strconv.ParseFloat(decimalText(f.Value), 64)
	if err != nil || !(s.low <= x && x <= s.high) {
		e := d.list.Errorf(f.Value.Span, "out-of-range", "%s is a number from %s to %s", f.Key, plain(s.low), plain(s.high))
		if of, err := strconv.ParseFloat(strings.TrimRight(decimalText(f.Value), " %"), 64); err == nil && s.high == 1 && 1 < of && of <= 100 {
			e.Help = plain(of) + " in a hundred is written " + plain(of/100)
		}
		return
	}
	*s.to = x
}

// decimalText is a number as written, with or without quotes; "" for anything else.
func decimalText(n *tomltext.Node) string {
	switch n.Kind {
	case tomltext.String:
		return n.Str
	case tomltext.Integer, tomltext.Float:
		return n.Raw()
	}
	return ""
}

// price reads a decimal as an exact ratio, or reports false: from 0.01 to 100
// with at most four decimals.
func price(decimal string) (advisor.Price, bool) {
	left, right, _ := strings.Cut(decimal, ".")
	den := int64(1)
	for range right {
		den *= 10
	}
	num, err := strconv.ParseInt(left+right, 10, 64)
	if err != nil || len(right) > 4 || num*100 < den || num > 100*den || strings.ContainsAny(decimal, "+-_") {
		return advisor.Price{}, false
	}
	common := gcd(num, den)
	return advisor.Price{Num: num / common, Den: den / common}, true
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
