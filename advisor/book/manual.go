package book

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor/condition"
)

// Manual writes the generated parts of the manual for rule authors into its
// page: each stands between two comments that name it. It errs when a comment
// is missing or stands alone.
func Manual(page string) (string, error) {
	for _, part := range []struct{ name, text string }{
		{"operators", usagesPart(condition.Operators())},
		{"functions", usagesPart(condition.Functions())},
		{"keys", keysPart()},
		{"codes", codesPart()},
	} {
		from, to := "<!-- generated: "+part.name+" -->\n", "<!-- end of "+part.name+" -->"
		before, rest, opened := strings.Cut(page, from)
		_, after, closed := strings.Cut(rest, to)
		if !opened || !closed {
			return "", fmt.Errorf("the manual wants a line %q and after it a line %q", strings.TrimSpace(from), to)
		}
		page = before + from + "\n" + part.text + "\n" + to + after
	}
	return page, nil
}

// usagesPart lists operators or functions, one a line.
func usagesPart(usages []condition.Usage) string {
	var page strings.Builder
	for _, u := range usages {
		fmt.Fprintf(&page, "- `%s`: %s.", u.Write, u.Says)
		for i, t := range u.Takes {
			fmt.Fprintf(&page, "%s%s", []string{" Takes ", "; "}[min(i, 1)], t)
		}
		if u.Gives != "" {
			fmt.Fprintf(&page, ". Gives %s. Source: %s.", u.Gives, u.Source)
		}
		page.WriteString("\n")
	}
	return page.String()
}

// codesPart lists the codes of faults, one a line.
func codesPart() string {
	var page strings.Builder
	for _, c := range Codes() {
		fmt.Fprintf(&page, "- `%s`: %s.\n", c.ID, c.Title)
	}
	return page.String()
}

// houseDocs say what may stand on every item of a house layer.
var houseDocs = []Key{
	{Name: "adjust", Doc: "this item changes one of the same id: its keys replace those", form: form{Type: asFlag}},
	{Name: "by", Doc: "who says so", form: form{Type: asText}},
	{Name: "learned_on", Doc: "the case that taught it", form: form{Type: asText}},
	{Name: "look_again", Doc: "the day to look at it again", form: form{Type: asDate}},
	{Name: silenceKey, Doc: "warnings on this item that are no fault: code = the reason", form: form{Type: asPairs}},
}

// keysPart lists every key of every table.
func keysPart() string {
	var page strings.Builder
	page.WriteString("### Any item of a house layer\n\n")
	keyLines(&page, houseDocs)
	told := map[string]bool{}
	for _, t := range Tables() {
		head := "[[" + t.Name + "]]"
		if !t.Many {
			head = "[" + t.Name + "]"
		}
		fmt.Fprintf(&page, "\n### `%s`: %s\n\n", head, strings.TrimPrefix(t.Doc, "house rules: "))
		keyLines(&page, t.Keys)
		inner(&page, t.Keys, told)
	}
	return page.String()
}

// inner lists the tables inside a table, each where it is first met.
func inner(page *strings.Builder, keys []Key, told map[string]bool) {
	for _, k := range keys {
		if k.Keys == nil || told[k.Of] {
			continue
		}
		told[k.Of] = true
		fmt.Fprintf(page, "\nOne table of `%s`:\n\n", k.Name)
		keyLines(page, k.Keys())
	}
}

// keyLines lists the keys of one table. The examples of a condition share a
// line, and so do a reason and its source; what every house item may say is
// told once, elsewhere.
func keyLines(page *strings.Builder, keys []Key) {
	for i := 0; i < len(keys); i++ {
		k, must := keys[i], ""
		if k.Need {
			must = "**must be there**; "
		}
		switch {
		case strings.HasPrefix(k.Doc, "house rules: "):
		case k.Type == asSpecimens:
			names := []string{"`" + k.Name + "`"}
			for ; i+1 < len(keys) && keys[i+1].Type == asSpecimens; i++ {
				names = append(names, "`"+keys[i+1].Name+"`")
			}
			of, _, _ := strings.Cut(k.Doc, ":")
			fmt.Fprintf(page, "- %s: examples for `%s`.\n", strings.Join(names, ", "), of)
		case k.Name == "because" && i+1 < len(keys) && keys[i+1].Name == "source":
			fmt.Fprintf(page, "- `because`, `source`: %sthe reason in one line, and where it comes from.\n", must)
			i++
		default:
			fmt.Fprintf(page, "- `%s`: %s%s. %s.\n", k.Name, must, holds(k.form), sentence(k.Doc))
		}
	}
}

// holds says in words what a value is.
func holds(f form) string {
	one, several := "a text", "texts, or one alone"
	switch {
	case f.Names != "":
		article := "the id of " + a(f.Names)
		one, several = article, "ids of "+plural(f.Names)+", or one alone"
	case f.Enum != nil:
		words := "`" + strings.Join(f.Enum, "`, `") + "`"
		one, several = "one of "+words, "some of "+words
	}
	return map[string]string{
		asText: one, asWords: several, asCondition: "a condition", asCount: `a count, as "3 of 10"`, asDate: "a date, as 2030-01-31",
		asNumber: "a number", asWhole: "a whole number", asDecimal: `a number, or in quotes, as "0.7"`, asFlag: "true or false",
		asFigures: "a list of three numbers", asRange: "a list of two numbers", asTable: "a table", asTables: "a list of tables",
		asMixed: several + ", or tables", asLosses: "a number, or a list of tables",
		asPairs: "a table, name = value", asAnswers: "a table, question = value",
	}[f.Type]
}

func plural(name string) string {
	if name == "family" {
		return "families"
	}
	return name + "s"
}

// sentence begins a text with a capital.
func sentence(text string) string {
	if text == "" || slices.Contains([]byte("[`\""), text[0]) {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
