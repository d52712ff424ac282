package report_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/report"
)

// filler puts a value of its own into every word and number of a record.
type filler struct {
	n    int
	want map[string]string // what must be found in the JSON, and where it was put
}

// fill visits a value; truths, channels and yes-or-no have too few values to be
// told apart, and the case, its places and the settings are not advice.
func (f *filler) fill(v reflect.Value, at string) {
	switch v.Interface().(type) {
	case *advisor.Case, *advisor.Settings, advisor.Truth, advisor.Channel, advisor.Place:
		return
	}
	f.n++
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		f.fill(v.Elem(), at)
	case reflect.Struct:
		for i := range v.NumField() {
			f.fill(v.Field(i), at+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		f.fill(v.Index(0), at)
	case reflect.String:
		v.SetString(fmt.Sprintf("word%dx", f.n))
		f.want[v.String()] = at
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(70000 + f.n))
		f.want[fmt.Sprint(v.Int())] = at
	case reflect.Float64:
		v.SetFloat(float64(80000+f.n) + 0.25)
		f.want[fmt.Sprint(v.Float())] = at
	}
}

// TestTheJSONLeavesNothingOut fills a whole record and looks for every word
// and number of it in the JSON.
func TestTheJSONLeavesNothingOut(t *testing.T) {
	a := &advisor.Advice{Case: &advisor.Case{}, Settings: &advisor.Settings{}}
	f := &filler{want: map[string]string{}}
	f.fill(reflect.ValueOf(a).Elem(), "Advice")
	a.Derived[0].IsNumber = true
	delete(f.want, a.Operations[0].Overruled.Operation) // the operation's own id stands there already
	page, err := report.JSON(a)
	require.NoError(t, err)
	for value, at := range f.want {
		assert.True(t, strings.Contains(string(page), value), at)
	}
	assert.Greater(t, len(f.want), 150)
}
