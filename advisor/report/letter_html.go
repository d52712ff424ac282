package report

import (
	"html/template"
	"strings"
	"sync"
)

var letterPage = sync.OnceValues(func() (*template.Template, error) {
	return template.ParseFS(wordFiles, "words/page.tmpl")
})

// htmlPage writes the letter as one page of HTML that needs nothing else.
func htmlPage(d *letterText) (string, error) {
	t, err := letterPage()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	if err := t.ExecuteTemplate(&b, "page.tmpl", d); err != nil {
		return "", err
	}
	return b.String(), nil
}
