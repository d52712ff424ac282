package terminal

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"

	"golang.org/x/term"

	"longstand/advisor/interview"
)

// Screen asks at a real terminal, with line editing, history and completion of
// options and commands by Tab. Nothing is drawn but the line being typed.
type Screen struct {
	fd     int
	t      *term.Terminal
	prompt *interview.Prompt
	bold   bool
}

// stream joins the two directions of a terminal.
type stream struct {
	io.Reader
	io.Writer
}

// NewScreen asks at the terminal that in is; the caller has made sure of it.
func NewScreen(in *os.File, out io.Writer, bold bool) *Screen {
	s := &Screen{fd: int(in.Fd()), t: term.NewTerminal(stream{in, out}, "> "), bold: bold}
	s.t.AutoCompleteCallback = s.complete
	return s
}

// IsTerminal tells whether a stream is a terminal.
func IsTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// Ask puts a question and reads one edited line. Ctrl-C and Ctrl-D end the
// input, which saves what was answered.
func (s *Screen) Ask(p *interview.Prompt) (string, error) {
	text := p.Text()
	if s.bold {
		text = strings.Replace(text, p.Question.Ask, "\x1b[1m"+p.Question.Ask+"\x1b[0m", 1)
	}
	s.Say(text + "  " + interview.Keys)
	s.prompt = p
	before, err := term.MakeRaw(s.fd)
	if err != nil {
		return "", fmt.Errorf("the terminal cannot be read key by key (try --plain): %w", err)
	}
	if w, h, err := term.GetSize(s.fd); err == nil && w > 0 {
		_ = s.t.SetSize(w, h)
	}
	line, err := s.readLine()
	if back := term.Restore(s.fd, before); err == nil {
		err = back
	}
	if errors.Is(err, term.ErrPasteIndicator) {
		err = nil
	}
	if err != nil {
		return "", ended(err)
	}
	return line, nil
}

// readLine reads one edited line. A signal that ends the program ends the input
// instead, so that the terminal is given back as it was and the case let go.
func (s *Screen) readLine() (string, error) {
	ends := make(chan os.Signal, 1)
	signal.Notify(ends, syscall.SIGTERM, syscall.SIGHUP)
	defer signal.Stop(ends)
	type read struct {
		line string
		err  error
	}
	done := make(chan read, 1)
	go func() {
		line, err := s.t.ReadLine()
		done <- read{line, err}
	}()
	select {
	case r := <-done:
		return r.line, r.err
	case <-ends:
		return "", io.EOF
	}
}

// Say prints whole lines.
func (s *Screen) Say(text string) { fmt.Fprintln(s.t, text) }

// complete finishes a word at Tab when only one option or command begins so.
func (s *Screen) complete(line string, pos int, key rune) (string, int, bool) {
	if key != '\t' || s.prompt == nil || pos != len(line) {
		return "", 0, false
	}
	start := strings.LastIndexAny(line, " ,") + 1
	word := strings.ToLower(line[start:])
	if word == "" {
		return "", 0, false
	}
	found := ""
	for _, c := range s.words() {
		if strings.HasPrefix(c, word) && c != found {
			if found != "" {
				return "", 0, false
			}
			found = c
		}
	}
	if found == "" {
		return "", 0, false
	}
	line = line[:start] + found
	return line, len(line), true
}

// words are all that Tab completes at this prompt.
func (s *Screen) words() (out []string) {
	for i := range s.prompt.Question.Options {
		out = append(out, s.prompt.Question.Options[i].ID)
	}
	for _, c := range interview.Commands {
		out = append(out, string(c.Word))
	}
	if s.prompt.Once != nil {
		out = append(out, "only ", interview.Each)
	}
	return append(out, "hidden", "can't tell", "skip", "yes", "no", "none", "about ",
		"@seen", "@measured", "@paper", "@owner", "@secondhand")
}
