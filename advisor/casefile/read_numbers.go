package casefile

import (
	"math"
	"strconv"
	"strings"

	"longstand/advisor"
	"longstand/advisor/tomltext"
)

// limits are the bounds of the question's figures; without a range there are none.
func limits(q *advisor.Question) (low, high float64) {
	if q.Low < q.High {
		return q.Low, q.High
	}
	return advisor.Anything()
}

// figure reads one number within the question's range.
func (r *reader) figure(n *tomltext.Node) (float64, bool) {
	if n.Kind != tomltext.Integer && n.Kind != tomltext.Float || math.IsNaN(n.Float) || math.IsInf(n.Float, 0) {
		want := "a number"
		if r.q.Unit != "" {
			want += " in " + r.q.Unit
		}
		r.wrong(n, want)
		return 0, false
	}
	return n.Float, r.within(n.Float, n)
}

// within checks a figure against the question's range.
func (r *reader) within(x float64, n *tomltext.Node) bool {
	low, high := limits(r.q)
	if low <= x && x <= high {
		return true
	}
	d := r.list.Errorf(n.Span, "out-of-range", "%s is out of range for %s", plain(x), r.q.ID)
	d.Help = strings.TrimSpace("from " + plain(low) + " to " + plain(high) + " " + r.q.Unit)
	return false
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// number reads 11, or the range "5 to 8".
func (r *reader) number(n *tomltext.Node) advisor.Value {
	if n.Kind != tomltext.String {
		if x, ok := r.figure(n); ok {
			return advisor.Number(x)
		}
		return advisor.Value{}
	}
	left, right, found := strings.Cut(n.Str, " to ")
	low, err := strconv.ParseFloat(strings.TrimSpace(left), 64)
	high, err2 := strconv.ParseFloat(strings.TrimSpace(right), 64)
	if !found || err != nil || err2 != nil || !finite(low) || !finite(high) {
		v := r.wrong(n, "a number")
		r.list[len(r.list)-1].Help = `write 8 without quotes, or a range as "5 to 8"`
		return v
	}
	return r.span(low, high, n)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// span is the range between two figures.
func (r *reader) span(low, high float64, n *tomltext.Node) advisor.Value {
	if low > high {
		r.list.Errorf(n.Span, "not-increasing", "a range goes from the lesser to the greater: %s to %s", plain(low), plain(high))
		return advisor.Value{}
	}
	if !r.within(low, n) || !r.within(high, n) {
		return advisor.Value{}
	}
	return advisor.NumberRange(low, high)
}

// bounds reads from and to of a long form; the one left out is the end of the range.
func (r *reader) bounds(n *tomltext.Node) (advisor.Value, string) {
	if k := r.q.Kind; k != advisor.NumberKind && k != advisor.Year {
		r.list.Errorf(n.Span, "wrong-kind", "from and to are for numbers, and %s is a %s", r.q.ID, k)
		return advisor.Value{}, ""
	}
	low, high := limits(r.q)
	var said []string
	for _, end := range []struct {
		key string
		x   *float64
	}{{"from", &low}, {"to", &high}} {
		v := n.Get(end.key)
		if v == nil {
			continue
		}
		x, ok := r.figure(v)
		if !ok {
			return advisor.Value{}, ""
		}
		*end.x = x
		said = append(said, plain(x))
	}
	words := strings.Join(said, " to ")
	if n.Get("to") == nil {
		words = "from " + words
	} else if n.Get("from") == nil {
		words = "to " + words
	}
	if low > high {
		return r.span(low, high, n), words
	}
	return advisor.NumberRange(low, high), words
}

// readings reads a list of figures; a single one may stand alone.
func (r *reader) readings(n *tomltext.Node) advisor.Value {
	items := []*tomltext.Node{n}
	if n.Kind == tomltext.Array {
		items = n.Items
	}
	if len(items) == 0 {
		r.list.Errorf(n.Span, "wrong-kind", "%s takes at least one figure", r.q.ID)
	}
	v := advisor.Value{State: advisor.Told}
	for _, item := range items {
		if x, ok := r.figure(item); ok {
			v.Readings = append(v.Readings, x)
		}
	}
	return v
}
