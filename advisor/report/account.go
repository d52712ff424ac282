package report

import (
	"fmt"
	"math"

	"longstand/advisor"
	"longstand/advisor/calibration"
)

// Account is what closed cases say of the forecasts and of the estimates.
type Account struct {
	Read     int // closed cases that count
	Open     int // cases that are not closed
	Late     int // closed cases without a frozen forecast
	Books    int // different books by which the forecasts were made
	Orphans  int // findings of suspects of which the forecast says nothing
	Forecast calibration.Account
	Work     []AccountWork // in order of id
	Hours    calibration.Hours
	Bare     int // hours noted without an estimate
}

// AccountWork is what closed cases say of one operation's hours.
type AccountWork struct {
	ID, Name string
	calibration.Hours
}

// enough is how many must have been found, and how many sound, before an
// account may move a figure of the book: common practice, no source.
const enough = 30

// AccountText writes the account for a terminal.
func AccountText(a *Account, s *advisor.Settings) string { return accountOf(&page{}, a, s) }

// AccountMarkdown writes the account in Markdown.
func AccountMarkdown(a *Account, s *advisor.Settings) string {
	return accountOf(&page{markdown: true}, a, s)
}

func accountOf(p *page, a *Account, s *advisor.Settings) string {
	p.head("Account of closed cases")
	p.para("", "", fmt.Sprintf("%s counted, their forecasts made by %s as frozen, never reckoned again.", many(a.Read, "closed case"), many(a.Books, "book")))
	for _, n := range []struct {
		n    int
		what string
	}{{a.Open, "not closed, and not counted"}, {a.Late, "closed without a frozen forecast: their hours alone count"}, {a.Orphans, "found of suspects of which the forecast says nothing"}} {
		if n.n > 0 {
			p.para("- ", "  ", fmt.Sprintf("%d %s", n.n, n.what))
		}
	}
	f := &a.Forecast
	p.title("Forecast, and what was found")
	if f.Settled == 0 {
		p.para("", "", "No suspect was looked at: there is nothing to count.")
	} else {
		p.bands(f)
		p.parts(&f.Score, s)
		p.bias(f)
	}
	p.hoursAccount(a, s)
	return p.b.String()
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// inHundred is a share in words, to the whole number in 100.
func inHundred(p float64) string { return fmt.Sprintf("%.0f", 100*p) }

// bands lists what was found by bands of forecast.
func (p *page) bands(f *calibration.Account) {
	p.para("", "", fmt.Sprintf("%s forecast: %d looked at and settled (%d found, %d sound), %d looked at in vain, %d not looked at. "+
		"By forecast, with the bounds between which the true share lies 19 times in 20:", many(f.Settled+f.Vain+f.Unlooked, "suspect"), f.Settled, f.There, f.Settled-f.There, f.Vain, f.Unlooked))
	for i := range f.Rows {
		r := &f.Rows[i]
		if r.All == 0 {
			continue
		}
		words := fmt.Sprintf("%s in 100: %d of %d looked at", inBand(r.Band), r.Looked, r.All)
		if r.Looked > 0 {
			words += fmt.Sprintf("; found %d, and the forecast meant %.1f; share %s to %s in 100%s",
				r.There, r.Mean*float64(r.Looked), inHundred(r.From), inHundred(r.To), verdicts[r.Verdict()])
		}
		p.para("- ", "  ", words)
	}
}

func inBand(b calibration.Band) string {
	switch {
	case b.Low == 0:
		return "under " + inHundred(b.High)
	case b.High == 1:
		return inHundred(b.Low) + " or more"
	}
	return inHundred(b.Low) + " to " + inHundred(b.High)
}

var verdicts = map[int]string{-1: ": there more often than forecast", 0: "", 1: ": there more seldom than forecast"}

// parts gives the mean square of what the forecasts were off, and its parts.
func (p *page) parts(s *calibration.Score, set *advisor.Settings) {
	three := func(x float64) string { return digits(x+0, 3, set.Locale) }
	p.gap()
	p.para("", "", fmt.Sprintf("Mean square of what the forecasts were off (Brier): %s; 0 is perfect, and saying 1 in 2 of everything gives %s. "+
		"It is reliability %s (less is better) less resolution %s (more is better) and uncertainty %s of the thing itself, %s within bands. "+
		"The forecasts take %s in 100 of the uncertainty away.",
		three(s.Brier), three(0.25), three(s.Reliability), three(s.Resolution), three(s.Uncertainty), three(zero(s.Within)), inHundred(zero(s.Skill()))))
}

// zero keeps a figure that rounds to nothing from being written as -0.
func zero(x float64) float64 {
	if math.Abs(x) < 0.0005 {
		return 0
	}
	return x
}

// bias says what counting only what was looked at does to the figures.
func (p *page) bias(f *calibration.Account) {
	p.gap()
	p.sub("Read with care:")
	p.para("- ", "  ", fmt.Sprintf("Only what was looked at is counted, and one looks where one suspects: forecast on average on %s in 100 of those settled, on %s in 100 of the others. "+
		"Now and then look at something that nothing speaks for.", inHundred(f.MeanSettled), inHundred(f.MeanRest)))
	if f.Covered > 0 {
		p.para("- ", "  ", fmt.Sprintf("Of those settled %s in 100 were there. If in each band those not looked at are like those that were, it is %s in 100 of %s, and the forecasts meant %s in 100. "+
			"Where few of a band were looked at this is unsteady; bands in which nobody looked are left out.",
			inHundred(float64(f.There)/float64(f.Settled)), inHundred(f.Corrected), many(f.Covered, "suspect"), inHundred(f.Meant)))
	}
	p.para("- ", "  ", "Suspects of one car are not independent of one another; the bounds take them as if they were, and are too close.")
	if f.There < enough || f.Settled-f.There < enough {
		p.para("- ", "  ", fmt.Sprintf("Change no figure of the book yet: %d were found and %d sound, and %d of each is the least that can tell.", f.There, f.Settled-f.There, enough))
	}
}

// hoursAccount compares hours with estimates.
func (p *page) hoursAccount(a *Account, s *advisor.Settings) {
	if a.Hours.N+a.Bare == 0 {
		return
	}
	p.title("Hours taken, and the estimate")
	if a.Bare > 0 {
		p.para("", "", fmt.Sprintf("%d noted without an estimate, and not counted.", a.Bare))
	}
	if a.Hours.N == 0 {
		return
	}
	h := &a.Hours
	low, high := calibration.Interval(h.Within, h.N, calibration.Sure)
	p.para("", "", fmt.Sprintf("Of %s %d took what was estimated, %d less and %d more. 8 in 10 are meant to; the true share lies between %s and %s in 100, 19 times in 20.",
		many(h.N, "operation"), h.Within, h.Below, h.Above, inHundred(low), inHundred(high)))
	for i := range a.Work {
		w := &a.Work[i]
		p.para("- ", "  ", w.Name+": "+workWords(w, s.Locale))
	}
}

// workWords says how the hours of one operation compare with its estimates.
func workWords(w *AccountWork, locale string) string {
	two := func(x float64) string { return digits(x, 2, locale) }
	if w.N > 1 {
		return fmt.Sprintf("%d times, %s of the usual hours in the middle (%s to %s); %d as estimated, %d less, %d more",
			w.N, two(w.Ratio), two(w.Low), two(w.High), w.Within, w.Below, w.Above)
	}
	as := "as estimated"
	if w.Below > 0 {
		as = "less than estimated"
	} else if w.Above > 0 {
		as = "more than estimated"
	}
	return fmt.Sprintf("once, %s of the usual hours, %s", two(w.Ratio), as)
}
