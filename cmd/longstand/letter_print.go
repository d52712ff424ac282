package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// printed prints a page of HTML to a PDF file through an installed browser.
// Without one the page itself is kept beside where the PDF would be. The paper is
// named only here: a page that is printed by hand takes what lies in the printer.
func (d *door) printed(page, file, paper string) error {
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
	if err := os.WriteFile(source, []byte(strings.Replace(page, "@page {", "@page { size: "+paper+";", 1)), 0o600); err != nil {
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
