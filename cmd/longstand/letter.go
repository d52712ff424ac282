package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"longstand/advisor/book"
	"longstand/advisor/casefile"
	"longstand/advisor/report"
)

func (d *door) letter() *cobra.Command {
	var format, file, phrases string
	formats := append([]string{"pdf"}, report.LetterFormats...)
	c := &cobra.Command{Use: "letter CASE", Short: "the letter to the owner",
		Example: "  longstand letter testdata/cases/demo.toml -o letter.html\n  longstand letter testdata/cases/demo.toml --format text",
		Args:    oneCase}
	c.Flags().StringVar(&format, "format", "html", strings.Join(append(report.LetterFormats, "pdf"), ", "))
	c.Flags().StringVarP(&file, "output", "o", "", "file to write instead of standard output")
	c.Flags().StringVar(&phrases, "phrases", "", "file of the shop's own phrases, which stand in for the built-in ones (also letter.tmpl in a house directory)")
	c.RunE = func(_ *cobra.Command, args []string) error {
		if err := oneOf("format", format, formats); err != nil {
			return err
		}
		if format == "pdf" && file == "" {
			return usage("--format pdf needs a file to write: -o letter.pdf")
		}
		page, err := d.writeLetter(args[0], strings.Replace(format, "pdf", "html", 1), phrases)
		if err != nil {
			return err
		}
		if format == "pdf" {
			return d.printed(page, file)
		}
		return d.deliver(page, file)
	}
	return c
}

// writeLetter works out the letter on a case.
func (d *door) writeLetter(path, format, phrases string) (string, error) {
	own, err := d.ownPhrases(phrases)
	if err != nil {
		return "", err
	}
	e, err := d.engine()
	if err != nil {
		return "", err
	}
	c, err := d.openCase(path, e.Book())
	if err != nil {
		return "", err
	}
	page, err := report.Letter(e.Advise(c), e.Book(), format, own)
	if err != nil {
		return "", &exit{exitFault, err}
	}
	return page, nil
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
	for _, dir := range d.house {
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
	if err := casefile.Save(casefile.OS, file, []byte(page), 0o644); err != nil {
		return failure(err)
	}
	return nil
}

// printed prints a page of HTML to a PDF file through an installed browser.
// Without one the page itself is kept beside where the PDF would be.
func (d *door) printed(page, file string) error {
	browser := findBrowser()
	if browser == "" {
		beside := strings.TrimSuffix(file, filepath.Ext(file)) + ".html"
		fmt.Fprintf(d.errs, "no browser found to make a PDF (LONGSTAND_BROWSER, or Chromium on the path); wrote %s: open it and print it\n", beside)
		return d.deliver(page, beside)
	}
	dir, err := os.MkdirTemp("", "longstand-letter-")
	if err != nil {
		return failure(err)
	}
	defer os.RemoveAll(dir)
	source := filepath.Join(dir, "letter.html")
	if err := os.WriteFile(source, []byte(page), 0o600); err != nil {
		return failure(plain(err))
	}
	target, err := filepath.Abs(file)
	if err != nil {
		return failure(err)
	}
	out, err := exec.Command(browser, browserArgs(filepath.Join(dir, "profile"), target, source)...).CombinedOutput()
	if err != nil {
		return failure(fmt.Errorf("%s could not make the PDF: %w\n%s", browser, err, out))
	}
	if _, err := os.Stat(target); err != nil {
		return failure(fmt.Errorf("%s ended without writing %s", browser, file))
	}
	return nil
}

// browserArgs asks a browser for a tagged PDF without its own header and footer.
// Its sandbox cannot run for the superuser; the page is our own, and has no
// script and no reach to the network.
func browserArgs(profile, target, source string) []string {
	args := []string{"--headless", "--disable-gpu", "--no-first-run", "--user-data-dir=" + profile, "--no-pdf-header-footer",
		"--generate-pdf-document-outline", "--print-to-pdf=" + target}
	if os.Geteuid() == 0 {
		args = append(args, "--no-sandbox")
	}
	return append(args, "file://"+filepath.ToSlash(source))
}

// findBrowser gives the browser to print with: the one that LONGSTAND_BROWSER
// names, or the first on the path; "" for none.
func findBrowser() string {
	if b := os.Getenv("LONGSTAND_BROWSER"); b != "" {
		if path, err := exec.LookPath(b); err == nil {
			return path
		}
		return ""
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome", "msedge"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}
