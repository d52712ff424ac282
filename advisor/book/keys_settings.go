package book

import (
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

const settingsName = "settings"

var settingsTable = table[advisor.Settings]{
	name: settingsName, doc: "the shop's own figures",
	fields: []field[advisor.Settings]{
		may("rate", "of an hour, in units of the currency", func(s *advisor.Settings) slot { return money(&s.Rate) }),
		may("currency", "its three capitals, as ISO 4217 has them", func(s *advisor.Settings) slot {
			return shapedSlot{&s.Currency, isCurrency, `three capitals, as "GBP" (ISO 4217)`}
		}),
		may("minor_digits", "2 where the unit has a hundred parts", func(s *advisor.Settings) slot { return whole(&s.MinorDigits, 0, 3) }),
		may("tax", "as a share: 0.2 is 20 in 100", func(s *advisor.Settings) slot { return share(&s.Tax, 0, 1) }),
		may("locale", "for figures and dates: a language, or language-REGION", func(s *advisor.Settings) slot {
			return shapedSlot{&s.Locale, isLocale, `a language or language-REGION, as "en" or "en-GB" (BCP 47)`}
		}),
		may("units", "in which pages speak", func(s *advisor.Settings) slot { return word(&s.Units, []string{"metric", "imperial"}) }),
		may("shop", "the shop's name, for letters", func(s *advisor.Settings) slot { return text(&s.Shop) }),
		may("good_for_days", "an estimate's life", func(s *advisor.Settings) slot { return whole(&s.GoodForDays, 1, 3650) }),
		may("ring_at", "the share of the agreed sum at which the owner is rung", func(s *advisor.Settings) slot { return share(&s.RingAt, 0, 10) }),
		may("hours_a_week", "that the shop can give to one car", func(s *advisor.Settings) slot { return number(&s.HoursAWeek, 0.5, 168) }),
		may("parts_days", "that one waits for parts", func(s *advisor.Settings) slot { return whole(&s.PartsDays, 0, 365) }),
		may("tools", "what the shop has, in the words of the looks; left out: everything", func(s *advisor.Settings) slot { return texts(&s.Tools) }),
		may("hand_tools", "what every shop has, and never lacks", func(s *advisor.Settings) slot { return texts(&s.HandTools) }),
		may("care", "the price of a job put off: thrifty, normal, thorough", func(s *advisor.Settings) slot { return careSlot{s.Care} }),
		may("trust", "of each way of knowing: [how often right when it is so, how often wrong when not]", func(s *advisor.Settings) slot { return trustSlot{&s.Trust} }),
		may("hours_factor", "rusted fixings: factors by condition, the last without one", func(s *advisor.Settings) slot {
			return rows(&s.Hours, &factorTable, func(h *advisor.HoursFactor, n *tomltext.Node) { h.At = n.Span })
		}),
		may("care_when", "which care a case takes that does not say", func(s *advisor.Settings) slot {
			return rows(&s.CareWhen, &careWhenTable, func(c *advisor.CareWhen, n *tomltext.Node) { c.At = n.Span })
		}),
		may("because", "of each figure above, by its key: the reason in one line; the built-in book gives all", func(s *advisor.Settings) slot {
			return groundsSlot{s.Grounds, func(g *advisor.Ground) slot { return text(&g.Because) }}
		}),
		may("source", "of each figure above, by its key: where it comes from; left out by a house layer: `shop`", func(s *advisor.Settings) slot {
			return groundsSlot{s.Grounds, func(g *advisor.Ground) slot { return names(&g.Sources, aSource) }}
		}),
	},
}

var factorTable = table[advisor.HoursFactor]{
	name: "hours factor", doc: "one case of the factor for rusted fixings",
	fields: join([]field[advisor.HoursFactor]{
		must("factor", "by which hours are multiplied", func(h *advisor.HoursFactor) slot { return number(&h.Factor, 0.1, 10) }),
	}, conditionKeys("when", "the cars it speaks of", false, whenRoles, func(h *advisor.HoursFactor) *advisor.Condition { return &h.When }),
		reasonKeys(false, func(h *advisor.HoursFactor) *advisor.Ground { return &h.Ground })),
}

var careWhenTable = table[advisor.CareWhen]{
	name: "care rule", doc: "one case of which care is taken",
	fields: join([]field[advisor.CareWhen]{
		must("care", "the care taken", func(c *advisor.CareWhen) slot { return word(&c.Care, advisor.Cares) }),
	}, conditionKeys("when", "the cars it speaks of", true, whenRoles, func(c *advisor.CareWhen) *advisor.Condition { return &c.When }),
		reasonKeys(false, func(c *advisor.CareWhen) *advisor.Ground { return &c.Ground })),
}

// shapedSlot is a text of a certain shape; wants says which.
type shapedSlot struct {
	to    *string
	fits  func(string) bool
	wants string
}

func (s shapedSlot) form() form { return form{Type: asText} }

func (s shapedSlot) read(d *decoder, f *tomltext.Field) {
	switch {
	case f.Value.Kind != tomltext.String:
		d.wrong(f.Value, f.Key+" is a text in quotes")
	case !s.fits(f.Value.Str):
		d.list.Errorf(f.Value.Span, "unknown-word", "%s cannot be %q", f.Key, f.Value.Str).Help = "write " + s.wants
	default:
		*s.to = f.Value.Str
	}
}

// isCurrency tells whether a text has the shape of a currency's code: three
// capitals (ISO 4217). Which codes are in use changes; that is not asked.
func isCurrency(s string) bool { return len(s) == 3 && only(s, 'A', 'Z') }

// isLocale tells whether a text is a language of two or three small letters
// (ISO 639), alone or with a region of two capitals or three digits (BCP 47,
// RFC 5646 section 2.2). Scripts and variants change nothing on our pages.
func isLocale(s string) bool {
	language, region, more := strings.Cut(s, "-")
	return (len(language) == 2 || len(language) == 3) && only(language, 'a', 'z') &&
		(!more || len(region) == 2 && only(region, 'A', 'Z') || len(region) == 3 && only(region, '0', '9'))
}

// only tells whether a text has no other bytes than those from least to most.
func only(s string, least, most byte) bool {
	for i := range len(s) {
		if s[i] < least || s[i] > most {
			return false
		}
	}
	return true
}

// careSlot is a table of prices, each a decimal in quotes so that it stays exact.
type careSlot struct{ to map[string]advisor.Price }

func (s careSlot) form() form { return form{Type: asPairs} }

func (s careSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Table {
		d.wrong(f.Value, `care is a table, care = "price"`)
		return
	}
	for i := range f.Value.Fields {
		c := &f.Value.Fields[i]
		if !d.among(c, advisor.Cares) {
			continue
		}
		p, ok := price(decimalText(c.Value))
		if !ok {
			d.list.Errorf(c.Value.Span, "out-of-range", "the price of %s is a decimal from 0.01 to 100", c.Key).Help = `write "0.7"`
			continue
		}
		s.to[c.Key] = p
	}
	for i := 1; i < len(advisor.Cares); i++ {
		less, more := s.to[advisor.Cares[i-1]], s.to[advisor.Cares[i]]
		if less.Num*more.Den > more.Num*less.Den {
			d.list.Errorf(f.Value.Span, "not-increasing", "%s is dearer than %s", advisor.Cares[i-1], advisor.Cares[i])
		}
	}
}

// trustSlot is a table of hits and false alarms by channel.
type trustSlot struct{ to *[5]advisor.Trust }

func (s trustSlot) form() form { return form{Type: asPairs} }

func (s trustSlot) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Table {
		d.wrong(f.Value, "trust is a table, how known = [hit, false alarm]")
		return
	}
	for i := range f.Value.Fields {
		c := &f.Value.Fields[i]
		if !d.among(c, advisor.Channels) {
			continue
		}
		if c.Value.Kind != tomltext.Array || len(c.Value.Items) != 2 {
			d.wrong(c.Value, c.Key+" is [hit, false alarm]")
			continue
		}
		hit, ok := d.number(c.Value.Items[0], c.Key, 0, 1)
		alarm, ok2 := d.number(c.Value.Items[1], c.Key, 0, 1)
		if ok && ok2 && hit <= alarm {
			d.list.Errorf(c.Value.Span, "out-of-range", "%s would be wrong more often than right", c.Key)
			continue
		}
		for j, name := range advisor.Channels {
			if name == c.Key {
				s.to[j] = advisor.Trust{Hit: hit, FalseAlarm: alarm}
			}
		}
	}
}

// usual are the settings of a book that says nothing.
func usual() *advisor.Settings {
	return &advisor.Settings{
		Rate: 8000, Currency: "GBP", MinorDigits: 2, Tax: 0.2, Locale: "en-GB", Units: "metric",
		Care:  map[string]advisor.Price{"thrifty": {Num: 7, Den: 10}, "normal": {Num: 1, Den: 1}, "thorough": {Num: 3, Den: 2}},
		Trust: [5]advisor.Trust{{Hit: 1}, {Hit: 1}, {Hit: .95, FalseAlarm: .05}, {Hit: .9, FalseAlarm: .2}, {Hit: .7, FalseAlarm: .3}},
		Shop:  "the workshop", GoodForDays: 30, RingAt: 0.9,
		Grounds: map[string]advisor.Ground{},
	}
}
