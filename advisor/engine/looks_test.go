package engine

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

// TestLacks: a shop that says nothing of its tools has them all; hand tools are
// never lacking.
func TestLacks(t *testing.T) {
	needed := []string{"lamp", "borescope", "compression gauge"}
	for _, c := range []struct {
		has, want []string
	}{{nil, nil}, {[]string{"borescope"}, []string{"compression gauge"}}, {[]string{"compression gauge", "borescope"}, nil}, {[]string{"press"}, []string{"borescope", "compression gauge"}}} {
		e := &Engine{book: &advisor.Book{Settings: advisor.Settings{Tools: c.has, HandTools: []string{"lamp"}}}}
		assert.Equal(t, c.want, e.lacks(needed), c.has)
	}
}

// TestRankByTools: of looks that tell of nothing worse those come first for
// which the shop has the tools; dangers and holds go before tools.
func TestRankByTools(t *testing.T) {
	look := func(id string, net int64, lacks, dangers []string) looked {
		return looked{advised: true, lifts: 1, prospect: prospect{net: net},
			advice: advisor.InspectionAdvice{ID: id, Lacks: lacks, Dangers: dangers}}
	}
	looks := []looked{look("dear", 900, []string{"borescope"}, nil), look("cheap", 100, nil, nil),
		look("danger", 1, []string{"borescope"}, []string{"hoses"})}
	rank(looks)
	var order []string
	for i := range looks {
		order = append(order, looks[i].advice.ID)
		assert.Equal(t, i+1, looks[i].advice.Rank)
	}
	assert.Equal(t, []string{"danger", "cheap", "dear"}, order)
}
