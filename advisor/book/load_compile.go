package book

import (
	"longstand/advisor"
	"longstand/advisor/condition"
)

// compile compiles every condition, derived values first. Conditions are
// numbered by kind and id of their items.
func (b *builder) compile() {
	operations := make([]string, len(b.book.Operations))
	for i := range b.book.Operations {
		operations[i] = b.book.Operations[i].ID
	}
	c := condition.NewCompiler(b.book.Questions, operations)
	var derivations []condition.Derivation
	for _, it := range b.items {
		if v, ok := it.value.(*advisor.Derived); ok && b.live["question"][it.id] == nil {
			derivations = append(derivations, condition.Derivation{ID: v.ID, Text: b.textOf(it, &v.Is)})
		}
	}
	faulty := c.DeriveAll(derivations)
	for _, it := range b.read() {
		derived, _ := it.value.(*advisor.Derived)
		for _, p := range it.conds {
			if p.node == nil || derived != nil && p.to == &derived.Is {
				continue
			}
			id, faults := c.Condition(textOf(p))
			p.to.ID = id
			faulty = append(faulty, faults...)
		}
	}
	b.provable = !faulty.HasErrors()
	b.list = append(b.list, faulty...)
	b.program = c.Program()
	for _, it := range b.items {
		if v, ok := it.value.(*advisor.Derived); ok {
			if i, ok := b.program.DerivedIndex(v.ID); ok {
				v.Is.ID, _ = b.program.DerivedCondition(i)
			}
		}
	}
}

// textOf is a condition's text with its places.
func textOf(p *pending) condition.Text {
	return condition.Text{Source: p.node.Str, At: p.node.Span, Inside: p.node.Inside}
}

func (b *builder) textOf(it *item, c *advisor.Condition) condition.Text {
	for _, p := range it.conds {
		if p.to == c && p.node != nil {
			return textOf(p)
		}
	}
	return condition.Text{At: it.at}
}
