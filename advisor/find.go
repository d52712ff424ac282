package advisor

// Question is the question of an id; nil when the book has none.
func (b *Book) Question(id string) *Question {
	return find(b.Questions, func(q *Question) bool { return q.ID == id })
}

// Suspect is the suspect of an id; nil when the book has none.
func (b *Book) Suspect(id string) *Suspect {
	return find(b.Suspects, func(s *Suspect) bool { return s.ID == id })
}

// Operation is the operation of an id; nil when the book has none.
func (b *Book) Operation(id string) *Operation {
	return find(b.Operations, func(o *Operation) bool { return o.ID == id })
}

// Operation is what the advice says of an operation; nil when the book has none
// of that id.
func (a *Advice) Operation(id string) *OperationAdvice {
	return find(a.Operations, func(o *OperationAdvice) bool { return o.ID == id })
}

// Suspect is what the advice says of a suspect; nil when it does not apply.
func (a *Advice) Suspect(id string) *SuspectAdvice {
	return find(a.Suspects, func(s *SuspectAdvice) bool { return s.ID == id })
}

// Inspection is what the advice says of a look; nil when nothing is left for it
// to answer.
func (a *Advice) Inspection(id string) *InspectionAdvice {
	return find(a.Inspections, func(k *InspectionAdvice) bool { return k.ID == id })
}

// Hold is what the advice says of a hold; nil when it does not stand.
func (a *Advice) Hold(id string) *HoldAdvice {
	return find(a.Holds, func(h *HoldAdvice) bool { return h.ID == id })
}

func find[T any](list []T, is func(*T) bool) *T {
	for i := range list {
		if is(&list[i]) {
			return &list[i]
		}
	}
	return nil
}
