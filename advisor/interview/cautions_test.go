package interview_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
	"longstand/advisor/interview"
)

// TestCautionsOfTheCar: before a look only what can hurt at this car is said.
func TestCautionsOfTheCar(t *testing.T) {
	e := workshop(t)
	said := func(id string, answers ...advisor.Answer) string {
		iv := interview.New(e, &advisor.Case{Date: "2025-10-14", Day: 2025.79, Answers: answers}, interview.Options{})
		return strings.Join(iv.About(e.Book().Question(id)).Cautions, "\n")
	}
	fuel := func(option string) advisor.Answer {
		bit, ok := e.Book().Question("engine_fuel").OptionBit(option)
		assert.True(t, ok)
		return advisor.Answer{Question: "engine_fuel", How: advisor.Seen, Value: advisor.OneOf(1 << bit)}
	}
	for _, c := range []struct {
		name           string
		answers        []advisor.Answer
		diesel, petrol bool
	}{
		{"not known", nil, false, true},
		{"petrol", []advisor.Answer{fuel("petrol")}, false, true},
		{"diesel", []advisor.Answer{fuel("diesel")}, true, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := said("fuel_state", c.answers...)
			assert.Equal(t, c.diesel, strings.Contains(text, "Diesel is caught"), text)
			assert.Equal(t, c.petrol, strings.Contains(text, "petrol gives off vapour"), text)
		})
	}
}
