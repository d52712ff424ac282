package casefile

// Key is one key of a case or of an answer, for docs and schemas.
type Key struct{ Name, Doc string }

// Keys lists the keys of a case.
func Keys() []Key { return listKeys(topKeys) }

// AnswerKeys lists the keys of an answer's long form.
func AnswerKeys() []Key { return listKeys(longKeys) }

// LetterKeys lists the keys of an earlier letter.
func LetterKeys() []Key { return listKeys(letterKeys) }

// ClosedKeys lists the keys of the end of a job.
func ClosedKeys() []Key { return listKeys(closedKeys) }

// LookedKeys lists the keys of what was found of a suspect, in the long form.
func LookedKeys() []Key { return listKeys(lookedKeys) }

// HoursKeys lists the keys of the hours that an operation took, in the long form.
func HoursKeys() []Key { return listKeys(hoursKeys) }

func listKeys(keys []struct{ key, doc string }) []Key {
	var out []Key
	for _, k := range keys {
		out = append(out, Key{k.key, k.doc})
	}
	return out
}

func keysOf(keys []struct{ key, doc string }) (names []string) {
	for _, k := range keys {
		names = append(names, k.key)
	}
	return names
}
