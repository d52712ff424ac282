// Package worth reckons what looking is worth: what an inspection can show, as
// a few outcomes that keep every chance's mean, and the better scope that each
// outcome allows. It knows nothing of rules; the engine tells it which signs a
// look settles.
package worth

import (
	"cmp"
	"slices"
)

// Limit bounds the outcomes of one look. Further faces are left out, so worth
// is understated, never overstated.
const Limit = 64

// Way is one way that a sign can come out: its share among cars with the fault
// and among cars without.
type Way struct{ With, Without float64 }

// Move is how one suspect moves when a sign is settled. The shares of its ways
// add up to 1 on either side; true comes first. Rivals are the other suspects
// of its family: as causes that exclude one another they move against it.
type Move struct {
	ID      string
	Suspect int
	Rivals  []int
	Ways    []Way
}

// Face is a set of moves that come out together, because their signs read the
// same open questions.
type Face struct {
	ID    string
	Moves []Move
}

// Change is a suspect's chance after a look.
type Change struct {
	Suspect int
	Chance  float64
}

// Outcome is one joint result of a look: its chance, and every suspect that it
// moves, once.
type Outcome struct {
	Chance  float64
	Changes []Change
}

// Between is the two ways of a sign that takes a chance from now to plus when
// true and to minus when false. True has the chance (now - minus)/(plus - minus),
// which keeps the mean; there is no move (false) when now does not lie
// strictly between, or the chance is settled.
func Between(now, plus, minus float64) ([]Way, bool) {
	q := (now - minus) / (plus - minus)
	if plus == minus || !(q > 0 && q < 1) || !(now > 0 && now < 1) {
		return nil, false
	}
	with, without := q*plus/now, q*(1-plus)/(1-now)
	return []Way{{with, without}, {1 - with, 1 - without}}, true
}

// Outcomes lists the joint results of faces that follow one another in order of
// id, each at the chances that the one before leaves. On a face all moves are
// laid over [0,1], true first; the pieces between all their cuts are its results.
func Outcomes(chance []float64, faces []Face, limit int) []Outcome {
	faces = slices.Clone(faces)
	slices.SortStableFunc(faces, func(a, b Face) int { return cmp.Compare(a.ID, b.ID) })
	out, next := []Outcome{{Chance: 1}}, []Outcome{}
	for _, f := range faces {
		next = next[:0]
		for _, o := range out {
			next = f.split(next, chance, o)
		}
		if len(next) > limit {
			break
		}
		out, next = next, out
	}
	return out
}

// sliver is a share of [0,1] too small to be more than rounding.
const sliver = 1e-12

// split cuts an outcome at every point of [0,1] where one of the face's moves
// changes, and appends the pieces.
func (f Face) split(out []Outcome, chance []float64, o Outcome) []Outcome {
	var room [32]float64
	cuts, moved := room[:0], len(o.Changes)
	for _, m := range f.Moves {
		now, at := o.chance(chance, m.Suspect), 0.0
		for _, w := range m.Ways[:len(m.Ways)-1] {
			at += w.chance(now)
			cuts = append(cuts, at)
		}
		moved += 1 + len(m.Rivals)
	}
	slices.Sort(cuts)
	cuts = append(cuts, 1)
	changes := make([]Change, 0, moved*len(cuts)) // of all pieces
	from := 0.0
	for i, to := range cuts {
		last := i == len(cuts)-1
		if to-from < sliver || !last && 1-to < sliver {
			continue
		}
		piece := Outcome{Chance: float64(o.Chance * (to - from))}
		piece.Changes = append(changes[len(changes):len(changes):len(changes)+moved], o.Changes...)
		for j := range f.Moves {
			f.Moves[j].apply(chance, &o, &piece, (from+to)/2)
		}
		changes = changes[:len(changes)+moved]
		out, from = append(out, piece), to
	}
	return out
}

// apply sets what a move makes of its suspects at a point of [0,1].
func (m *Move) apply(chance []float64, before *Outcome, piece *Outcome, x float64) {
	now := before.chance(chance, m.Suspect)
	var way Way
	total, at := 0.0, 0.0
	for _, w := range m.Ways {
		c := w.chance(now)
		if c == 0 {
			continue
		}
		way, total = w, c
		if at += c; x < at {
			break
		}
	}
	piece.set(m.Suspect, min(1, now*way.With/total))
	for _, k := range m.Rivals {
		piece.set(k, min(1, before.chance(chance, k)*way.Without/total))
	}
}

func (w Way) chance(now float64) float64 { return float64(now*w.With) + float64((1-now)*w.Without) }

// chance is a suspect's chance in an outcome: as moved, or as it stands now.
func (o *Outcome) chance(now []float64, k int) float64 {
	for _, c := range o.Changes {
		if c.Suspect == k {
			return c.Chance
		}
	}
	return now[k]
}

func (o *Outcome) set(k int, p float64) {
	for i := range o.Changes {
		if o.Changes[i].Suspect == k {
			o.Changes[i].Chance = p
			return
		}
	}
	o.Changes = append(o.Changes, Change{k, p})
}

// Mean is the mean of a value over outcomes.
func Mean(outcomes []Outcome, value func(changes []Change) float64) float64 {
	sum := 0.0
	for _, o := range outcomes {
		sum += float64(o.Chance * value(o.Changes))
	}
	return sum
}
