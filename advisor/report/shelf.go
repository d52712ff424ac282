package report

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"longstand/advisor"
)

// BookSummary counts a book's items in one line.
func BookSummary(b *advisor.Book) string {
	return fmt.Sprintf("%d questions, %d suspects, %d signs, %d inspections, %d operations, %d standing rules, %d holds, %d cautions: no fault found\n",
		len(b.Questions), len(b.Suspects), len(b.Signs), len(b.Inspections), len(b.Operations), len(b.Standing), len(b.Holds), len(b.Cautions))
}

// BookList lists the items, one a line.
func BookList(b *advisor.Book) string {
	var out strings.Builder
	for _, it := range b.Items() {
		out.WriteString(wrap(it.Name, fmt.Sprintf("%-11s %-32s ", it.Kind, it.ID), strings.Repeat(" ", 45), 100))
	}
	return out.String()
}

// BookSources is the account of sources: each with its citation, whether its
// figures are from memory, the items that rest on it, how many figures those
// give, and which of the shop's own figures rest on it.
func BookSources(b *advisor.Book) string {
	by, figures, settings := map[string][]string{}, map[string]int{}, map[string][]string{}
	for _, f := range b.Figures() {
		for _, s := range f.Sources {
			figures[s]++
			if f.Of == "settings" && !slices.Contains(settings[s], f.What) {
				settings[s] = append(settings[s], f.What)
			}
		}
	}
	for _, it := range b.Items() {
		for _, s := range it.Sources {
			by[s] = append(by[s], it.ID)
		}
	}
	var out strings.Builder
	for _, s := range b.Sources {
		if len(by[s.ID]) == 0 && figures[s.ID] == 0 {
			continue
		}
		recalled := ""
		if s.Recalled {
			recalled = "; from memory, not read again"
		}
		fmt.Fprintf(&out, "%s (%s%s)\n", s.Cite, s.Kind, recalled)
		if len(by[s.ID]) > 0 {
			out.WriteString(wrap(fmt.Sprintf("%d items: %s", len(by[s.ID]), strings.Join(by[s.ID], ", ")), "  ", "    ", width))
		}
		if figures[s.ID] > 0 {
			fmt.Fprintf(&out, "  figures that rest on it: %d\n", figures[s.ID])
		}
		if len(settings[s.ID]) > 0 {
			out.WriteString(wrap("of them in the settings: "+strings.Join(settings[s.ID], ", "), "  ", "    ", width))
		}
	}
	return out.String()
}

// BookTools lists every tool that a look needs, whether the shop has it, and
// the looks that need it.
func BookTools(b *advisor.Book) string {
	looks := map[string][]string{}
	for i := range b.Inspections {
		for _, t := range b.Inspections[i].Tools {
			looks[t] = append(looks[t], b.Inspections[i].ID)
		}
	}
	var out strings.Builder
	for _, t := range slices.Sorted(maps.Keys(looks)) {
		has := "taken to be there"
		switch {
		case slices.Contains(b.Settings.HandTools, t):
			has = "a hand tool"
		case slices.Contains(b.Settings.Tools, t):
			has = "the shop has it"
		case len(b.Settings.Tools) > 0:
			has = "the shop does not have it"
		}
		out.WriteString(wrap(t+" ("+has+"): "+strings.Join(looks[t], ", "), "", "    ", width))
	}
	return out.String()
}
