package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/diag"
	"longstand/advisor/interview"
)

// entry is what goes with everything that one record command says.
type entry struct {
	how, note, by, on, why, from, sheet string
	hours                               string
	photos                              []string
	replace                             bool
}

func (d *door) record() *cobra.Command {
	var e entry
	c := &cobra.Command{Use: "record CASE ID=VALUE...", Short: "findings, decisions and work done, into the case",
		Long:    "Each ID=VALUE is an answer as one types it at intake. accepted:OPERATION, declined:OPERATION\nand done:OPERATION record decisions; overruled:OPERATION=CALL sets a call by hand. A second\nanswer to a question is kept beside the first.",
		Example: "  longstand record estate.toml 'compression=140 138 142 136 psi' --how measured\n  longstand record estate.toml accepted:head_off done:battery\n  longstand record estate.toml done:water_pump --hours 2.5\n  longstand record estate.toml --from readings.csv"}
	f := c.Flags()
	f.StringVar(&e.how, "how", "", "how it is known: "+strings.Join(advisor.Channels, ", "))
	f.StringVar(&e.note, "note", "", "a remark")
	f.StringVar(&e.by, "by", "", "who says so")
	f.StringVar(&e.on, "on", "", "the day, as 2025-10-14")
	f.StringArrayVar(&e.photos, "photo", nil, "file of a photograph, named from the case's folder (repeatable)")
	f.StringVar(&e.why, "why", "", "the reason of an overruled call")
	f.StringVar(&e.hours, "hours", "", "the hours that the one operation done took")
	f.StringVar(&e.from, "from", "", "file of answers: question, then its value or readings, separated by commas")
	f.StringVar(&e.sheet, "sheet", "", "the edition printed on the work sheet, to record by its box numbers")
	f.BoolVar(&e.replace, "replace", false, "correct the answer that is there, instead of keeping both")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			return usage("a case file is wanted, and what to record; found none")
		}
		if e.how != "" {
			if err := oneOf("how", e.how, advisor.Channels); err != nil {
				return err
			}
		}
		return d.recordAll(args[0], args[1:], &e)
	}
	return c
}

// recordAll writes everything that one command says at once, or nothing of it.
func (d *door) recordAll(path string, said []string, e *entry) error {
	rows, err := e.rows(d.files())
	if err != nil {
		return err
	}
	for _, s := range said {
		rows = append(rows, row{s, ""})
	}
	if len(rows) == 0 {
		return usage("nothing to record: say QUESTION=ANSWER, accepted:, declined: or done:OPERATION")
	}
	if e.hours != "" && (len(rows) != 1 || !strings.HasPrefix(rows[0].said, "done:")) {
		return usage("--hours goes with one done:OPERATION and nothing else")
	}
	k, err := d.sit(path, "")
	if err != nil {
		return err
	}
	return k.leave(k.recordRows(rows, e))
}

func (k *desk) recordRows(rows []row, e *entry) error {
	data, told := k.data, []string(nil)
	rows, err := k.unboxed(rows, e.sheet)
	if err != nil {
		return &exit{exitFault, fmt.Errorf("nothing is recorded: %w", err)}
	}
	iv := interview.New(k.e, k.c, interview.Options{})
	if slices.ContainsFunc(rows, func(r row) bool { return r.isFinding(iv) }) {
		if data, err = k.freeze(data); err != nil {
			return failure(err)
		}
	}
	when := k.order(time.Now(), iv, rows)
	for _, r := range rows {
		var line string
		own := *e
		own.on = when.of(r, e.on)
		if data, line, err = k.one(iv, data, r, &own); err != nil {
			if r.at != "" {
				err = fmt.Errorf("%s: %w", r.at, err)
			}
			return &exit{exitFault, fmt.Errorf("nothing is recorded: %w", err)}
		}
		told = append(told, line)
	}
	if _, err = k.keep(data); err != nil {
		return err
	}
	fmt.Fprintln(k.d.out, strings.Join(told, "\n"))
	for _, c := range k.e.Brief(k.c).Conflicts {
		fmt.Fprintln(k.d.out, c.Text)
	}
	fmt.Fprintf(k.d.out, "\nnext:\n  longstand advise %s\n", k.path)
	return nil
}

