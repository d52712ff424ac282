// Package casefile keeps cases on disk: a TOML file for each car that a person
// can read and diff. What a person wrote is never lost: faults are placed and
// told, and the rest is read all the same.
//
// Its files: read*.go read a case, its answers, decisions, letters and end; change*.go
// replace the bytes of one value and leave all others; encode.go writes values;
// save.go and lock*.go make the bytes durable, one writer at a time, through the
// port of disk.go; keys.go lists the keys, for schemas.
package casefile

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/reckon"
	"longstand/advisor/tomltext"
)

// Version is the newest format that this program reads and writes. A case is
// written in the oldest format that has all of its keys, so that an older
// program goes on reading the cases that it understands.
//
//   - 1: everything up to the end of intake, decisions and letters.
//   - 2: adds how the job ended: closed, looked and hours.
const Version = 2

// first is the format of a new case.
const first = 1

// MaxBytes is the size above which a case is refused.
const MaxBytes = 256 << 10

// Read reads a case against the book whose questions it answers. The case is
// returned with what could be read, never nil; with errors in the list it must
// not be advised on.
func Read(file string, data []byte, book *advisor.Book) (*advisor.Case, diag.List) {
	cases, faults := ReadEach(file, data, book)
	return cases[0], faults[0]
}

// ReadEach reads a case against several books, each as Read does. Its text is
// parsed once.
func ReadEach(file string, data []byte, books ...*advisor.Book) (cases []*advisor.Case, faults []diag.List) {
	var root *tomltext.Node
	var list diag.List
	if len(data) > MaxBytes {
		d := list.Errorf(diag.Span{File: file}, "file-too-large", "a case has at most %d KB", MaxBytes>>10)
		d.Help = "this is something else than a case"
	} else {
		root, list = tomltext.Parse(file, data)
	}
	name := filepath.Base(file)
	for _, book := range books {
		c, list := readRoot(file, strings.TrimSuffix(name, filepath.Ext(name)), root, list, book)
		cases, faults = append(cases, c), append(faults, list)
	}
	return cases, faults
}

// readRoot reads a parsed case by a book; root is nil when there is none.
func readRoot(file, id string, root *tomltext.Node, list diag.List, book *advisor.Book) (*advisor.Case, diag.List) {
	r := caseReader{book: book, list: slices.Clone(list), c: &advisor.Case{File: file, ID: id, Version: Version}}
	if root != nil {
		r.header(root)
		r.rest(root)
		r.list.Sort()
	}
	return r.c, r.list
}

// noDate stands in for the day of a case that has none, so that its answers
// are not blamed for that.
const noDate = 2200

// caseReader gathers one case and its faults.
type caseReader struct {
	book *advisor.Book
	c    *advisor.Case
	list diag.List
}

// topKeys are the keys of a case, with what they mean.
var topKeys = []struct{ key, doc string }{
	{"case", "the format's version"},
	{"name", "the job's name"},
	{"date", "the day of the case; every age is reckoned to it"},
	{"care", "how dear a job put off is reckoned: thrifty, normal or thorough"},
	{"words", "what the owner wants, in the owner's words"},
	{"answers", "question id = answer"},
	{"decisions", "accepted, declined and done operations"},
	{"overruled", "calls set by hand"},
	{"letter", "what earlier letters to the owner said, noted by letter --send"},
	{"forecast", "the chances at the end of intake, written by intake"},
	{"book", "the book at intake, written by intake"},
	{"closed", "the end of the job: on which day, and by whom"},
	{"looked", "suspect id = what was found of it by the end of the job"},
	{"hours", "operation id = the hours that it took"},
}

// since says which keys a format added; those not named are as old as the first.
var since = map[string]int{"closed": 2, "looked": 2, "hours": 2}

