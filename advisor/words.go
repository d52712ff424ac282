package advisor

import "strings"

// Sentence gives words a capital first, unless they begin with an abbreviation
// or a figure, and a full stop last: reasons in rule files have neither.
func Sentence(words string) string {
	words = strings.TrimSpace(words)
	if words == "" {
		return ""
	}
	r := []rune(words)
	if len(r) > 1 && strings.ToUpper(string(r[1])) != string(r[1]) || len(r) == 1 || r[1] == ' ' {
		r[0] = []rune(strings.ToUpper(string(r[0])))[0]
	}
	if !strings.ContainsRune(".?!", r[len(r)-1]) {
		r = append(r, '.')
	}
	return string(r)
}
