package book

import "longstand/advisor/tomltext"

// rowsSlot is a list of tables.
type rowsSlot[T any] struct {
	to   *[]T
	keys *table[T]
	at   func(*T, *tomltext.Node) // notes where a row stands; may be nil
}

func rows[T any](to *[]T, keys *table[T], at func(*T, *tomltext.Node)) slot {
	return rowsSlot[T]{to, keys, at}
}

func (s rowsSlot[T]) form() form { return form{Type: asTables, Of: s.keys.name, Keys: s.keys.keys} }

func (s rowsSlot[T]) read(d *decoder, f *tomltext.Field) {
	if f.Value.Kind != tomltext.Array {
		d.wrong(f.Value, f.Key+" is a list of tables")
		return
	}
	out := make([]T, len(f.Value.Items)) // made at once: conditions point into it
	d.within(func() {
		for i, n := range f.Value.Items {
			if s.at != nil {
				s.at(&out[i], n)
			}
			s.keys.decode(d, n, &out[i])
		}
	})
	*s.to = out
}

// rowSlot is one table, kept only when it is there.
type rowSlot[T any] struct {
	to   **T
	keys *table[T]
	at   func(*T, *tomltext.Node)
}

func row[T any](to **T, keys *table[T], at func(*T, *tomltext.Node)) slot {
	return rowSlot[T]{to, keys, at}
}

func (s rowSlot[T]) form() form { return form{Type: asTable, Of: s.keys.name, Keys: s.keys.keys} }

func (s rowSlot[T]) read(d *decoder, f *tomltext.Field) {
	v := new(T)
	s.at(v, f.Value)
	d.within(func() { s.keys.decode(d, f.Value, v) })
	*s.to = v
}