// header reads the version first, since it decides how the rest is to be read,
// and the date, to which the ages in the answers are reckoned.
func (r *caseReader) header(root *tomltext.Node) {
	if v := r.need(root, "case", "add: case = 1"); v != nil {
		switch {
		case v.Kind != tomltext.Integer || v.Int < 1:
			r.list.Errorf(v.Span, "wrong-kind", "case is the format's version, from %d to %d", first, Version)
		case v.Int > Version:
			d := r.list.Errorf(v.Span, "newer-format", "the case is of format %d, and this program reads up to %d", v.Int, Version)
			d.Help = "use the newer program with which it was written"
		default:
			r.c.Version = int(v.Int)
		}
	}
	if v := r.need(root, "date", "add date, the day of the case, as 2025-10-14"); v != nil {
		r.c.Date = date(v, &r.list)
		if day, err := time.Parse(time.DateOnly, r.c.Date); err == nil {
			r.c.Day = reckon.DecimalYear(day)
		}
	}
}

func (r *caseReader) need(root *tomltext.Node, key, help string) *tomltext.Node {
	v := root.Get(key)
	if v == nil {
		r.list.Errorf(root.Span, "missing-key", "the case has no %s", key).Help = help
	}
	return v
}

func (r *caseReader) rest(root *tomltext.Node) {
	for i := range root.Fields {
		f := &root.Fields[i]
		if v := root.Get("case"); v != nil && since[f.Key] > r.c.Version {
			d := r.list.Errorf(f.KeySpan, "newer-key", "%s is a key of format %d, and the case says that it is of format %d", f.Key, since[f.Key], r.c.Version)
			d.Help = fmt.Sprintf("write: case = %d", since[f.Key])
			d.Related = []diag.Related{{At: v.Span, Message: "the format"}}
		}
		switch f.Key {
		case "case", "date":
		case "name":
			r.c.Name = text(f, &r.list)
		case "words":
			r.c.Words = text(f, &r.list)
		case "care":
			r.c.Care = r.word(f, advisor.Cares)
		case "answers":
			r.answers(f)
		case "decisions":
			r.decisions(f)
		case "overruled":
			r.overruled(f)
		case "letter":
			r.letters(f)
		case "forecast":
			r.forecast(f)
		case "book":
			r.fromBook(f)
		case "closed":
			r.closed(f)
		case "looked":
			r.looked(f)
		case "hours":
			r.taken(f)
		default:
			r.unknownKey(f, "a case", keysOf(topKeys))
		}
	}
}

func (r *caseReader) unknownKey(f *tomltext.Field, of string, known []string) {
	d := r.list.Errorf(f.KeySpan, "unknown-key", "%s has no key %q", of, f.Key)
	d.Help = diag.DidYouMean(f.Key, known)
}

// word reads one of a few words.
func (r *caseReader) word(f *tomltext.Field, allowed []string) string {
	word := text(f, &r.list)
	for _, a := range allowed {
		if word == a {
			return word
		}
	}
	if f.Value.Kind == tomltext.String {
		d := r.list.Errorf(f.Value.Span, "unknown-word", "%q is no %s", word, f.Key)
		d.Help = diag.DidYouMean(word, allowed)
	}
	return ""
}

// table demands a table.
func (r *caseReader) table(f *tomltext.Field) bool {
	if f.Value.Kind == tomltext.Table {
		return true
	}
	r.list.Errorf(f.Value.Span, "wrong-kind", "%s is a table, and this is %s", f.Key, f.Value.Kind)
	return false
}

func (r *caseReader) answers(f *tomltext.Field) {
	if !r.table(f) {
		return
	}
	byID := map[string]*advisor.Question{}
	var known []string
	for i := range r.book.Questions {
		byID[r.book.Questions[i].ID] = &r.book.Questions[i]
		known = append(known, r.book.Questions[i].ID)
	}
	by := r.c.Day
	if by == 0 {
		by = noDate
	}
	for i := range f.Value.Fields {
		a := &f.Value.Fields[i]
		q := byID[a.Key]
		if q == nil {
			d := r.list.Errorf(a.KeySpan, "unknown-question", "there is no question %q", a.Key)
			d.Help = diag.DidYouMean(a.Key, known)
			continue
		}
		read, faults := ReadAnswers(q, a.Value, by)
		r.c.Answers = append(r.c.Answers, read...)
		r.list = append(r.list, faults...)
	}
}
