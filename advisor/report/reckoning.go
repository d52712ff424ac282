package report

import (
	"fmt"
	"math"
	"strconv"

	"longstand/advisor"
)

// Reckoning shows how each sum of the advice came about, line by line, to the
// minor unit: hours x factor x rate + parts, the chance, the totals and both
// ranges. Every figure is the record's own.
func Reckoning(a *advisor.Advice) string {
	p := &reckoner{page: page{a: a}}
	p.heading()
	p.how()
	for _, k := range []struct{ kind, title string }{{"firm", "Firm work"}, {"look", "Looks advised"}, {"maybe", "May be needed"}, {"risk", "May go wrong in the work"}} {
		p.lines(k.kind, k.title)
	}
	p.totals()
	p.footer()
	return p.b.String()
}

type reckoner struct{ page }

// how says once what the lines below do.
func (p *reckoner) how() {
	s := p.a.Settings
	p.title("How it is reckoned")
	p.para("", "", fmt.Sprintf("An hour is %s. Three figures are: 1 in 10 is less, usual, 1 in 10 is more; their mean is .3, .4 and .3 of them. "+
		"Hours are taken times the factor for rusted fixings, here %s unless the work has none to free. Each amount is rounded to the minor unit; no tax is in it.",
		p.exact(s.Rate), decimal(p.a.HoursFactor)))
}

func (p *reckoner) lines(kind, title string) {
	shown := false
	for i := range p.a.Total.Lines {
		l := &p.a.Total.Lines[i]
		if l.Kind != kind {
			continue
		}
		if !shown {
			p.title(title)
			shown = true
		}
		p.para("* ", "  ", fmt.Sprintf("%s (%s)", l.Name, l.Operation))
		p.came(l)
		p.counts(l)
	}
}

// came shows from what a line's mean is made.
func (p *reckoner) came(l *advisor.Line) {
	s := l.Sum
	if s == nil {
		if l.Kind == "look" {
			p.row(fmt.Sprintf("%d min of the shop at %s an hour", l.Minutes, p.exact(p.a.Settings.Rate)), l.Mean)
		}
		return
	}
	if s.Labour.High > 0 {
		p.row(fmt.Sprintf("hours %s, mean %s, x %s x %s", p.hours(s.Hours),
			decimal(s.HoursMean), decimal(s.Factor), p.exact(p.a.Settings.Rate)), s.Labour.Mean)
	}
	if s.Parts.High > 0 {
		p.row(fmt.Sprintf("parts %s, mean", p.three(s.Parts.Low, s.Parts.Usual, s.Parts.High)), s.Parts.Mean)
	}
	if s.Saved != 0 {
		p.row("less: other work has it open", -s.Saved)
	}
}

// counts shows what a line counts for, and how far it may stray.
func (p *reckoner) counts(l *advisor.Line) {
	switch {
	case l.Kind == "risk":
		p.row("costs, if so", l.Mean)
	case l.Low == l.High && l.Sum != nil:
		p.row("in all", l.Mean)
	case l.Low != l.High:
		p.row(fmt.Sprintf("in all %s, mean", p.three(l.Low, l.Usual, l.High)), l.Mean)
	}
	if l.Chance < 1 {
		p.row("x its chance "+decimal(l.Chance), l.Expected)
	}
	if l.Deviation >= 0.5 {
		p.row("standard deviation", int64(math.Round(l.Deviation)))
	}
}

// totals adds up, and shows how both ranges come about.
func (p *reckoner) totals() {
	t := &p.a.Total
	p.title("Added up")
	p.row(fmt.Sprintf("firm work and looks, of which looks %s", p.exact(t.Looking)), t.Firm)
	p.row("what may be needed or go wrong, each by its chance", t.Maybe)
	p.row("likely", t.Likely)
	p.para("", "", "Eight jobs in ten end within 1.2816 standard deviations of the likely sum. "+
		"The low end is never under that of firm work and looks alone: what may be needed costs no less than nothing.")
	p.span("each line varies by itself (root of the sum of squares)", t.FirmSpread.Independent, t.Spread.Independent, t.Independent)
	p.span("all lines vary together (deviations added)", t.FirmSpread.Dependent, t.Spread.Dependent, t.Dependent)
	tax := int64(float64(t.Likely)*p.a.Settings.Tax + 0.5)
	p.row(fmt.Sprintf("tax on the likely sum at %s per cent", decimal(p.a.Settings.Tax*100)), tax)
	p.row("likely, with tax", t.Likely+tax)
}

func (p *reckoner) span(how string, firm, all float64, r advisor.Range) {
	p.line("If %s:", how)
	p.row("standard deviation of firm work and looks", int64(math.Round(firm)))
	p.row("standard deviation of all", int64(math.Round(all)))
	p.row("1 in 10 ends under", r.Low)
	p.row("1 in 10 ends over", r.High)
}

// row sets words at the left and an amount at the right edge of the page.
func (p *reckoner) row(words string, minor int64) {
	amount := p.exact(minor)
	if runes(words)+runes(amount)+6 > width {
		p.line("    %s", words)
		words = ""
	}
	p.line("    %s%*s", words, width-4-runes(words), amount)
}

func (p *reckoner) three(low, usual, high int64) string {
	return fmt.Sprintf("%s / %s / %s", p.exact(low), p.exact(usual), p.exact(high))
}

func (p *reckoner) hours(t advisor.Three) string {
	return fmt.Sprintf("%s / %s / %s", decimal(t.Low), decimal(t.Usual), decimal(t.High))
}

// exact writes an amount to the minor unit.
func (p *reckoner) exact(minor int64) string {
	n := p.a.Settings.MinorDigits
	unit := int64(math.Pow10(n))
	text := signed(digits(float64(abs(minor))/float64(unit), n, p.a.Settings.Locale), p.a.Settings)
	if minor < 0 {
		return "-" + text
	}
	return text
}

// decimal writes a number with up to four decimals, none of them idle.
func decimal(x float64) string { return strconv.FormatFloat(four(x), 'f', -1, 64) }
