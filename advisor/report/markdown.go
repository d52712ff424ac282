package report

import (
	"fmt"
	"strings"

	"longstand/advisor"
)

// Markdown writes the same page as Text for a reader of Markdown.
func Markdown(a *advisor.Advice) string {
	var b strings.Builder
	lines := strings.Split(Text(a), "\n")
	for i := 0; i < len(lines); i++ {
		l := lines[i]
		switch {
		case i == 0:
			fmt.Fprintf(&b, "# %s\n\n", escape(l))
		case i+1 < len(lines) && l != "" && strings.Trim(lines[i+1], "-") == "" && len(lines[i+1]) > 0:
			fmt.Fprintf(&b, "## %s\n", escape(l))
			i++
		case strings.HasSuffix(l, ":") && !strings.HasPrefix(l, " "):
			fmt.Fprintf(&b, "\n### %s\n\n", escape(strings.TrimSuffix(l, ":")))
		default:
			b.WriteString(escape(strings.TrimPrefix(l, "  - ")) + "\n")
		}
	}
	return b.String()
}

// escape keeps free text from being read as Markdown or HTML.
func escape(s string) string {
	return strings.NewReplacer(`\`, `\\`, "`", "\\`", "_", `\_`, "<", "&lt;", "#", `\#`, "|", `\|`, "[", `\[`, "]", `\]`).Replace(s)
}
