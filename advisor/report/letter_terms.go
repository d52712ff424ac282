package report

import (
	"fmt"
	"math"
	"slices"

	"longstand/advisor"
)

// terms are what the estimate holds for, and what the shop answers for.
func (l *letter) terms() section {
	v := with{"Date": l.day(0), "Until": l.day(l.a.Settings.GoodForDays), "Days": l.a.Settings.GoodForDays}
	items := []string{l.say("terms.good", v), l.ring()}
	agree := l.toAgree()
	if stop, ok := named(l.a.Case, "stop_sum"); ok {
		items = append(items, l.say("terms.stop", with{"Sum": inFull(stop, l.a.Settings)}))
		agree = min(agree, stop)
	}
	if sum, danger := l.waiting(); sum > 0 {
		items = append(items, l.say("terms.waits", with{"Sum": l.taxed(sum), "Fault": danger}))
	}
	if factor := l.a.HoursFactor; factor > 1 {
		items = append(items, l.say("terms.rust", with{"Factor": l.number2(factor)}))
	}
	return section{ID: "terms", Title: l.say("title.terms", nil), Shape: sideShape, Blocks: []block{
		{Kind: listBlock, Items: items},
		{Kind: paraBlock, Text: l.say("answer_for", nil)},
		l.signing(l.say("agree", with{"Sum": inFull(agree, l.a.Settings)}))}}
}

// signing is a sentence to sign and date.
func (l *letter) signing(text string) block {
	return block{Kind: signingBlock, Text: text, Items: []string{l.say("sign.name", nil), l.say("sign.date", nil)}}
}

// ring says before which sum the owner is rung: the one asked for, at which work
// stops, or the shop's share of the sum agreed, which is a word on the way to it.
func (l *letter) ring() string {
	if sum, ok := named(l.a.Case, "ring_sum"); ok {
		return l.say("terms.ring", with{"Sum": inFull(sum, l.a.Settings)})
	}
	at := wholeTaxed(int64(float64(l.a.Total.Firm)*l.a.Settings.RingAt+0.5), l.a.Settings)
	if stop, ok := named(l.a.Case, "stop_sum"); ok && stop <= at {
		return l.say("terms.ring", with{"Sum": inFull(stop, l.a.Settings)})
	}
	if l.a.Settings.RingAt >= 1 {
		return l.say("terms.ring", with{"Sum": inFull(at, l.a.Settings)})
	}
	return l.say("terms.ring_share", with{"Sum": inFull(at, l.a.Settings), "Agree": l.taxed(l.a.Total.Firm)})
}

// named is a sum of money that the owner named, in whole units and with tax, as
// people pay it.
func named(c *advisor.Case, question string) (int64, bool) {
	for i := range c.Answers {
		an := &c.Answers[i]
		if an.Question == question && an.Value.State == advisor.Told {
			return int64(an.Value.Low + 0.5), true
		}
	}
	return 0, false
}

// inFull writes a sum that is in whole units.
func inFull(units int64, s *advisor.Settings) string {
	return Money(units*int64(math.Pow10(s.MinorDigits)), s)
}

// refused gives a danger that the owner declined its sentence to sign.
func (l *letter) refused() section {
	s := section{ID: "declined", Title: l.say("title.declined", nil), Shape: sideShape}
	for i := range l.a.Case.Declined {
		o := l.a.Operation(l.a.Case.Declined[i].Operation)
		if o == nil {
			continue
		}
		for _, id := range o.Suspects {
			k := l.a.Suspect(id)
			if k == nil || k.Danger == "" || k.Looked == advisor.True {
				continue
			}
			s.Blocks = append(s.Blocks, l.signing(l.say("declined", with{
				"Work": l.name(o.Name), "Fault": l.name(k.Name), "Because": l.book(k.Because), "Bad": k.Looked == advisor.False})))
			break
		}
	}
	return s
}

// leaves asks for leave to drive it on trial, to send work out, to photograph.
func (l *letter) leaves() section {
	sent := 0
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if (o.Who == "sent_out" || o.Who == "licensed") && o.Call != advisor.Leave && o.Call != advisor.NotFitted {
			sent++
		}
	}
	s := section{ID: "leaves", Title: l.say("title.leaves", nil), Shape: sideShape}
	for _, what := range []string{"road", "outside", "photographs"} {
		s.Blocks = append(s.Blocks, block{Kind: answersBlock, Text: l.say("leave."+what, with{"Count": sent}),
			Items: []string{l.say("leave.yes", nil), l.say("leave.no", nil)}})
	}
	return s
}

// atHome are the hazards that an owner can meet where the car stands; the rest
// are on the work sheet, for those who do the work.
var atHome = []string{"fuel_vapour", "battery_gas", "acid", "under_car", "old_tyres", "glycol", "brake_fluid", "rodents", "mould", "carbon_monoxide"}

// cautionList gives, once each, the safety notes that reach an owner.
func (l *letter) cautionList() section {
	s := section{ID: "cautions", Title: l.say("title.cautions", nil)}
	said := map[string]bool{}
	var items []string
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		if o.Call == advisor.NotFitted || o.Call == advisor.Leave {
			continue
		}
		for _, c := range o.Cautions {
			if said[c.ID] || o.Who != "owner" && !slices.Contains(atHome, c.Hazard) {
				continue
			}
			said[c.ID] = true
			items = append(items, l.say("caution", with{"Text": l.book(c.Text), "Defers": l.book(c.Defers)}))
		}
	}
	if len(items) > 0 {
		s.Blocks = []block{{Kind: paraBlock, Text: l.say("cautions.line", nil)}, {Kind: listBlock, Items: items}}
	}
	return s
}

// remarks are the plain lines that every page must show, and the closing one.
func (l *letter) remarks() section {
	s := section{ID: "remarks", Title: l.say("title.remarks", nil), Shape: sideShape}
	var items []string
	for i := range l.a.Conflicts {
		items = append(items, l.say("remark.conflict", with{"Text": advisor.Sentence(l.a.Conflicts[i].Text)}))
	}
	for _, n := range l.a.Notes {
		items = append(items, l.book(n))
	}
	if n := len(l.a.HouseRules); n > 0 {
		items = append(items, l.say("remark.house", with{"Count": fmt.Sprint(n)}))
	}
	if len(items) > 0 {
		s.Blocks = append(s.Blocks, block{Kind: listBlock, Items: items})
	}
	s.Blocks = append(s.Blocks, block{Kind: paraBlock, Text: Closing})
	return s
}
