package casefile

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"longstand/advisor/tomltext"
)

// drawCase makes up a case as people write one: comments, blank lines, tables
// in any order, values in each form, either line end.
func drawCase(t *rapid.T) string {
	end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "line end")
	value := rapid.SampledFrom([]string{"1", "true", `"a # b"`, `'c'`, "[1, 2]", `["x", # why` + end + ` "y"]`, `{ is = 1, how = "owner" }`, "2025-10-14", `[{ is = 1 }, { is = 2 }]`})
	remark := rapid.SampledFrom([]string{"", " # kept", "\t# [answers]", "   "})
	var b strings.Builder
	write := func(line string) { b.WriteString(line + remark.Draw(t, "remark") + end) }
	b.WriteString("case = 1" + end)
	for i, table := range rapid.Permutation([]string{"[answers]", "[decisions]", "[forecast]", "[[overruled]]", "[[answers.many]]"}).Draw(t, "tables") {
		write("# part " + fmt.Sprint(i))
		write(table)
		for k := range rapid.IntRange(0, 3).Draw(t, "keys") {
			write(fmt.Sprintf("k%d = %s", k, value.Draw(t, "value")))
		}
	}
	text := b.String()
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

// TestChangesKeepAllElse sets a key in made-up cases: every other value is as it
// was, and so is every comment outside of the value that was replaced.
func TestChangesKeepAllElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := drawCase(t)
		root, faults := tomltext.Parse("t", []byte(text))
		if faults.HasErrors() {
			t.Fatalf("the test's own case does not read: %v\n%s", faults, text)
		}
		key := rapid.SampledFrom([]string{"k0", "k1", "new"}).Draw(t, "key")
		changed, err := Set([]byte(text), "answers", key, "77")
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		after, faults := tomltext.Parse("t", changed)
		if faults.HasErrors() {
			t.Fatalf("torn: %v\n%s", faults, changed)
		}
		was, is := map[string]string{}, map[string]string{}
		flat(root, "", was)
		flat(after, "", is)
		mine := ".answers." + key
		if is[mine] != "77" {
			t.Fatalf("%s is %q\n%s", mine, is[mine], changed)
		}
		for path, raw := range was {
			if !strings.HasPrefix(path, mine) && is[path] != raw {
				t.Fatalf("%s was %s and is %q\n%s", path, raw, is[path], changed)
			}
		}
		if strings.Count(string(changed), "# kept") != strings.Count(text, "# kept") || strings.Count(string(changed), "# part") != 5 {
			t.Fatalf("a comment is lost\n%s\n---\n%s", text, changed)
		}
	})
}
