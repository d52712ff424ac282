package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/book"
)

// TestProgressOnTerminalsOnly: a log keeps no counting.
func TestProgressOnTerminalsOnly(t *testing.T) {
	var log bytes.Buffer
	p := newProgress(&log, "cases", 3)
	p.step()
	p.end()
	assert.Empty(t, log.String())
	p = &progress{to: &log, what: "cases", total: 300}
	for range 300 {
		p.step()
	}
	p.end()
	assert.Equal(t, 100, strings.Count(log.String(), " of 300 cases"))
	assert.True(t, strings.HasSuffix(log.String(), "\r300 of 300 cases\r\x1b[K"))
}

// TestEveryCodeHasItsPage: what a fault is called, `rules codes` explains.
func TestEveryCodeHasItsPage(t *testing.T) {
	codes := book.Codes()
	require.Greater(t, len(codes), 40)
	for _, c := range codes {
		page, err := codePage(codes, c.ID)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(page, c.ID+": "), page)
		assert.Equal(t, c.Wrong != "", strings.Contains(page, "\nwrong"), page)
		assert.Equal(t, c.Wrong != "" && c.In != "", strings.Contains(page, "\nwrong, in a "), page)
	}
}

// TestContrast: what is the same is passed over, what is new or gone is told.
func TestContrast(t *testing.T) {
	s := &advisor.Settings{Currency: "GBP", MinorDigits: 2}
	advice := func(likely int64, ops []advisor.OperationAdvice, holds ...advisor.HoldAdvice) *advisor.Advice {
		return &advisor.Advice{Settings: s, Operations: ops, Holds: holds, Total: advisor.Total{Likely: likely}}
	}
	was := advice(10000, []advisor.OperationAdvice{{ID: "a", Call: advisor.Leave}, {ID: "b", Call: advisor.Do}, {ID: "c", Call: advisor.Do}},
		advisor.HoldAdvice{ID: "h", When: advisor.True, Stops: []string{"run"}}, advisor.HoldAdvice{ID: "k", When: advisor.True, Stops: []string{"run"}})
	now := advice(12000, []advisor.OperationAdvice{{ID: "a", Call: advisor.Do, Reason: "So."}, {ID: "b", Call: advisor.Do}, {ID: "new", Call: advisor.Do, InScope: true}, {ID: "idle", Call: advisor.Leave}},
		advisor.HoldAdvice{ID: "h", When: advisor.Unknown, Stops: []string{"run"}})
	c := contrasted(was, now)
	assert.Equal(t, []turned{{"a", "leave", "do", "So."}, {"c", "do", "not in the book", ""}, {"new", "not in the book", "do", ""}}, c.calls)
	assert.Equal(t, []turned{{"h", "stands, stops: run", "stands until known, stops: run", ""}, {"k", "stands, stops: run", "no hold", ""}}, c.holds)
	assert.Equal(t, [2]string{"£100", "£120"}, c.money)
	assert.False(t, c.nothing())
	same := contrasted(was, was)
	assert.True(t, same.nothing())
	var page strings.Builder
	same.write(&page, "")
	assert.Empty(t, page.String())
}
