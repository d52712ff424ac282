package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"longstand/advisor/book"
	"longstand/advisor/condition"
	"longstand/advisor/diag"
)

// sharpening is what `rules check` says of specimens besides faults.
type sharpening struct {
	survivors, suggest bool
	items              []string // the items asked about, all when empty
}

// named takes the arguments that are no directory for ids of items.
func (s *sharpening) named(args []string) (dirs []string) {
	if !s.survivors && !s.suggest {
		return args
	}
	for _, a := range args {
		if info, err := os.Stat(a); err == nil && info.IsDir() {
			dirs = append(dirs, a)
		} else {
			s.items = append(s.items, a)
		}
	}
	return dirs
}

// show lists what the specimens leave open: of the items named, else of the
// house layers named, else of the whole book.
func (s *sharpening) show(w io.Writer, r *book.Result, dirs []string) error {
	if err := s.known(r); err != nil {
		return err
	}
	open := r.Open(func(id, layer string) bool {
		if len(s.items) > 0 {
			return slices.Contains(s.items, id)
		}
		return len(dirs) == 0 || layer != ""
	})
	var page strings.Builder
	for i := range open {
		if s.survivors {
			survivors(&page, &open[i])
		}
		if s.suggest {
			suggested(&page, &open[i])
		}
	}
	if len(open) == 0 {
		page.WriteString("the specimens leave nothing open\n")
	}
	if _, err := io.WriteString(w, page.String()); err != nil {
		return failure(err)
	}
	return nil
}

func (s *sharpening) known(r *book.Result) error {
	ids := r.IDs()
	for _, id := range s.items {
		if !slices.Contains(ids, id) {
			hint := "`longstand rules list` lists them"
			if near := diag.Nearest(id, ids); near != "" {
				hint = "did you mean " + near + "?"
			}
			return usage("%q is no directory and no item of the book; %s", id, hint)
		}
	}
	return nil
}

// survivors lists what the specimens of one condition do not show, each at its
// place with the case that would show it. What the condition should say of that
// case is left to a person.
func survivors(page *strings.Builder, o *book.Open) {
	if o.Bare {
		fmt.Fprintf(page, "%s: class %s: %s %s has no specimen\n", o.At, o.Class, o.Kind, o.ID)
		return
	}
	for _, p := range o.Points {
		what := "does not show "
		if p.Kind == condition.OwedSlip {
			what = "would not notice if "
		}
		fmt.Fprintf(page, "%s: class %s: %s %s %s%s\n", o.At, o.Class, o.Kind, o.ID, what, p.Words)
		if p.Try != nil {
			fmt.Fprintf(page, "  %s\n", p.Try.Asked())
		}
	}
}

// suggested lists specimens for a person to answer, and where each answer is
// written down.
func suggested(page *strings.Builder, o *book.Open) {
	fmt.Fprintf(page, "%s: class %s: %s %s\n  %s\n", o.At, o.Class, o.Kind, o.ID, o.Condition)
	for i, s := range o.Ask {
		fmt.Fprintf(page, "  %d. %s\n", i+1, s.Try.InWords())
		key, not, with := o.Key, o.KeyNot, ""
		if !s.Try.OfFirst() {
			key, not = o.Full, o.FullNot
			if at := s.Try.Base(); at.Line > 0 {
				with = fmt.Sprintf("   with the other answers of %d:%d", at.Line, at.Col)
			}
		}
		fmt.Fprintf(page, "     yes: %s = [%s]%s\n     no:  %s = [%s]%s\n", key, s.Try.Written(), with, not, s.Try.Written(), with)
		fmt.Fprintf(page, "     it bears on %d of %d open points\n", s.Shows, len(o.Points))
	}
	if len(o.Ask) == 0 {
		page.WriteString("  no case near by bears on what is open: write a first specimen\n")
	}
}

// scoreText counts what the specimens show, by class, in whole numbers.
func scoreText(s *book.Score) string {
	var page strings.Builder
	fmt.Fprintf(&page, "specimens: %d run\n", s.Specimens)
	for c := range s.Of {
		class, of := book.Class(c), &s.Of[c]
		if of.Conditions == 0 {
			continue
		}
		fmt.Fprintf(&page, "class %s (%s): %d conditions", class, class.Words(), of.Conditions)
		if of.Bare > 0 {
			fmt.Fprintf(&page, ", %d without specimens", of.Bare)
		}
		fmt.Fprintf(&page, "; %d of %d obligations of atoms met, %d of %d edges of thresholds, %d of %d slips of the pen noticed",
			of.Pinned, of.Pins, of.Edged, of.Edges, of.Noticed, of.Slips)
		if of.Undecided > 0 {
			fmt.Fprintf(&page, ", %d not decided", of.Undecided)
		}
		page.WriteString("\n")
	}
	return page.String()
}
