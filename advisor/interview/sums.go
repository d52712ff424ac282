package interview

import (
	"regexp"
	"slices"
	"strings"
)

// money is how people write a currency, and the codes it can stand for.
type money struct {
	words []string
	codes []string
}

// moneys are the currencies that have a sign or words of their own.
var moneys = []money{
	{[]string{"£", "pounds", "pound", "quid"}, []string{"GBP"}},
	{[]string{"€", "euros", "euro"}, []string{"EUR"}},
	{[]string{"$", "dollars", "dollar", "bucks"}, []string{"USD", "AUD", "CAD", "NZD", "SGD", "HKD"}},
}

// groupedSum is a sum with marks of thousands.
var groupedSum = regexp.MustCompile(`^[1-9]\d{0,2}([.,]\d{3})+$`)

// sumOf takes the currency off a sum, and the marks of thousands out of it:
// nobody names a sum to the thousandth part. Another currency is refused.
func (p *Prompt) sumOf(s string) (string, error) {
	s = offEnds(s, strings.ToLower(p.currency))
	for _, m := range moneys {
		for _, word := range m.words {
			rest := offEnds(s, word)
			if rest != s && !slices.Contains(m.codes, p.currency) {
				return "", wrong("a sum in "+p.currency, "%q is in another currency", s)
			}
			s = rest
		}
	}
	if groupedSum.MatchString(s) {
		s = strings.NewReplacer(".", "", ",", "").Replace(s)
	}
	return s, nil
}

// offEnds takes a word off both ends of a text.
func offEnds(s, word string) string {
	return strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(s), word), word))
}
