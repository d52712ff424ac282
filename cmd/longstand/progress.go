package main

import (
	"fmt"
	"io"
	"sync/atomic"

	"longstand/advisor/terminal"
)

// progress counts long work on a terminal; to a file or a pipe it says nothing.
type progress struct {
	to    io.Writer // nil for nothing
	what  string
	total int64
	done  atomic.Int64
}

func newProgress(to io.Writer, what string, total int) *progress {
	p := &progress{what: what, total: int64(total)}
	if terminal.IsTerminal(to) {
		p.to = to
	}
	return p
}

// step notes that one more is done. A hundred lines are said at most, each in
// one write, so that workers may call it side by side.
func (p *progress) step() {
	n := p.done.Add(1)
	if every := max(p.total/100, 1); p.to != nil && n%every == 0 {
		fmt.Fprintf(p.to, "\r%d of %d %s", n, p.total, p.what)
	}
}

// end clears the line.
func (p *progress) end() {
	if p.to != nil {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
}
