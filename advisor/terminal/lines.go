// Package terminal is where questions are put: at a real terminal, over a pipe,
// or to a file of answers. It asks and repeats what was typed; it decides nothing.
package terminal

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"longstand/advisor/interview"
)

// longest bounds one typed line, in bytes.
const longest = 64 << 10

// Lines asks over a pipe, or at a terminal that is read aloud: plain text, no
// redrawing. One reader is shared by all questions, so that answers sent at
// once are all kept.
type Lines struct {
	in  *bufio.Reader
	out io.Writer
}

// NewLines asks on out and reads answers, a line each, from in.
func NewLines(in io.Reader, out io.Writer) *Lines {
	return &Lines{in: bufio.NewReader(in), out: out}
}

// Ask puts a question and reads one line. The end of input is
// interview.ErrEnded, even behind an unfinished line: half an answer is none.
func (l *Lines) Ask(p *interview.Prompt) (string, error) {
	fmt.Fprintf(l.out, "%s%s\n> ", p.Text(), "  "+interview.Keys)
	var line strings.Builder
	for {
		part, err := l.in.ReadSlice('\n')
		line.Write(part)
		if errors.Is(err, bufio.ErrBufferFull) && line.Len() < longest {
			continue
		}
		if errors.Is(err, bufio.ErrBufferFull) {
			return "", fmt.Errorf("a line longer than %d KB is no answer", longest>>10)
		}
		if err != nil {
			fmt.Fprintln(l.out)
			return "", ended(err)
		}
		return strings.TrimRight(line.String(), "\r\n"), nil
	}
}

func ended(err error) error {
	if errors.Is(err, io.EOF) {
		return interview.ErrEnded
	}
	return err
}

// Say prints whole lines.
func (l *Lines) Say(text string) { fmt.Fprintln(l.out, text) }
