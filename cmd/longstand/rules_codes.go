package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor/book"
)

func (d *door) rulesCodes() *cobra.Command {
	c := &cobra.Command{Use: "codes [CODE]", Short: "what the codes of faults mean, each with a wrong and a right example",
		Example: "  longstand rules codes\n  longstand rules codes unknown-key",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return usage("one code is wanted, or none for the list; found %s", counted(args))
			}
			return nil
		}}
	c.RunE = func(_ *cobra.Command, args []string) error {
		codes := book.Codes()
		page := codeList(codes)
		if len(args) == 1 {
			var err error
			if page, err = codePage(codes, args[0]); err != nil {
				return err
			}
		}
		if _, err := io.WriteString(d.out, page); err != nil {
			return failure(err)
		}
		return nil
	}
	return c
}

// codeList is one line for each code.
func codeList(codes []book.Code) string {
	wide := 0
	for _, c := range codes {
		wide = max(wide, len(c.ID))
	}
	var page strings.Builder
	for _, c := range codes {
		fmt.Fprintf(&page, "%-*s  %s\n", wide, c.ID, c.Title)
	}
	return page.String()
}

// places says where an example of a code belongs.
var places = map[string]string{
	"rules": "in a rule file", "house": "in a house layer", "case": "in a case", "condition": "in a condition",
}

// codePage explains one code.
func codePage(codes []book.Code, id string) (string, error) {
	var ids []string
	for _, c := range codes {
		ids = append(ids, c.ID)
		if c.ID != id {
			continue
		}
		var page strings.Builder
		fmt.Fprintf(&page, "%s: %s\n", c.ID, c.Title)
		if c.Explanation != "" {
			fmt.Fprintf(&page, "\n%s\n", strings.TrimSpace(c.Explanation))
		}
		where := places[c.In]
		for _, example := range [][2]string{{"wrong", c.Wrong}, {"right", c.Right}} {
			if example[1] != "" {
				fmt.Fprintf(&page, "\n%s:\n%s", strings.TrimSpace(example[0]+", "+where), indented(example[1]))
			}
		}
		return page.String(), nil
	}
	return "", usage("no fault has the code %q; %s", id, codeHint(id, ids))
}

// codeHint names the nearest code; there are too many to list.
func codeHint(id string, ids []string) string {
	if hint := nearestHint(id, ids); strings.HasPrefix(hint, "did you") {
		return hint
	}
	return "`longstand rules codes` lists them"
}

// indented sets a text of several lines in from the left.
func indented(text string) string {
	return "  " + strings.ReplaceAll(strings.TrimRight(text, "\n"), "\n", "\n  ") + "\n"
}
