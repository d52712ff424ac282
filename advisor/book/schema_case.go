package book

import (
	"encoding/json"
	"slices"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// SettingsSchema is the JSON schema (draft-07) of a rule file that holds the
// shop's settings alone.
func SettingsSchema(b *advisor.Book) ([]byte, error) {
	s := schema{book: b, definitions: object{}}
	settings := s.table(settingsTable.name, settingsTable.doc, settingsTable.keys(), false)
	s.definitions["specimen"] = s.specimen()
	return s.file("a settings file", object{settingsTable.name: settings}, nil)
}

// CaseSchema is the JSON schema (draft-07) of a case file: every question of
// the book is offered with its words, every operation by its id.
func CaseSchema(b *advisor.Book) ([]byte, error) { return caseSchema(b, "a case file", nil) }

// LineSchema is the JSON schema (draft-07) of a case that is one line of JSON:
// a case's keys, and the id that a file has from its name.
func LineSchema(b *advisor.Book) ([]byte, error) {
	return caseSchema(b, "a case in a line", object{"id": object{"type": "string", "minLength": 1, "description": "the job's id"}})
}

func caseSchema(b *advisor.Book, title string, properties object) ([]byte, error) {
	s := schema{book: b, definitions: object{}}
	s.definitions["answer"] = s.longAnswer()
	s.definitions["decision"] = closed("what was decided about an operation", object{
		"operation": s.text(form{Names: "operation"}), "by": plainText, "on": plainText, "note": plainText}, "operation")
	s.definitions["overruling"] = closed("a call set by hand", object{
		"operation": s.text(form{Names: "operation"}), "call": enum(casefile.Calls()), "by": plainText, "why": plainText, "on": plainText},
		"operation", "call", "by", "why")
	s.definitions["letter"] = letterShape()
	s.definitions["looked"] = keyed("what was found, and who looked", casefile.LookedKeys(), map[string]object{"is": enum(advisor.Findings)}, "is")
	s.definitions["hours"] = keyed("hours, and who worked them", casefile.HoursKeys(), map[string]object{
		"took": {"anyOf": []object{hoursShape, enum([]string{casefile.CantTell})}}, "estimate": {"type": "array", "items": hoursShape}}, "took")
	shapes := s.caseShapes()
	if properties == nil {
		properties = object{}
	}
	for _, k := range casefile.Keys() {
		one := object{"description": k.Doc}
		for name, v := range shapes[k.Name] {
			one[name] = v
		}
		properties[k.Name] = one
	}
	return s.file(title, properties, []string{"case", "date"})
}

var plainText = object{"type": "string"}

func enum(words []string) object { return object{"type": "string", "enum": words} }

// closed is a table that has these keys and no others.
func closed(doc string, properties object, required ...string) object {
	o := object{"type": "object", "description": doc, "additionalProperties": false, "properties": properties}
	if len(required) > 0 {
		o["required"] = required
	}
	return o
}

// file is a whole schema.
func (s *schema) file(title string, properties object, required []string) ([]byte, error) {
	whole := closed("", properties, required...)
	delete(whole, "description")
	whole["$schema"], whole["title"], whole["definitions"] = "http://json-schema.org/draft-07/schema#", title, s.definitions
	return json.MarshalIndent(whole, "", "  ")
}

// caseShapes are the values of a case's keys.
func (s *schema) caseShapes() map[string]object {
	answers := object{}
	for i := range s.book.Questions {
		answers[s.book.Questions[i].ID] = answerTo(&s.book.Questions[i])
	}
	decisions := object{}
	for _, list := range []string{"accepted", "declined", "done"} {
		decisions[list] = object{"type": "array", "items": object{"anyOf": []object{
			s.text(form{Names: "operation"}), {"$ref": "#/definitions/decision"}}}}
	}
	looked, hours := s.endShapes()
	return map[string]object{
		"closed": keyed("the end of the job", casefile.ClosedKeys(), nil, "on"), "looked": looked, "hours": hours,
		"case": {"type": "integer", "minimum": 1, "maximum": casefile.Version},
		"name": plainText, "date": plainText, "words": plainText,
		"care":      enum(advisor.Cares),
		"answers":   closed("question id = answer", answers),
		"decisions": closed("what was decided", decisions),
		"overruled": {"type": "array", "items": object{"$ref": "#/definitions/overruling"}},
		"letter":    {"type": "array", "items": object{"$ref": "#/definitions/letter"}},
		"forecast":  {"type": "object", "additionalProperties": object{"type": "number", "minimum": 0, "maximum": 1}},
		"book":      closed("the book at intake", object{"fingerprint": plainText, "layers": object{"type": "array", "items": plainText}}),
	}
}

var hoursShape = object{"type": "number", "minimum": 0}

// keyed is a closed table of these keys: texts, but for those of a shape of their own.
func keyed(doc string, keys []casefile.Key, shapes map[string]object, required ...string) object {
	properties := object{}
	for _, k := range keys {
		one := object{"description": k.Doc}
		shape, own := shapes[k.Name]
		if !own {
			shape = plainText
		}
		for name, v := range shape {
			one[name] = v
		}
		properties[k.Name] = one
	}
	return closed(doc, properties, required...)
}

// endShapes are the values of the keys of how a job ended, each id offered.
func (s *schema) endShapes() (looked, hours object) {
	suspects, operations := object{}, object{}
	for i := range s.book.Suspects {
		suspects[s.book.Suspects[i].ID] = object{"description": s.book.Suspects[i].Name,
			"anyOf": []object{enum(advisor.Findings), {"$ref": "#/definitions/looked"}}}
	}
	for i := range s.book.Operations {
		operations[s.book.Operations[i].ID] = object{"description": s.book.Operations[i].Name,
			"anyOf": []object{hoursShape, enum([]string{casefile.CantTell}), {"$ref": "#/definitions/hours"}}}
	}
	return closed("suspect id = what was found", suspects), closed("operation id = hours", operations)
}

// letterShape is what an earlier letter said.
func letterShape() object {
	properties := object{}
	for _, k := range casefile.LetterKeys() {
		one := object{"description": k.Doc}
		switch k.Name {
		case "number", "agree", "likely":
			one["type"], one["minimum"] = "integer", 0
		case "date":
			one["type"] = "string"
		default:
			one["type"], one["items"] = "array", plainText
		}
		properties[k.Name] = one
	}
	return closed("what an earlier letter to the owner said", properties, "number", "date")
}

// longAnswer is an answer as a table.
func (s *schema) longAnswer() object {
	properties := object{}
	for _, k := range casefile.AnswerKeys() {
		properties[k.Name] = object{"description": k.Doc}
	}
	how := properties["how"].(object)
	how["type"], how["enum"] = "string", advisor.Channels
	properties["photo"].(object)["anyOf"] = []object{plainText, {"type": "array", "items": plainText}}
	return closed("an answer, and how it is known", properties)
}

// answerTo is every way to write an answer to a question.
func answerTo(q *advisor.Question) object {
	words := []string{casefile.Hidden, casefile.CantTell, "cannot tell"}
	options := object{"type": "string", "enum": slices.Concat(optionIDs(q), words)}
	several := object{"type": "string", "pattern": "^not | or "}
	short := []object{plainText}
	switch q.Kind {
	case advisor.YesNoKind:
		short = []object{{"type": "boolean"}, enum(append(words, "yes", "no"))}
	case advisor.Choice:
		short = []object{options, several}
	case advisor.Choices:
		short = []object{{"type": "array", "items": enum(optionIDs(q))}, options, several}
	case advisor.NumberKind, advisor.Year:
		short = []object{bounded(q), {"type": "string", "pattern": "^[-+0-9.eE_]+ to |^hidden$|^can"}}
	case advisor.ReadingsKind:
		short = []object{{"type": "array", "items": bounded(q)}, enum(words), bounded(q)}
	}
	long := object{"$ref": "#/definitions/answer"}
	return object{"description": q.Ask, "anyOf": append(short, long, object{"type": "array", "items": long})}
}

func optionIDs(q *advisor.Question) (ids []string) {
	for _, o := range q.Options {
		ids = append(ids, o.ID)
	}
	return ids
}

// bounded is a number within the question's range, if it has one.
func bounded(q *advisor.Question) object {
	if q.Low < q.High {
		return object{"type": "number", "minimum": q.Low, "maximum": q.High}
	}
	return object{"type": "number"}
}
