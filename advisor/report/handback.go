package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// Handback writes the page that goes with the car when it leaves: what was
// done, what was declined, what is left and until when, what the owner does,
// and which stops stand.
func Handback(a *advisor.Advice) string { return handback(&page{a: a}) }

// HandbackMarkdown is Handback in Markdown.
func HandbackMarkdown(a *advisor.Advice) string { return handback(&page{a: a, markdown: true}) }

func handback(p *page) string {
	c := p.a.Case
	p.head("Handed back: " + c.Name)
	p.para("", "  ", fmt.Sprintf("job %s, %s", c.ID, longDay(c.Date, 0, p.a.Settings.Locale)))
	p.stopsLeft()
	p.decided("Done", c.Done, "Nothing is recorded as done.")
	p.decided("Declined", c.Declined, "")
	p.byCall("Yours to do", func(o *advisor.OperationAdvice) bool { return o.Who == "owner" && doing(o.Call) },
		func(o *advisor.OperationAdvice) string { return advisor.Sentence(o.Reason) })
	p.byCall("Advised, and not done", func(o *advisor.OperationAdvice) bool { return o.Who != "owner" && doing(o.Call) && !o.Access }, plainly)
	p.byCall("Not decided: to be looked at first", func(o *advisor.OperationAdvice) bool { return o.Call == advisor.LookFirst && !o.Access }, plainly)
	p.byCall("Left, and what to watch", func(o *advisor.OperationAdvice) bool {
		return o.Call == advisor.Leave && !o.Access && o.Until != "" && o.ContainedIn == "" && o.Forced != "done" && o.Forced != "declined"
	}, func(o *advisor.OperationAdvice) string { return until(o.Until) })
	p.footer()
	return p.b.String()
}

func doing(c advisor.Call) bool { return c == advisor.Do || c == advisor.DoOpen }

// stopsLeft says which stops go with the car; with one on the road it leaves on
// a trailer.
func (p *page) stopsLeft() {
	p.title("Stops that stand")
	if len(p.a.Holds) == 0 {
		p.para("", "", "None: nothing in the rules holds it back. The road test is its driver's own.")
		return
	}
	stopped, held := p.everyStop(), ""
	if slices.Contains(stopped, acts["road"]) || slices.Contains(stopped, acts["driven"]) {
		held = " It leaves on a trailer."
	}
	p.para("", "", "Not yet: "+strings.Join(stopped, "; ")+"."+held)
	p.stopsThat("", func(h *advisor.HoldAdvice) bool { return h.When == advisor.True })
	p.stopsThat("These stand too, until it is known whether they apply:", func(h *advisor.HoldAdvice) bool { return h.When != advisor.True })
}

// everyStop names every act that a hold stops, the road first.
func (p *page) everyStop() (out []string) {
	for _, act := range slices.Backward(advisor.Acts) {
		if slices.ContainsFunc(p.a.Holds, func(h advisor.HoldAdvice) bool { return slices.Contains(h.Stops, act) }) {
			out = append(out, acts[act])
		}
	}
	return out
}

// stopsThat lists the holds that are so, each by itself, the road first.
func (p *page) stopsThat(title string, is func(*advisor.HoldAdvice) bool) {
	for _, act := range slices.Backward(advisor.Acts) {
		for i := range p.a.Holds {
			h := &p.a.Holds[i]
			if !is(h) || leading(h.Stops) != act {
				continue
			}
			if title != "" {
				p.para("", "", title)
				title = ""
			}
			p.para("  - ", "    ", fmt.Sprintf("DO NOT %s UNTIL %s.", acts[act], strings.TrimSuffix(h.Name, ".")))
		}
	}
}

// plainly is the reason of a call without what counts as sound, which is for
// the workshop, and with how often it is needed while that is not known.
func plainly(o *advisor.OperationAdvice) string {
	reason, _, _ := strings.Cut(o.Reason, "Counts as sound:")
	reason = advisor.Sentence(strings.TrimSpace(reason))
	if p := maybeChance(o); o.Call == advisor.LookFirst && p > 0 {
		reason += " Needed on " + Chance(p) + " cars like this."
	}
	return reason
}

// decided lists decisions with who, when and the remark.
func (p *page) decided(title string, list []advisor.Decision, none string) {
	if len(list) == 0 && none == "" {
		return
	}
	p.title(title)
	if len(list) == 0 {
		p.para("", "", none)
	}
	for i := range list {
		d := &list[i]
		words := p.name(d.Operation)
		if d.Date != "" {
			words += ", " + longDay(d.Date[:len("2006-01-02")], 0, p.a.Settings.Locale)
		}
		if d.By != "" {
			words += ", " + d.By
		}
		p.para("  - ", "    ", words+".")
		if d.Note != "" {
			p.para("    ", "    ", advisor.Sentence(d.Note))
		}
		if o := p.a.Operation(d.Operation); o != nil && o.Forced == "declined" {
			p.para("    ", "    ", advisor.Sentence(o.Reason))
		}
	}
}

// byCall lists the operations that are so, with a few words on each.
func (p *page) byCall(title string, is func(*advisor.OperationAdvice) bool, words func(*advisor.OperationAdvice) string) {
	shown := false
	for i := range p.a.Operations {
		o := &p.a.Operations[i]
		if !is(o) {
			continue
		}
		if !shown {
			p.title(title)
			shown = true
		}
		p.para("  - ", "    ", o.Name+": "+words(o))
	}
}
