package casefile

import "longstand/advisor"

// Known gives a case's bytes with the answers of a known type put in, each with
// how it is known and a note that says where it comes from, so that a look at
// the car can say otherwise. What the case answers already stays as it is;
// those questions are listed. It errs when the bytes are not TOML.
func Known(data []byte, t *advisor.Type) (out []byte, kept []string, err error) {
	for i := range t.Answers {
		a := &t.Answers[i]
		d, err := open(data)
		if err != nil {
			return nil, nil, err
		}
		if d.root.Get("answers").Get(a.Question) != nil {
			kept = append(kept, a.Question)
			continue
		}
		value := "{ is = " + a.Written + ", how = " + encode(a.How.String()) + ", note = " + encode(t.Note()) + " }"
		if data, err = Set(data, "answers", a.Question, value); err != nil {
			return nil, nil, err
		}
	}
	return data, kept, nil
}
