package main

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/report"
)

// houseItem is one item that a house layer added or adjusted.
type houseItem struct{ kind, id, layer string }

// ofNoCar are the kinds of items that say nothing of a car by themselves: what
// reads or says them does.
var ofNoCar = []string{"derived", "route", "caution", "once_over"}

// houseItems lists what house layers brought into a book, by kind and id.
func houseItems(b *advisor.Book) (out []houseItem) {
	for _, it := range b.Items() {
		if it.Layer != "" && !slices.Contains(ofNoCar, it.Kind) {
			out = append(out, houseItem{it.Kind, it.ID, it.Layer})
		}
	}
	return out
}

// says tells in words what an item does to one car, and whether it took part
// there: a rule took part when it acts, a sign when it is known, a suspect when
// it applies, a hold when it stands, work and looks when they are advised.
func (h houseItem) says(a *advisor.Advice) (words string, tookPart bool) {
	switch h.kind {
	case "suspect":
		if k := a.Suspect(h.id); k != nil {
			return report.Chance(k.Chance), true
		}
		return "does not apply to this car", false
	case "sign":
		return h.signSays(a)
	case "inspection":
		if l := a.Inspection(h.id); l != nil {
			return lookSays(l)
		}
		return "has nothing to tell on this car", false
	case "operation":
		if o := a.Operation(h.id); o != nil {
			return string(o.Call), o.InScope
		}
	case "standing":
		return h.ruleSays(a)
	case "hold":
		if o := a.Hold(h.id); o != nil {
			return holdSays(o), true
		}
		return "does not stand", false
	case "type":
		if slices.ContainsFunc(a.HouseRules, func(r advisor.HouseRule) bool { return r.Kind == "type" && r.ID == h.id }) {
			return "answers of the case come from it", true
		}
		return "the case was not begun as one", false
	}
	return "is read", false
}

// signSays looks for a sign in the ledgers of all suspects.
func (h houseItem) signSays(a *advisor.Advice) (string, bool) {
	for i := range a.Suspects {
		for _, l := range a.Suspects[i].Ledger {
			switch {
			case l.Sign != h.id:
			case l.Truth == advisor.Unknown && l.Level < 0:
				return "not known yet" + reading(l.Questions), false
			case !l.Counted:
				return l.Name + "; seen, and not counted again", false
			default:
				return fmt.Sprintf("%s; the odds of %s times %.2g", l.Name, a.Suspects[i].ID, l.Ratio), true
			}
		}
	}
	return "says nothing yet on this car", false
}

// ruleSays looks for a standing rule among those that act or would.
func (h houseItem) ruleSays(a *advisor.Advice) (string, bool) {
	i := slices.IndexFunc(a.Standing, func(s advisor.StandingAdvice) bool { return s.ID == h.id })
	if i < 0 || a.Standing[i].Truth == advisor.False {
		return "does not act on this car", false
	}
	s := &a.Standing[i]
	where := "in"
	if s.Out {
		where = "out"
	}
	effect := "puts " + strings.Join(s.Operations, ", ") + " " + where
	if s.Truth == advisor.Unknown {
		return "not known yet whether it " + effect + reading(s.Missing), false
	}
	return effect, true
}

func lookSays(l *advisor.InspectionAdvice) (string, bool) {
	switch {
	case l.WhenOpen:
		return "look when open", true
	case l.Advised:
		return fmt.Sprintf("advised as look %d", l.Rank), true
	}
	return "not advised: it would not pay", false
}

func holdSays(h *advisor.HoldAdvice) string {
	stops := ", stops: " + strings.Join(h.Stops, ", ")
	if h.When == advisor.Unknown {
		return "stands until known" + stops
	}
	return "stands" + stops
}

func reading(questions []string) string {
	if len(questions) == 0 {
		return ""
	}
	return "; it reads " + strings.Join(questions, ", ")
}
