package casefile

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// drawn is a case as people write one, and the lines of which it is made.
type drawn struct {
	t   *rapid.T
	end string
	b   strings.Builder
}

func (d *drawn) pick(of ...string) string {
	return rapid.SampledFrom(of).Draw(d.t, "pick")
}

func (d *drawn) line(text string) {
	d.b.WriteString(d.pick("", "", "\t", "  ") + text + d.pick("", "", " # kept", "\t# [answers] k0 = 5", "   ") + d.end)
	d.b.WriteString(d.pick("", "", "", d.end, "  "+d.end, "# kept: k0 = 1"+d.end, d.end+d.end+"   # kept \"[x]\""+d.end))
}

// value is one value in each of the ways to write it, over several lines too.
func (d *drawn) value() string {
	e := d.end
	return d.pick("1", "true", "-0.5", `"a # b"`, `'c'`, `"""`+e+`# no remark`+e+`k0 = 3"""`, `'''it's'''`, "[1, 2]", "[]", "2025-10-14",
		"["+e+"  1, # kept"+e+e+"  # kept ]"+e+"  2,"+e+"]", `["x","y" , ]`, `{ is = 1, how = "owner" }`, `{is=[1,2],note="}"}`, `[{ is = 1 }, { is = 2 }]`,
		"["+e+"\t{ is = 1 }, # kept"+e+"\t{ is = 2 },"+e+"]")
}

// keys writes some keys of a table, bare, quoted and with room around them.
func (d *drawn) keys() {
	for k := range rapid.IntRange(0, 3).Draw(d.t, "keys") {
		key := fmt.Sprintf(d.pick("k%d", "k%d", `"k%d"`, "'k%d'"), k)
		d.line(key + d.pick(" = ", "=", "   =  ") + d.value())
	}
}

// drawCase makes up a case: tables in any order, the answers in each way to
// write a table, either line end, the last line finished or not.
func drawCase(t *rapid.T) string {
	d := &drawn{t: t, end: rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "line end")}
	d.line("case = 1")
	way := d.pick("headed", "headed", "dotted", "inline", "none")
	switch way {
	case "dotted":
		for k := range rapid.IntRange(1, 3).Draw(t, "keys") {
			d.line(fmt.Sprintf(d.pick("answers.k%d", "answers . k%d", `"answers"."k%d"`), k) + " = " + d.value())
		}
	case "inline":
		one := strings.NewReplacer("\r", "", "\n", "").Replace
		d.line("answers = " + d.pick("{}", "{ }", "{ k0 = 1 }", `{k0 = [1,2], k1 = {is = 1}}`, one(`{ k1 = "}", k2 = 'x' }`)))
	}
	tables := []string{"[decisions]", "[forecast]", "[[overruled]]", "[[overruled]]", "[[letter]]"}
	if way == "headed" {
		tables = append(tables, d.pick("[answers]", "[ answers ]", `["answers"]`), "[[answers.many]]")
	}
	for _, table := range rapid.Permutation(tables).Draw(t, "tables") {
		d.line(table)
		d.keys()
	}
	text := d.b.String()
	if rapid.Bool().Draw(t, "unfinished") {
		text = strings.TrimRight(text, "\r\n")
	}
	return text
}

// flat lists every value of a file by its path, as written.
func flat(n *tomltext.Node, path string, out map[string]string) {
	for _, f := range n.Fields {
		flat(f.Value, path+"."+f.Key, out)
	}
	if n.Kind == tomltext.Array {
		for i, item := range n.Items {
			flat(item, fmt.Sprintf("%s[%d]", path, i), out)
		}
	}
	if n.Kind != tomltext.Table && n.Kind != tomltext.Array {
		out[path] = n.Raw()
	}
}

// inner is the part of a text that two texts do not share at their beginning
// and at their end.
func inner(before, after string) (was, is string) {
	from := 0
	for from < len(before) && from < len(after) && before[from] == after[from] {
		from++
	}
	to := 0
	for to < len(before)-from && to < len(after)-from && before[len(before)-1-to] == after[len(after)-1-to] {
		to++
	}
	return before[from : len(before)-to], after[from : len(after)-to]
}

// kept checks that a change left alone all that it need not touch: what is gone
// lies within gone, what is new within new, and every value but those below
// mine is what it was.
func kept(t *rapid.T, before, after, gone, new, mine string) {
	was, is := inner(before, after)
	if !strings.Contains(gone, was) || !strings.Contains(new, is) {
		t.Fatalf("%q is gone for %q, where %q may go for %q\n%s\n---\n%s", was, is, gone, new, before, after)
	}
	if strings.Contains(before, "\r\n") && strings.Count(after, "\n") != strings.Count(after, "\r\n") {
		t.Fatalf("another line end than the file's\n%q", after)
	}
	old, fresh := map[string]string{}, map[string]string{}
	for text, out := range map[string]map[string]string{before: old, after: fresh} {
		root, faults := tomltext.Parse("t", []byte(text))
		if faults.HasErrors() {
			t.Fatalf("torn: %v\n%s", faults, text)
		}
		flat(root, "", out)
	}
	for path, raw := range old {
		if !strings.HasPrefix(path, mine) && fresh[path] != raw {
			t.Fatalf("%s was %s and is %q\n%s\n---\n%s", path, raw, fresh[path], before, after)
		}
	}
	for path := range fresh {
		if _, there := old[path]; !there && !strings.HasPrefix(path, mine) {
			t.Fatalf("%s came from nowhere\n%s\n---\n%s", path, before, after)
		}
	}
}

