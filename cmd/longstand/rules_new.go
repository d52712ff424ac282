package main

import (
	"bufio"
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor/book"
	"longstand/advisor/diag"
	"longstand/advisor/terminal"
)

// drafts are the first texts of house rules, one for each kind.
//
//go:embed drafts/*.toml
var drafts embed.FS

// draftKinds lists the kinds that have a draft, in order.
func draftKinds() (kinds []string) {
	entries, err := drafts.ReadDir("drafts")
	if err != nil {
		panic(err) // they are part of the program
	}
	for _, e := range entries {
		kinds = append(kinds, strings.TrimSuffix(e.Name(), ".toml"))
	}
	return kinds
}

// newRule is what one rules new is to make.
type newRule struct {
	to, from string
	about    []string // the answers to take from the case; none: all with a note
	noInput  bool
}

func (d *door) rulesNew() *cobra.Command {
	var n newRule
	kinds := draftKinds()
	c := &cobra.Command{Use: "new KIND [KEY=VALUE...]", Short: "the first text of a house rule, with comments: " + strings.Join(kinds, ", "),
		Long:    "Writes a rule that reads without fault as it stands, with comments and specimens. On a terminal\nit asks the few things that the rule needs; KEY=VALUE says them at once. --from takes the answers\nof a case that have a note: the note becomes the reason, the answers the condition and its\nfirst specimen.",
		Example: "  longstand rules new standing -o house/salt.toml\n  longstand rules new standing operations=exhaust by='the foreman' --from estate.toml -o house/salt.toml\n  longstand rules check house",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 || strings.Contains(args[0], "=") || len(args) > 1 && !strings.Contains(args[1], "=") {
				return usage("one kind of rule is wanted, of %s; found %s", strings.Join(kinds, ", "), counted(args))
			}
			return nil
		}}
	c.Flags().StringVarP(&n.to, "output", "o", "", "file to write; it must not be there yet")
	c.Flags().StringVar(&n.from, "from", "", "case whose noted answers become the rule")
	c.Flags().StringArrayVar(&n.about, "answer", nil, "with --from: only this answer (repeatable)")
	c.Flags().BoolVar(&n.noInput, "no-input", false, "ask nothing")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if !slices.Contains(kinds, args[0]) {
			return usage("there is no draft of %q; %s", args[0], nearestHint(args[0], kinds))
		}
		return d.draftRule(&n, args[0], args[1:])
	}
	return c
}

// draftRule makes the text, checks it within the book, and writes it.
func (d *door) draftRule(n *newRule, kind string, said []string) error {
	if n.from != "" {
		d.folder = filepath.Dir(n.from)
	}
	files, err := d.bookFiles()
	if err != nil {
		return failed(err)
	}
	t, err := firstText(kind)
	if err != nil {
		return failure(err)
	}
	t.judge = func(text string) diag.List { return d.judgeDraft(files, n.to, text) }
	t.tell = func(l diag.List) { _ = l.WriteText(d.errs, func(file string) []byte { return d.sources[file] }) }
	if n.from != "" {
		if err := d.fromCase(t, n, files); err != nil {
			return err
		}
	}
	for _, s := range said {
		key, value, ok := strings.Cut(s, "=")
		if !ok {
			return usage("%q says nothing: KEY=VALUE is wanted", s)
		}
		if err := t.say(strings.TrimSpace(key), value); err != nil {
			return usage("%s", err)
		}
	}
	if in, ok := d.in.(*os.File); ok && !n.noInput && terminal.IsTerminal(in) && terminal.IsTerminal(d.errs) {
		if err := t.ask(d.in, d.errs); err != nil {
			return &exit{exitFault, err}
		}
	}
	if missing := t.missing(); n.from != "" && len(missing) > 0 {
		return usage("only you can say this: add %s", strings.Join(missing, ", "))
	}
	if faults := t.judge(t.text); len(faults) > 0 {
		return d.tell(faults)
	}
	if n.to != "" {
		return d.writeNew(n.to, []byte(t.text))
	}
	return d.write(t.text)
}

// judgeDraft gives the errors of a text read as one more house layer.
func (d *door) judgeDraft(files []book.File, to, text string) diag.List {
	name := filepath.ToSlash(to)
	if name == "" {
		name = "draft.toml"
	}
	d.sources[name] = []byte(text)
	r := book.Check(append(slices.Clone(files), book.File{Name: name, Data: []byte(text), Layer: name}))
	return slices.DeleteFunc(r.Diagnostics, func(x diag.Diagnostic) bool { return x.Severity != diag.Error })
}

// ask asks what the kind needs and nobody has said; Enter keeps what is there.
// An answer that the book refuses is told and asked again.
func (t *draftText) ask(in io.Reader, out io.Writer) error {
	lines, had := bufio.NewReader(in), len(t.judge(t.text))
	for _, key := range asked[t.kind] {
		for !t.said[key] {
			fmt.Fprintf(out, "%s: %s [%s]\n> ", key, t.doc(key), t.now(key))
			line, err := lines.ReadString('\n')
			if err != nil {
				fmt.Fprintln(out)
				return errors.New("the input ended before the rule was whole; nothing is written")
			}
			if line = strings.TrimSpace(line); line == "" {
				switch must := slices.Contains(needed[t.kind], key); {
				case must && t.said["kind"]:
					fmt.Fprintln(out, "of this kind the draft names none; only you can say which")
					continue
				case must && t.drawn:
					fmt.Fprintln(out, "no case can tell this; only you can")
					continue
				}
				break
			}
			before := t.text
			if err := t.say(key, line); err != nil {
				fmt.Fprintln(out, err)
				t.text, t.said[key] = before, false
				continue
			}
			if key == "kind" && slices.Contains(itemKinds(), line) {
				continue // the id that comes next is judged with it
			}
			now := t.judge(t.text)
			if len(now) > had {
				t.tell(now)
				t.text, t.said[key] = before, false
				continue
			}
			had = len(now)
		}
	}
	return nil
}

// writeNew writes a file that is not there yet: what somebody wrote is never
// written over.
func (d *door) writeNew(to string, text []byte) error {
	f, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return failure(fmt.Errorf("%s is there already; name another file", to))
	}
	if err != nil {
		return failure(plain(err))
	}
	_, err = f.Write(text)
	if err = errors.Join(err, f.Close()); err != nil {
		return failure(errors.Join(err, os.Remove(to)))
	}
	fmt.Fprintf(d.errs, "written: %s\nchange it to what you know, then: longstand rules check %s\n", to, filepath.Dir(to))
	return nil
}
