package report

import "longstand/advisor"

// waitsFor is the danger that must be known before the money on an operation is
// firm, in words, or "": the structure comes before the engine.
func (l *letter) waitsFor(operation string) string {
	if id := waitsIn(l.a, operation); id != "" {
		return l.danger(id)
	}
	return ""
}

// waitsIn is the id of that danger, or "".
func waitsIn(a *advisor.Advice, operation string) string {
	for i := range a.Total.Lines {
		if n := &a.Total.Lines[i]; n.Operation == operation && n.Waits != "" {
			return n.Waits
		}
	}
	return ""
}

// waiting is the mean money, before tax, of all work that is advised and waits,
// and the danger that it waits for; 0 and "" when nothing does.
func (l *letter) waiting() (sum int64, danger string) {
	for i := range l.a.Total.Lines {
		if n := &l.a.Total.Lines[i]; n.Waits != "" {
			sum += n.Mean
			danger = l.danger(n.Waits)
		}
	}
	return sum, danger
}

func (l *letter) danger(suspect string) string {
	if k := l.a.Suspect(suspect); k != nil {
		return l.name(k.Name)
	}
	return suspect
}

// firmNow parts operations that are advised into those agreed today and those
// whose money waits.
func (l *letter) firmNow(ops []*advisor.OperationAdvice) (now, waits []*advisor.OperationAdvice) {
	for _, o := range ops {
		if l.waitsFor(o.ID) != "" {
			waits = append(waits, o)
		} else {
			now = append(now, o)
		}
	}
	return now, waits
}

// toAgree is the sum to agree today, before the owner's own limit is looked at.
func (l *letter) toAgree() int64 { return wholeTaxed(l.a.Total.Firm, l.a.Settings) }

// tooMuch says that the work advised passes the sum at which the owner said to
// stop, or "".
func (l *letter) tooMuch() string {
	if stop, ok := named(l.a.Case, "stop_sum"); ok && stop < l.toAgree() {
		return l.say("terms.over", with{"Stop": inFull(stop, l.a.Settings), "Sum": l.taxed(l.a.Total.Firm)})
	}
	return ""
}

// doneAlready names the work that the case records as done, whose money is in
// no sum of the letter.
func (l *letter) doneAlready() []string {
	var done []string
	for i := range l.a.Operations {
		if o := &l.a.Operations[i]; o.Call == advisor.Leave && o.Forced == "done" {
			done = append(done, l.name(o.Name))
		}
	}
	return done
}
