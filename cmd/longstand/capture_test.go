package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"
)

// captureCommands let a story write down what its person does and reads. What
// is written down is a golden page in the end.
var captureCommands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"tell": func(ts *testscript.TestScript, _ bool, args []string) {
		capture(ts, "", strings.Join(args, " ")+"\n\n")
	},
	"show": show, "change": change, "golden": golden,
}

// captureWidth is the width of a captured page in columns.
const captureWidth = 80

// capture adds a text to the page, broken lines set in.
func capture(ts *testscript.TestScript, in, text string) {
	f, err := os.OpenFile(ts.MkAbs("captured.txt"), os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	ts.Check(err)
	for line := range strings.Lines(text) {
		_, err = f.WriteString(folded(strings.TrimRight(line, "\n"), in))
		ts.Check(err)
	}
	ts.Check(f.Close())
}

// show COMMAND... runs a command, as exec does, and captures what it prints.
func show(ts *testscript.TestScript, neg bool, args []string) {
	err := ts.Exec(args[0], args[1:]...)
	if neg == (err == nil) {
		ts.Fatalf("unexpected: %v: %v", args, err)
	}
	words := slices.Clone(args)
	for i, w := range words {
		if key, value, ok := strings.Cut(w, "="); ok && strings.Contains(value, " ") {
			words[i] = key + "='" + value + "'"
		}
	}
	capture(ts, "    ", "$ "+strings.Join(words, " ")+"\n"+ownPart(ts.ReadFile("stderr")+ts.ReadFile("stdout"))+"\n")
}

// change FILE KEY VALUE... writes the lines of some keys of a rule file anew, as
// an editor would, and captures them.
func change(ts *testscript.TestScript, _ bool, args []string) {
	file, text := args[0], ts.ReadFile(args[0])
	for pair := range slices.Chunk(args[1:], 2) {
		line := regexp.MustCompile(`(?m)^` + regexp.QuoteMeta(pair[0]) + ` = .*$`)
		at := line.FindStringIndex(text)
		if at == nil {
			ts.Fatalf("%s has no line %s = ", file, pair[0])
		}
		now := pair[0] + " = " + pair[1]
		text = text[:at[0]] + now + text[at[1]:]
		capture(ts, "    ", "  "+now+"\n")
	}
	capture(ts, "", "\n")
	ts.Check(os.WriteFile(ts.MkAbs(file), []byte(text), 0o600))
}

// golden NAME compares what was captured with a golden page.
func golden(ts *testscript.TestScript, _ bool, args []string) {
	path := filepath.Join(ts.Getenv("REPO"), "testdata", "golden", args[0])
	got := strings.TrimRight(ts.ReadFile("captured.txt"), "\n") + "\n"
	for line := range strings.Lines(got) {
		if utf8.RuneCountInString(strings.TrimRight(line, "\n")) > captureWidth {
			ts.Fatalf("wider than %d columns: %s", captureWidth, line)
		}
	}
	if *update {
		ts.Check(os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	ts.Check(err)
	if got != string(want) {
		ts.Fatalf("%s is out of date; go test ./cmd/longstand -run Stories -update writes it anew. Now it is:\n%s", args[0], got)
	}
}

var builtInFault = regexp.MustCompile(`^rules/\S+: warning: `)
var bookAccount = regexp.MustCompile(`^(specimens: |class [AB] |\d+ warnings?)`)

// ownPart leaves out what a check says of the built-in book: the page is of the
// person's own rule, and stays as it is when the book grows.
func ownPart(text string) string {
	var page strings.Builder
	passing := false
	for line := range strings.Lines(text) {
		switch {
		case builtInFault.MatchString(line):
			passing = true
		case passing && strings.HasPrefix(line, " "):
		case strings.HasSuffix(line, " found\n"):
			end := "no fault found"
			if strings.Contains(page.String(), ": warning: ") {
				end = "no error found"
			}
			page.WriteString("...: " + end + "\n")
		case bookAccount.MatchString(line):
		default:
			passing = false
			page.WriteString(line)
		}
	}
	return page.String()
}

// folded breaks a line at a space where it is wider than the page; what follows
// is set in by so much more.
func folded(line, in string) string {
	in += line[:len(line)-len(strings.TrimLeft(line, " "))]
	var page strings.Builder
	for utf8.RuneCountInString(line) > captureWidth {
		at := strings.LastIndex(string([]rune(line)[:captureWidth+1]), " ")
		if at <= len(in) {
			break
		}
		page.WriteString(line[:at] + "\n")
		line = in + strings.TrimLeft(line[at:], " ")
	}
	return page.String() + line + "\n"
}
