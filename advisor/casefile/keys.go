package casefile

// Key is one key of a case or of an answer, for docs and schemas.
type Key struct{ Name, Doc string }

// Keys lists the keys of a case.
func Keys() []Key { return listKeys(topKeys) }

// AnswerKeys lists the keys of an answer's long form.
func AnswerKeys() []Key { return listKeys(longKeys) }

func listKeys(keys []struct{ key, doc string }) []Key {
	var out []Key
	for _, k := range keys {
		out = append(out, Key{k.key, k.doc})
	}
	return out
}

// Calls lists the words of the calls that an overruling can give.
func Calls() []string { return calls() }