// one puts one thing said into the case's bytes, and says it back.
func (k *desk) one(iv *interview.Interview, data []byte, r row, e *entry) ([]byte, string, error) {
	list, id, decided := strings.Cut(r.said, ":")
	if decided && !strings.Contains(list, "=") {
		return k.decide(data, strings.TrimSpace(list), strings.TrimSpace(id), e)
	}
	id, typed, ok := strings.Cut(r.said, "=")
	if id = strings.TrimSpace(id); !ok {
		return nil, "", fmt.Errorf("%q says nothing: QUESTION=ANSWER, accepted:, declined:, done: or overruled:OPERATION", r.said)
	}
	q := iv.Question(id)
	if o := k.e.Book().OnceOver(id); q == nil && o != nil {
		return nil, "", fmt.Errorf("%s is asked at intake, several questions at one prompt; record them one by one: %s", id, strings.Join(o.Questions(), ", "))
	}
	if q == nil {
		return nil, "", fmt.Errorf("there is no question %q; %s", id, near(id, k.questions()))
	}
	reply, err := iv.About(q).Read(typed)
	if err == nil && reply.Command != interview.None {
		err = fmt.Errorf("%q is no answer", typed)
	}
	if err != nil {
		return nil, "", fmt.Errorf("%s: %w", id, err)
	}
	full, put := e.fill(reply), casefile.Another
	if e.replace {
		put = casefile.Answer
	}
	data, err = put(data, q, full)
	shown := strings.TrimSuffix(reply.Shown, " ("+reply.Entry.How.String()+")")
	return data, fmt.Sprintf("%s: %s (%s)", q.Name, shown, full.How), err
}

// fill adds what the options say to an answer; what stands in the answer counts first.
func (e *entry) fill(r interview.Reply) casefile.Entry {
	a := r.Entry
	for i, name := range advisor.Channels {
		if name == e.how && !r.HowTold {
			a.How = advisor.Channel(i)
		}
	}
	if a.Note == "" {
		a.Note = e.note
	}
	a.By, a.On, a.Photos = e.by, e.on, e.photos
	return a
}

// decide records a decision on an operation, or a call set by hand.
func (k *desk) decide(data []byte, list, id string, e *entry) ([]byte, string, error) {
	id, call, _ := strings.Cut(id, "=")
	var ids []string
	for i := range k.e.Book().Operations {
		ids = append(ids, k.e.Book().Operations[i].ID)
	}
	if !slices.Contains(ids, id) {
		return nil, "", fmt.Errorf("there is no operation %q; %s", id, near(id, ids))
	}
	if list == "overruled" {
		if e.by == "" || e.why == "" {
			return nil, "", fmt.Errorf("%s is overruled by whom, and why? add --by and --why", id)
		}
		data, err := casefile.Overrule(data, advisor.Overruling{Operation: id, Call: call, By: e.by, Why: e.why, Date: e.on})
		return data, fmt.Sprintf("%s: %s, set by %s: %s", id, call, e.by, e.why), err
	}
	data, err := casefile.Decide(data, list, advisor.Decision{Operation: id, By: e.by, Note: e.note, Date: e.on})
	if err == nil && list == "done" && e.hours != "" {
		return k.withHours(data, id, e)
	}
	return data, list + ": " + id, err
}

func (k *desk) questions() (ids []string) {
	for i := range k.e.Book().Questions {
		ids = append(ids, k.e.Book().Questions[i].ID)
	}
	return ids
}

func near(word string, ids []string) string {
	if n := diag.Nearest(word, ids); n != "" {
		return "did you mean " + n + "?"
	}
	return "`longstand rules list` has them all"
}
