package reckon

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const referenceDir = "../../testdata/reference"

// row is one line of a published table, by column.
type row struct {
	t     *testing.T
	cells map[string]string
}

func (r row) text(column string) string {
	value, ok := r.cells[column]
	require.True(r.t, ok, "no column %s", column)
	return value
}

func (r row) number(column string) float64 {
	x, err := strconv.ParseFloat(r.text(column), 64)
	require.NoError(r.t, err)
	return x
}

// readTable reads a table of testdata/reference; it must say its source and
// how its figures are known.
func readTable(t *testing.T, name string) []row {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(referenceDir, name+".tsv"))
	require.NoError(t, err)
	var columns []string
	var rows []row
	for line := range strings.Lines(string(data)) {
		line = strings.TrimRight(line, "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(line, "\t")
		if columns == nil {
			columns = cells
			continue
		}
		require.Len(t, cells, len(columns), "%s: %s", name, line)
		r := row{t: t, cells: map[string]string{}}
		for i, c := range columns {
			r.cells[c] = cells[i]
		}
		rows = append(rows, r)
	}
	require.NotEmpty(t, rows, name)
	return rows
}

func TestEveryReferenceTableSaysItsSource(t *testing.T) {
	files, err := filepath.Glob(referenceDir + "/*.tsv")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Regexp(t, `(?m)^# source: \S`, string(data), file)
		assert.Regexp(t, `(?m)^# how: .*(read|computed|memory)`, string(data), file)
		for _, r := range readTable(t, strings.TrimSuffix(filepath.Base(file), ".tsv")) {
			if how, ok := r.cells["how"]; ok {
				assert.Contains(t, []string{"read", "computed", "memory"}, how, file)
			}
		}
	}
}

// refuses checks that a call errs with a RangeError naming the quantity.
func refuses(t *testing.T, err error, quantity string) {
	t.Helper()
	var outside *RangeError
	require.ErrorAs(t, err, &outside)
	assert.Equal(t, quantity, outside.Quantity)
}
