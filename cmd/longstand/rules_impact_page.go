package main

import (
	"fmt"
	"strings"

	"longstand/advisor/report"
)

// page is the account of all cases.
func (i *impact) page() string {
	var page strings.Builder
	i.writeTotals(&page)
	i.writeFired(&page)
	for n := range i.outcomes {
		if o := &i.outcomes[n]; len(o.fault) == 0 && !o.nothing() {
			fmt.Fprintf(&page, "\n%s\n  %s\n", i.paths[n], o.name)
			o.write(&page, "  ")
		}
	}
	return page.String()
}

// writeTotals says how many cases change, in what, and the sum of all.
func (i *impact) writeTotals(page *strings.Builder) {
	var changed, calls, holds, money int
	var sums [2]int64
	count := func(n *int, is bool) {
		if is {
			*n++
		}
	}
	for n := range i.outcomes {
		if o := &i.outcomes[n]; len(o.fault) == 0 {
			count(&changed, !o.nothing())
			count(&calls, len(o.calls) > 0)
			count(&holds, len(o.holds) > 0)
			count(&money, o.money[0] != o.money[1])
			sums[0], sums[1] = sums[0]+o.likely[0], sums[1]+o.likely[1]
		}
	}
	fmt.Fprintf(page, "%d of %d cases change under these house rules: calls in %d, holds in %d, the likely sum in %d\n",
		changed, i.read(), calls, holds, money)
	if unread := len(i.paths) - i.read(); unread > 0 {
		fmt.Fprintf(page, "not read, for their faults: %d\n", unread)
	}
	was, now := &i.before.Book().Settings, &i.after.Book().Settings
	fmt.Fprintf(page, "likely sum of all: %s, now %s", report.Money(sums[0], was), report.Money(sums[1], now))
	if was.Currency != now.Currency {
		page.WriteString("; the two are not of one currency")
	}
	page.WriteString("\n")
}

// read counts the cases without fault.
func (i *impact) read() (n int) {
	for k := range i.outcomes {
		if len(i.outcomes[k].fault) == 0 {
			n++
		}
	}
	return n
}

// writeFired counts for every house rule the cases in which it took part.
func (i *impact) writeFired(page *strings.Builder) {
	page.WriteString("\nhouse rules, and in how many cases each took part\n")
	for n, it := range i.items {
		count := 0
		for k := range i.outcomes {
			if fired := i.outcomes[k].fired; fired != nil && fired[n] {
				count++
			}
		}
		fmt.Fprintf(page, "  %s %s: %d of %d\n", it.kind, it.id, count, i.read())
	}
	for _, w := range i.withdrawn {
		fmt.Fprintf(page, "  %s %s: withdrawn, %s\n", w.Kind, w.ID, w.Because)
	}
}
