package interview

import (
	"regexp"
	"slices"
	"strings"

	"longstand/advisor"
	"longstand/advisor/casefile"
)

// sweeper makes the answers of a once-over.
type sweeper struct {
	p      *Prompt
	entry  casefile.Entry // how all is known, and the remark
	rest   any            // what those not picked are; nil: as usual
	picked []int
	untold map[int]any // by place: can't tell or hidden
	all    bool        // each is asked
	sweep  Sweep
	told   [4][]string // names: as usual, can't tell, hidden, asked next
}

// reply settles each question that is put.
func (w *sweeper) reply() (Reply, error) {
	for i := range w.p.Once.Items {
		it := &w.p.Once.Items[i]
		asked, as := w.all || slices.Contains(w.picked, i), any(nil)
		switch untold, ok := w.untold[i]; {
		case asked && ok:
			return Reply{}, wrong("say it once", "%s is to be told, and cannot be told", it.Question.Name)
		case ok:
			as = untold
		case !asked && w.rest != nil:
			as = w.rest
		case !asked && it.Usual != "":
			as = it.taken()
		}
		switch {
		case as != nil:
			if err := w.give(it, as); err != nil {
				return Reply{}, err
			}
		case asked || it.swept || len(it.Now) == 0 && !it.unasked:
			w.ask(it)
		}
	}
	return Reply{Sweep: &w.sweep, Shown: w.shown()}, nil
}

// give answers one question.
func (w *sweeper) give(it *Item, is any) error {
	e := w.entry
	e.Is = is
	if e.How == advisor.Nohow {
		e.How = it.Question.How
	}
	if e.How == advisor.Nohow {
		e.How = advisor.Seen
	}
	r, err := (&Prompt{Question: it.Question, day: w.p.day}).judged(e, "")
	if err != nil {
		return err
	}
	w.sweep.Given = append(w.sweep.Given, Given{Question: it.Question, Entry: r.Entry, Answer: r.Answer})
	heap := 0
	switch r.Answer.Value.State {
	case advisor.CantTell:
		heap = 1
	case advisor.Hidden:
		heap = 2
	}
	w.told[heap] = append(w.told[heap], it.Question.Name)
	return nil
}

// ask leaves one question to be asked by itself. What this once-over said of it
// before is taken out at once: it holds no more.
func (w *sweeper) ask(it *Item) {
	if it.swept {
		w.sweep.Given = append(w.sweep.Given, Given{Question: it.Question, Gone: true})
	}
	w.sweep.Next = append(w.sweep.Next, it.Question.ID)
	w.told[3] = append(w.told[3], it.Question.Name)
}

// taken is the usual answer as a case writes it.
func (it *Item) taken() any {
	switch it.Question.Kind {
	case advisor.YesNoKind:
		return it.Usual == "yes"
	case advisor.Choices:
		return []string{it.Usual}
	}
	return it.Usual
}

// shown says back what was understood.
func (w *sweeper) shown() string {
	heaps := []string{"as usual: ", "cannot be told: ", "cannot be seen until something is off: ", "asked next: "}
	var out []string
	for i, names := range w.told {
		if len(names) > 0 {
			out = append(out, heaps[i]+strings.Join(names, ", "))
		}
	}
	shown := strings.Join(out, "; ")
	if w.entry.How != advisor.Nohow && len(w.sweep.Given) > 0 {
		shown += " (" + w.entry.How.String() + ")"
	}
	return shown
}

// apart finds the words behind which stand those that cannot be told or seen.
var apart = regexp.MustCompile(`(?:^|[ ,;])(c|can't tell|x|hidden) +`)

// pick reads numbers and names: those that differ first, then behind "c" those
// that nobody can tell, behind "x" those that cannot be seen.
func (w *sweeper) pick(list string) error {
	marks := apart.FindAllStringSubmatchIndex(list, -1)
	end := len(list)
	for i := len(marks) - 1; i >= 0; i-- {
		m := marks[i]
		untold, err := w.p.numbered(list[m[1]:end])
		if err != nil {
			return err
		}
		state := any(casefile.CantTell)
		if slices.Contains(unseen, list[m[2]:m[3]]) {
			state = casefile.Hidden
		}
		for _, at := range untold {
			w.untold[at] = state
		}
		end = m[0]
	}
	if strings.TrimSpace(list[:end]) == "" && len(marks) > 0 {
		return nil
	}
	picked, err := w.p.numbered(list[:end])
	if err == nil && w.entry.Note != "" {
		return wrong("leave it out here, and say it where "+w.p.Options[picked[0]]+" is asked", "the remark would stand by the others")
	}
	w.picked = picked
	return err
}
