package report

import (
	"math"

	"longstand/advisor"
)

// likelyDay is the day on which the car is likely to be ready, and how it is
// reckoned: from the letter's date, the wait for parts, then the shop's own
// hours (firm work and looks, and what may be needed by its chance) at the
// hours a week that the shop gives to one car. A shop that does not say them
// has no day reckoned for it.
func (l *letter) likelyDay() (day, how string) {
	s := l.a.Settings
	firm, perhaps, sent := l.hours()
	days := func(hours float64) int { return s.PartsDays + int(math.Ceil(hours/s.HoursAWeek*7)) }
	v := with{"Hours": l.number2(math.Ceil(firm)), "More": l.number2(math.Ceil(perhaps)), "HasMore": perhaps >= 0.5, "Sent": sent,
		"Week": l.number2(s.HoursAWeek), "Parts": s.PartsDays, "Date": l.day(0)}
	if s.HoursAWeek <= 0 {
		return l.say("day.unknown", nil), l.say("day.not_said", v)
	}
	v["First"], v["Later"] = l.day(days(firm)), days(firm+perhaps) > days(firm)
	return l.say("day.about", with{"Day": l.day(days(firm + perhaps))}), l.say("day.how", v)
}

// hours are the usual hours of the shop's own firm work and looks, the hours
// that looks may add by their chance or that wait, and how many jobs go outside.
func (l *letter) hours() (firm, perhaps float64, sent int) {
	for i := range l.a.Operations {
		o := &l.a.Operations[i]
		now := o.Call == advisor.Do || o.Call == advisor.DoOpen
		waits := now && l.waitsFor(o.ID) != ""
		switch own := o.Who == "shop" || o.Who == ""; {
		case o.Call == advisor.LookFirst && own:
			perhaps += o.MaybeChance * float64(o.MinutesUsual) / 60
		case waits && own:
			perhaps += float64(o.MinutesUsual) / 60
		case now && own:
			firm += float64(o.MinutesUsual) / 60
		case now && o.Who != "owner":
			sent++
		}
	}
	for i := range l.a.Total.Lines {
		if n := &l.a.Total.Lines[i]; n.Kind == "look" {
			firm += float64(n.Minutes) / 60
		}
	}
	return firm, perhaps, sent
}
