package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longstand/advisor"
	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/report"
)

// letterAsked is what the command line asks of a letter.
type letterAsked struct {
	format, file, phrases string
	day                   string
	since                 int
	send                  bool
}

func (d *door) letter() *cobra.Command {
	var ask letterAsked
	formats := append([]string{"pdf"}, report.LetterFormats...)
	c := &cobra.Command{Use: "letter CASE", Short: "the letter to the owner",
		Long: "The letter to the owner. With --send the case notes what the letter said, under the next\n" +
			"number; a later letter --since that number says only what changed. Without --send nothing\nis written to the case.",
		Example: "  longstand letter testdata/cases/demo.toml -o letter.html\n  longstand letter testdata/cases/demo.toml --format text\n" +
			"  longstand letter estate.toml --send -o letter1.html\n  longstand letter estate.toml --since 1 --send -o letter2.html",
		Args: oneCase}
	c.Flags().StringVar(&ask.format, "format", "html", strings.Join(append(report.LetterFormats, "pdf"), ", "))
	c.Flags().StringVarP(&ask.file, "output", "o", "", "file to write instead of standard output")
	c.Flags().StringVar(&ask.phrases, "phrases", "", "file of the shop's own phrases, which stand in for the built-in ones (also letter.tmpl in a house directory)")
	c.Flags().StringVar(&ask.day, "date", "", "the day on which it is written, as 2025-10-14 (default: the case's)")
	c.Flags().IntVar(&ask.since, "since", 0, "number of an earlier letter: say only what changed since it")
	c.Flags().BoolVar(&ask.send, "send", false, "this letter goes to the owner: note in the case what it said")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", ask.format, formats); err != nil {
			return err
		}
		if ask.format == "pdf" && ask.file == "" {
			return usage("--format pdf needs a file to write: -o letter.pdf")
		}
		if _, err := time.Parse(time.DateOnly, ask.day); ask.day != "" && err != nil {
			return usage("--date: %q is no date; write it as 2025-10-14", ask.day)
		}
		if c.Flags().Changed("since") && ask.since < 1 {
			return usage("--since: letters are numbered from 1, found %d", ask.since)
		}
		return d.sendLetter(args[0], &ask)
	}
	return c
}

// sendLetter writes the letter on a case, and notes it in the case if it is sent.
func (d *door) sendLetter(path string, ask *letterAsked) error {
	own, err := d.ownPhrases(ask.phrases)
	if err != nil {
		return err
	}
	if !ask.send {
		a, b, err := d.worked(path, "")
		if err != nil {
			return err
		}
		return d.writeLetter(a, b, ask, own)
	}
	k, err := d.sit(path, "")
	if err != nil {
		return err
	}
	return k.leave(k.noteLetter(ask, own))
}

// noteLetter writes the letter, then what it said into the case.
func (k *desk) noteLetter(ask *letterAsked, own string) error {
	k.d.sources[k.path] = k.data
	a := k.e.Advise(k.c)
	if err := k.d.writeLetter(a, k.e.Book(), ask, own); err != nil {
		return err
	}
	says := report.LetterSays(a, ask.day)
	data, err := casefile.Remember(k.data, &says)
	if err != nil {
		return failure(err)
	}
	if _, err := k.keep(data); err != nil {
		var e *exit
		if ask.file != "" && errors.As(err, &e) && e.err != nil {
			return &exit{e.code, fmt.Errorf("%w; the letter itself lies in %s", e.err, ask.file)}
		}
		return err
	}
	fmt.Fprintf(k.d.errs, "letter %d is noted in %s; a later one says what changed with --since %d\n", says.Number, k.path, says.Number)
	return nil
}

// writeLetter writes the letter on an advice to where it was asked for.
func (d *door) writeLetter(a *advisor.Advice, b *advisor.Book, ask *letterAsked, own string) error {
	photos, err := d.photographs(a.Case)
	if err != nil {
		return err
	}
	page, err := report.Letter(a, b, report.LetterOptions{Format: strings.Replace(ask.format, "pdf", "html", 1),
		Phrases: own, Day: ask.day, Since: ask.since, Photos: photos})
	if err != nil {
		return &exit{exitFault, err}
	}
	if ask.format == "pdf" {
		return d.printed(page, ask.file, report.Paper(a.Settings.Locale))
	}
	return d.deliver(page, ask.file)
}

// ownPhrases reads the shop's phrases: letter.tmpl of each house directory that
// has one, then the file named on the command line, which has the last word.
func (d *door) ownPhrases(named string) (string, error) {
	var all strings.Builder
	read := func(file string) error {
		info, err := os.Stat(file)
		if err != nil {
			return err
		}
		if info.Size() > book.MaxBytes {
			return fmt.Errorf("%s has %d bytes; phrases have at most %d", file, info.Size(), book.MaxBytes)
		}
		data, err := os.ReadFile(file)
		all.Write(data)
		return err
	}
	d.sources = map[string][]byte{}
	dirs, err := d.layers()
	if err != nil {
		return "", failed(err)
	}
	for _, dir := range dirs {
		if err := read(filepath.Join(dir, "letter.tmpl")); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", failure(plain(err))
		}
	}
	if named != "" {
		if err := read(named); err != nil {
			return "", failure(plain(err))
		}
	}
	return all.String(), nil
}

// deliver writes a page to a file, or to standard output when none is named.
func (d *door) deliver(page, file string) error {
	if file == "" {
		if _, err := io.WriteString(d.out, page); err != nil {
			return failure(err)
		}
		return nil
	}
	if err := casefile.Save(d.files(), file, []byte(page), 0o644); err != nil {
		return failure(err)
	}
	return nil
}
