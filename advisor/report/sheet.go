package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// Sheet writes the work sheet for the bench: what must not be done yet, then
// every look and every piece of work in working order, each with its cautions,
// the number by which it is recorded and room for initials. The questions of
// the book are needed for what can be answered.
func Sheet(a *advisor.Advice, b *advisor.Book) string {
	p := &sheet{page: page{a: a}, book: b, opened: map[string][]*advisor.InspectionAdvice{}}
	p.sheetHead()
	p.stops()
	p.order = p.inOrder()
	p.placeLooks()
	for _, phase := range advisor.Phases {
		p.phase(phase)
	}
	p.undecided()
	p.shut()
	p.footer()
	return p.b.String()
}

// sheet gathers a work sheet.
type sheet struct {
	page
	book   *advisor.Book
	order  []*advisor.OperationAdvice
	opened map[string][]*advisor.InspectionAdvice // looks by the operation that opens them last
	listed map[string]bool                        // looks that are on the sheet
}

// phaseTitle says the phases of the work.
var phaseTitle = map[string]string{"make_safe": "Make safe", "look": "Look", "strip": "Open up", "repair": "Repair",
	"refit": "Put back", "wake": "Wake", "test": "Test"}

// whoDoes says who does what the shop does not.
var whoDoes = map[string]string{"sent_out": "sent out", "owner": "the owner does it", "licensed": "licensed trade only"}

func (p *sheet) sheetHead() {
	c := p.a.Case
	p.line("Work sheet: %s", c.Name)
	p.para("", "  ", fmt.Sprintf("job %s, %s", c.ID, longDay(c.Date, 0, p.a.Settings.Locale)))
	file := c.ID + ".toml --sheet " + p.book.Edition()
	p.para("", "", "Initials go behind each box. Into the job they go by their numbers:")
	p.line("  longstand record %s done:NUMBER", file)
	p.line("  longstand record %s NUMBER=ANSWER", file)
}

// stops lists in short what must not be done yet.
func (p *sheet) stops() {
	if len(p.a.Holds) > 0 {
		p.title("Do not, until")
		p.untils()
	}
}

func (p *sheet) phase(phase string) {
	shown := false
	show := func() {
		if !shown {
			p.title(phaseTitle[phase])
			shown = true
		}
	}
	for _, k := range p.looksOf(phase) {
		show()
		p.look(k)
	}
	for _, o := range p.order {
		if o.Phase != phase {
			continue
		}
		show()
		p.work(o)
		for _, k := range p.opened[o.ID] {
			p.look(k)
		}
	}
}

// looksOf are the looks that nothing has to be opened for: at the start of the
// looking, by where one stands; the first start when the car is woken.
func (p *sheet) looksOf(phase string) []*advisor.InspectionAdvice {
	var out []*advisor.InspectionAdvice
	for i := range p.a.Inspections {
		k := &p.a.Inspections[i]
		when := "look"
		if k.FirstStart {
			when = "test"
		}
		if k.Advised && !p.listed[k.ID] && when == phase && len(k.Bundle) == 0 {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(x, y *advisor.InspectionAdvice) int {
		return cmp.Compare(slices.Index(advisor.Stations, x.Where), slices.Index(advisor.Stations, y.Where))
	})
	return out
}

// work prints one piece of work with its box.
func (p *sheet) work(o *advisor.OperationAdvice) {
	head := fmt.Sprintf("%s (%s", o.Name, Hours(o.MinutesUsual))
	for _, more := range []string{variant(o), whoDoes[o.Who]} {
		if more != "" {
			head += ", " + more
		}
	}
	p.box(p.book.Box(o.ID), head+")")
	if o.Overruled != nil {
		p.para("      ", "      ", fmt.Sprintf("Set by %s: %s", o.Overruled.By, advisor.Sentence(o.Overruled.Why)))
	}
	p.cautions(o.Cautions, "      ")
}

// variant names the way of doing the work; one not known to be it is the
// dearest still possible.
func variant(o *advisor.OperationAdvice) string {
	if o.VariantOpen {
		return "reckoned as the dearest way still possible: " + o.Variant
	}
	return o.Variant
}

// box prints a line with its number in front and room for initials behind.
func (p *sheet) box(number int, words string) {
	const room = " ......"
	text := wrap(words, fmt.Sprintf("[%3d] ", number), "      ", width-len(room))
	body := strings.TrimSuffix(text, "\n")
	last := body[strings.LastIndex(body, "\n")+1:]
	p.line("%s%s%s", body, strings.Repeat(" ", max(0, width-len(room)-runes(last))), room)
}