// wholeLines checks that every line of a text is one still, with its remark, but
// for an inline table that grew.
func wholeLines(t *rapid.T, before, after string) {
	count := map[string]int{}
	for line := range strings.Lines(after) {
		count[strings.TrimRight(line, "\r\n")]++
	}
	for line := range strings.Lines(before) {
		line = strings.TrimRight(line, "\r\n")
		if count[line]--; count[line] < 0 && !strings.Contains(line, "answers = {") {
			t.Fatalf("the line %q is no more\n%s\n---\n%s", line, before, after)
		}
	}
}

// TestChangesKeepAllElse sets a key in made-up cases. Where it was there, its
// value's bytes are replaced and no other; where it was not, nothing is gone,
// and no more is added than its line, a header and line ends.
func TestChangesKeepAllElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawCase(t)
		root, faults := tomltext.Parse("t", []byte(text))
		if faults.HasErrors() {
			t.Fatalf("the test's own case does not read: %v\n%s", faults, text)
		}
		key := rapid.SampledFrom([]string{"k0", "k1", "k2", "new"}).Draw(t, "key")
		value := rapid.SampledFrom([]string{"77", `"x # y"`, `{ is = 1, note = "n" }`}).Draw(t, "value")
		changed, err := Set([]byte(text), "answers", key, value)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		gone, added := "", value
		if n := root.Get("answers").Get(key); n != nil {
			gone = n.Raw()
			if strings.Count(text, "#")-strings.Count(gone, "#") != strings.Count(string(changed), "#")-strings.Count(value, "#") {
				t.Fatalf("a remark is lost\n%s\n---\n%s", text, changed)
			}
		} else {
			end := "\n"
			if strings.Contains(text, "\r\n") {
				end = "\r\n"
			}
			line := key + " = " + value
			wholeLines(t, text, string(changed))
			added = end + end + "[answers]" + end + line + end + "\x00, " + line + "\x00 " + line + " \x00" + end + "answers." + line + end + "\x00" + end + line + end
		}
		kept(t, text, string(changed), gone, added, ".answers."+key)
		after, _ := tomltext.Parse("t", changed)
		if is := after.Get("answers").Get(key).Raw(); is != value {
			t.Fatalf("%s is %q, not %q\n%s", key, is, value, changed)
		}
	})
}

// TestDecisionsKeepAllElse makes decisions in made-up cases, one after the
// other: no remark is lost, and no value outside the two lists is touched.
func TestDecisionsKeepAllElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawCase(t)
		for range rapid.IntRange(1, 4).Draw(t, "decisions") {
			list := rapid.SampledFrom(Decided).Draw(t, "list")
			d := advisor.Decision{Operation: rapid.SampledFrom([]string{"head_off", "battery", "x"}).Draw(t, "operation"),
				Note: rapid.SampledFrom([]string{"", "it's # \"so\""}).Draw(t, "note")}
			after, err := Decide([]byte(text), list, d)
			if err != nil {
				t.Fatalf("%v\n%s", err, text)
			}
			root, faults := tomltext.Parse("t", after)
			if faults.HasErrors() {
				t.Fatalf("torn: %v\n%s", faults, after)
			}
			if _, there := find(root.Get("decisions").Get(list), d.Operation); !there {
				t.Fatalf("%s is not %s\n%s", d.Operation, list, after)
			}
			_, accepted := find(root.Get("decisions").Get("accepted"), d.Operation)
			_, declined := find(root.Get("decisions").Get("declined"), d.Operation)
			if accepted && declined {
				t.Fatalf("%s is both accepted and declined\n%s", d.Operation, after)
			}
			if strings.Count(string(after), "# kept") != strings.Count(text, "# kept") {
				t.Fatalf("a remark is lost\n%s\n---\n%s", text, after)
			}
			lists := map[string]string{}
			old, _ := tomltext.Parse("t", []byte(text))
			flat(old, "", lists)
			fresh := map[string]string{}
			flat(root, "", fresh)
			for path, raw := range lists {
				inLists := slices.ContainsFunc(Decided, func(l string) bool { return strings.HasPrefix(path, ".decisions."+l+"[") })
				if !inLists && fresh[path] != raw {
					t.Fatalf("%s was %s and is %q", path, raw, fresh[path])
				}
			}
			text = string(after)
		}
	})
}
