package condition

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/reckon"
)

// Every operator that the gate admits is listed for docs, and none besides.
func TestOperatorsAreListed(t *testing.T) {
	listed := map[string]bool{}
	for _, u := range Operators() {
		assert.False(t, listed[u.Name], u.Name)
		assert.NotEmpty(t, u.Says, u.Name)
		listed[u.Name] = true
	}
	for op := range relations {
		assert.True(t, listed[op], op)
		delete(listed, op)
	}
	for op := range arithmetic {
		assert.True(t, listed[op], op)
		delete(listed, op)
	}
	assert.Equal(t, map[string]bool{"and": true, "or": true, "not": true, "in": true, "not in": true}, listed)
}

// readingFunctions take a list of readings.
var readingFunctions = []string{"min", "max", "mean", "spread", "count", "any", "all"}

// Every function is listed, and what it is said to be written like can be written.
func TestFunctionsAreListed(t *testing.T) {
	listed := map[string]bool{}
	for _, u := range Functions() {
		assert.False(t, listed[u.Name], u.Name)
		assert.NotEmpty(t, u.Says, u.Name)
		assert.Contains(t, u.Write, u.Name+"(")
		assert.True(t, Reserved(u.Name), u.Name)
		listed[u.Name] = true
	}
	for _, name := range append([]string{"known", "done"}, readingFunctions...) {
		assert.True(t, listed[name], name)
	}
	for _, f := range reckon.Functions {
		assert.True(t, listed[f.Name], f.Name)
		args := strings.Repeat(", laid_up", len(f.Params))
		one(t, vocabularyCompiler(), f.Name+"("+args[2:]+") > "+strconv.FormatFloat((f.Low+f.High)/2, 'f', 1, 64))
	}
	require.Len(t, listed, 2+len(readingFunctions)+len(reckon.Functions))
}
