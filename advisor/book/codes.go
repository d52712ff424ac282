package book

import (
	"slices"
	"strings"

	"longstand/advisor/condition"
)

// Code explains one stable diagnostic code: what it means, a text that earns
// it and one that does not. The examples stand beside a small book (in the
// tests, which run every one of them).
type Code struct {
	ID          string
	Title       string
	Explanation string
	In          string // where the examples belong: rules, house, case
	Wrong       string
	Right       string
}

// Codes lists every code that reading rules and cases can give, in order of id.
func Codes() []Code {
	all := slices.Clone(ownCodes)
	for _, c := range condition.Codes {
		if i := slices.IndexFunc(all, func(own Code) bool { return own.ID == c.ID }); i >= 0 {
			all[i].Explanation += " In a condition: " + c.Meaning + "."
			continue
		}
		all = append(all, Code{ID: c.ID, Title: c.Meaning, In: "condition", Wrong: c.Wrong, Right: c.Right})
	}
	slices.SortFunc(all, func(x, y Code) int { return strings.Compare(x.ID, y.ID) })
	return all
}

var ownCodes = slices.Concat(textCodes, itemCodes, bookCodes, anomalyCodes, sharpCodes, houseCodes, caseCodes)

var textCodes = []Code{
	{"toml-syntax", "the file is not TOML",
		"Reading goes on at the next line that starts with two brackets. What lies between is not read, so what other rules say about things declared there is not judged.", "rules",
		"[[word]]\nid = 'sump'\ntext = yes", "[[word]]\nid = 'sump'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"duplicate-key", "a key stands twice in one table", "Both places are told; the first counts until one is gone.", "rules",
		"[[word]]\nid = 'sump'\ntext = 'sump'\nmeans = 'the oil pan'\nmeans = 'the bottom of the engine'", "[[word]]\nid = 'sump'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"bad-value", "a number or a date that cannot be", "A whole number that is too large, a day that no month has, a key of very many parts.", "case",
		"date = 2025-02-30", "date = 2025-02-28"},
	{"file-too-large", "a file is refused by its size", "A rule file has at most 2 MB and 60,000 values, a case 256 KB: beyond that it is something else.", "", "", ""},
}

var itemCodes = []Code{
	{"unknown-table", "a rule file has no such table", "Every item starts with its kind in double brackets.", "rules",
		"[[wrod]]\nid = 'x'", "[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"unknown-key", "a table has no such key", "Keys are never passed over in silence: a misspelt one would change what the rule says.", "rules",
		"[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'\nform = ['sumps']", "[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'\nforms = ['sumps']"},
	{"missing-key", "a table lacks a key that it must have", "Suspects, signs, standing rules, holds and cautions also say because and source.", "rules",
		"[[word]]\nid = 'x'\ntext = 'sump'", "[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"useless-key", "a key has no meaning here", "A yes or no has no unit; a sign with levels has no counts of its own.", "rules",
		"[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'story'\nalways = true\nunit = 'mm'",
		"[[question]]\nid = 'q'\nkind = 'yesno'\nask = 'So?'\nname = 'so'\nstation = 'story'\nalways = true"},
	{"wrong-kind", "a value is of another kind than its key or question takes", "A text stands in quotes, a number without; three figures are a list of three.", "rules",
		"[[word]]\nid = 'x'\ntext = 3\nmeans = 'the oil pan'", "[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"unknown-word", "a word is none of the few that are allowed", "The nearest one is offered.", "rules",
		"[[operation]]\nid = 'radiator'\nname = 'flush the radiator'\npart = 'cooling'\nphase = 'repare'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']",
		"[[operation]]\nid = 'radiator'\nname = 'flush the radiator'\npart = 'cooling'\nphase = 'repair'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']"},
	{"blank", "a text or condition is blank", "Leave the key out when there is nothing to say.", "rules",
		"[[word]]\nid = 'x'\ntext = ''\nmeans = 'the oil pan'", "[[word]]\nid = 'x'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"bad-id", "an id is not written as one", "Ids are small letters, digits and underlines, a letter first.", "rules",
		"[[word]]\nid = 'Oil pan'\ntext = 'sump'\nmeans = 'the oil pan'", "[[word]]\nid = 'oil_pan'\ntext = 'sump'\nmeans = 'the oil pan'"},
	{"reserved-id", "an id already means something in conditions or answers", "No question, derived value or operation can be called and, known, min or by a reckoning's name; no option hidden.", "rules",
		"[[operation]]\nid = 'known'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']", "[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']"},
	{"duplicate-id", "an id is given twice", "Of two items of one kind, of a question and a derived value, of an operation and a route; or an id stands twice in a list.", "rules",
		"[[operation]]\nid = 'head_off'\nname = 'lift the head'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]",
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']"},
	{"out-of-range", "a figure lies outside what it can be", "Counts run from 0 to all, chances from 0 to 1, answers within their question's range.", "rules",
		"[[suspect]]\nid = 's'\nname = 's'\npart = 'engine'\ncured_by = ['head_gasket']\nbase = [{ count = '11 of 10' }]\nbecause = 'So.'\nsource = 'practice'",
		"[[suspect]]\nid = 's'\nname = 's'\npart = 'engine'\ncured_by = ['head_gasket']\nbase = [{ count = '1 of 10' }]\nbecause = 'So.'\nsource = 'practice'"},
	{"not-increasing", "figures that must increase do not", "Three figures are: 1 in 10 is less, usual, 1 in 10 is more. A range goes from the lesser to the greater.", "rules",
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [3, 2, 1]\nlooks = ['hoses_perished']",
		"[[operation]]\nid = 'sump_off'\nname = 'drop the sump'\npart = 'engine'\nphase = 'strip'\nhours = [1, 2, 3]\nlooks = ['hoses_perished']"},
	{"no-range", "a number has no range", "A range catches slips of the pen and tells at load which comparisons say nothing.", "rules",
		"[[question]]\nid = 'q'\nkind = 'number'\nask = 'So?'\nname = 'so'\nstation = 'story'\nalways = true",
		"[[question]]\nid = 'q'\nkind = 'number'\nask = 'So?'\nname = 'so'\nstation = 'story'\nalways = true\nrange = [0, 9]"},
}
