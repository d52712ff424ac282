package book

import (
	"slices"
	"strings"

	"longstand/advisor"
)

// object is a piece of JSON schema.
type object = map[string]any

// Schema is the JSON schema (draft-07) of a rule file, with the ids of a loaded
// book as closed lists so that editors offer them. In house rules an item that
// adjusts another gives only some keys, so there none but the id must be. What
// hangs on other keys is left to Check: editors draw wrong lines for it.
func Schema(b *advisor.Book, house bool) ([]byte, error) {
	s := schema{book: b, house: house, definitions: object{}}
	properties := object{}
	for _, t := range Tables() {
		one := s.table(t.Name, t.Doc, t.Keys, t.Many && t.Name != withdrawTable.name)
		if t.Many {
			one = object{"type": "array", "items": one}
		}
		properties[t.Name] = one
	}
	s.definitions["specimen"], s.definitions["known"] = s.specimen(), s.known()
	return s.file("a rule file", properties, nil)
}

type schema struct {
	book        *advisor.Book
	house       bool
	definitions object
}

// table defines one kind of table and refers to it; editors want nothing
// beside such a reference.
func (s *schema) table(name, doc string, keys []Key, item bool) object {
	id := strings.ReplaceAll(name, " ", "_")
	ref := object{"$ref": "#/definitions/" + id}
	if s.definitions[id] != nil {
		return ref
	}
	def := object{"type": "object", "additionalProperties": false}
	if doc != "" {
		def["description"] = doc
	}
	s.definitions[id] = def
	properties, required := object{}, []string{}
	for _, k := range keys {
		p := s.value(k.form)
		if p["$ref"] == nil {
			p["description"] = k.Doc
		}
		properties[k.Name] = p
		if k.Need && (!s.house || !item || k.Name == "id") {
			required = append(required, k.Name)
		}
	}
	for key := range houseKeys {
		if item && properties[key] == nil {
			properties[key] = object{"type": []string{"boolean", "string"}}
		}
	}
	if item || name == settingsTable.name {
		properties[silenceKey] = object{"type": "object", "additionalProperties": object{"type": "string"},
			"description": "warnings on this item that are no fault, code = the reason"}
	}
	def["properties"] = properties
	if len(required) > 0 {
		def["required"] = required
	}
	return ref
}

// value is the schema of one value.
func (s *schema) value(f form) object {
	switch f.Type {
	case asText:
		return s.text(f)
	case asWords:
		return object{"anyOf": []object{s.text(f), {"type": "array", "items": s.text(f)}}}
	case asNumber:
		return object{"type": "number"}
	case asWhole:
		return object{"type": "integer"}
	case asDecimal:
		return object{"type": []string{"number", "string"}}
	case asFlag:
		return object{"type": "boolean"}
	case asFigures:
		return object{"type": "array", "items": object{"type": "number"}, "minItems": 3, "maxItems": 3}
	case asRange:
		return object{"type": "array", "items": object{"type": "number"}, "minItems": 2, "maxItems": 2}
	case asCount:
		return object{"type": "string", "pattern": "^ *[0-9]+ of [0-9]+ *$"}
	case asPairs:
		return object{"type": "object"}
	case asAnswers:
		return object{"$ref": "#/definitions/known"}
	case asSpecimens:
		one := object{"$ref": "#/definitions/specimen"}
		return object{"anyOf": []object{one, {"type": "array", "items": one}}}
	case asTable:
		return s.table(f.Of, "", f.Keys(), false)
	case asTables:
		return object{"type": "array", "items": s.table(f.Of, "", f.Keys(), false)}
	case asLosses:
		return object{"anyOf": []object{{"type": "number"}, {"type": "array", "items": s.table(f.Of, "", f.Keys(), false)}}}
	case asMixed:
		one := object{"anyOf": []object{s.text(f), s.table(f.Of, "", f.Keys(), false)}}
		return object{"anyOf": []object{s.text(f), {"type": "array", "items": one}}}
	}
	return object{"type": "string"}
}

// text is a text, one of a few words, or an id of the book.
func (s *schema) text(f form) object {
	words := slices.Clone(f.Enum)
	if f.Names != "" {
		words = s.ids(f.Names)
	}
	if len(words) == 0 {
		return object{"type": "string"}
	}
	return object{"type": "string", "enum": words}
}

// specimen is a table of answers.
func (s *schema) specimen() object {
	properties := object{
		"done":      object{"anyOf": []object{s.text(form{Names: "operation"}), {"type": "array", "items": s.text(form{Names: "operation"})}}, "description": "operations recorded as done"},
		"case_year": object{"type": "number", "description": "the decimal year to which ages are reckoned"},
	}
	for i := range s.book.Questions {
		properties[s.book.Questions[i].ID] = object{"description": s.book.Questions[i].Ask}
	}
	return object{"type": "object", "description": "answers", "additionalProperties": false, "properties": properties}
}

// known is the table of answers of a known type: values alone.
func (s *schema) known() object {
	properties := object{}
	for i := range s.book.Questions {
		properties[s.book.Questions[i].ID] = object{"description": s.book.Questions[i].Ask,
			"type": []string{"boolean", "number", "string", "array"}}
	}
	return closed("what is so of every such car", properties)
}

// ids lists the ids of a kind in a loaded book.
func (s *schema) ids(kind string) []string {
	b := s.book
	switch kind {
	case "question":
		return idsOf(b.Questions, func(q *advisor.Question) string { return q.ID })
	case "suspect":
		return idsOf(b.Suspects, func(v *advisor.Suspect) string { return v.ID })
	case "inspection":
		return idsOf(b.Inspections, func(v *advisor.Inspection) string { return v.ID })
	case "family":
		return idsOf(b.Families, func(v *advisor.Family) string { return v.ID })
	case "source":
		return idsOf(b.Sources, func(v *advisor.Source) string { return v.ID })
	case "operation": // and the routes, which needs name as well
		return append(idsOf(b.Operations, func(v *advisor.Operation) string { return v.ID }),
			idsOf(b.Routes, func(v *advisor.Route) string { return v.ID })...)
	case "hazard":
		seen := map[string]bool{}
		var out []string
		for i := range b.Cautions {
			if h := b.Cautions[i].Hazard; !seen[h] {
				seen[h] = true
				out = append(out, h)
			}
		}
		return out
	}
	return nil
}

func idsOf[T any](items []T, id func(*T) string) []string {
	out := make([]string, len(items))
	for i := range items {
		out[i] = id(&items[i])
	}
	return out
}
