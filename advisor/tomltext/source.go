package tomltext

import (
	"bytes"
	"sort"

	"longstand/advisor/diag"
)

// bom may stand at the start of a file; it is no character of the first line.
const bom = "\xef\xbb\xbf"

// source turns byte offsets of one file into places.
type source struct {
	file  string
	data  []byte
	text  string // the same; keys and plain texts are pieces of it, not copies
	lines []int  // byte offset at which each line starts
	runes []int  // characters before each block of the file
	last  int    // the line found last: places are asked for mostly in order
	above int    // lines of the file that stand above the data
}

// block is the number of bytes after which characters are counted afresh, so
// that a column costs the same on a line of any length.
const block = 256

func newSource(file string, data []byte) *source {
	s := &source{file: file, data: data, text: string(data)}
	first := 0
	if len(data) >= len(bom) && string(data[:len(bom)]) == bom {
		first = len(bom)
	}
	s.lines = append(make([]int, 0, len(data)/32+1), first)
	for at := first; ; {
		i := bytes.IndexByte(data[at:], '\n')
		if i < 0 {
			break
		}
		at += i + 1
		s.lines = append(s.lines, at)
	}
	s.runes = make([]int, 1, len(data)/block+2)
	for at := 0; at < len(data); at += block {
		s.runes = append(s.runes, s.runes[len(s.runes)-1]+starts(data[at:min(at+block, len(data))]))
	}
	return s
}

// starts counts the bytes at which a character starts.
func starts(data []byte) int {
	n := 0
	for _, b := range data {
		if b&0xC0 != 0x80 {
			n++
		}
	}
	return n
}

// column is the number from 1 of the character at an offset of a line.
func (s *source) column(line, offset int) int {
	return 1 + max(s.before(offset)-s.before(s.lines[line]), 0)
}

// before counts the characters before an offset. Most blocks hold nothing but
// one-byte characters, and there the offset tells.
func (s *source) before(offset int) int {
	b := offset / block
	from := b * block
	if offset == from {
		return s.runes[b]
	}
	if s.runes[b+1]-s.runes[b] == min(block, len(s.data)-from) {
		return s.runes[b] + offset - from
	}
	return s.runes[b] + starts(s.data[from:offset])
}

// line gives the number from 0 of the line that holds an offset. Places are
// asked for mostly in order, so the lines from a hint on are tried first.
func (s *source) line(offset, hint int) int {
	if s.lines[hint] <= offset {
		for i := hint; i < hint+4; i++ {
			if i+1 == len(s.lines) || s.lines[i+1] > offset {
				return i
			}
		}
	}
	return max(sort.SearchInts(s.lines, offset+1)-1, 0)
}

// span gives the place of the bytes from start up to end; the hint is a line
// near by.
func (s *source) span(start, end, hint int) diag.Span {
	start = min(max(start, s.lines[0]), len(s.data))
	end = min(max(end, start), len(s.data))
	from := s.line(start, hint)
	to := s.line(end, from)
	return diag.Span{
		File: s.file, Start: start, End: end,
		Line: s.above + from + 1, Col: s.column(from, start),
		EndLine: s.above + to + 1, EndCol: s.column(to, end),
	}
}

// whole is the file as a whole.
func (s *source) whole() diag.Span { return diag.Span{File: s.file, End: len(s.data)} }
