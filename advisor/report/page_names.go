package report

import (
	"fmt"
	"slices"
	"strings"

	"longstand/advisor"
)

// names gives the plain names of operations.
func (p *page) names(ids []string) []string {
	var out []string
	for _, id := range ids {
		out = append(out, p.name(id))
	}
	return out
}

// operations gives the plain names of those ids that are operations.
func (p *page) operations(ids []string) (out []string) {
	for _, id := range ids {
		if name := p.name(id); name != id {
			out = append(out, name)
		}
	}
	return out
}

// name is the plain name of an operation; another id is given back.
func (p *page) name(id string) string {
	if o := p.a.Operation(id); o != nil {
		return o.Name
	}
	return id
}

// holdNames says of holds what must be so first.
func (p *page) holdNames(ids []string) []string {
	var out []string
	for i := range p.a.Holds {
		if h := &p.a.Holds[i]; slices.Contains(ids, h.ID) {
			out = append(out, strings.TrimSuffix(h.Name, "."))
		}
	}
	return out
}

// lookNames names the first three of those ids that are looks.
func (p *page) lookNames(ids []string) []string {
	var out []string
	for _, id := range ids {
		for i := range p.a.Inspections {
			if len(out) < 3 && p.a.Inspections[i].ID == id {
				out = append(out, p.a.Inspections[i].Name)
			}
		}
	}
	return out
}

func (p *page) suspectName(id string) string {
	if s := p.a.Suspect(id); s != nil {
		return s.Name
	}
	return id
}

// suspectNames gives the plain names of suspects.
func (p *page) suspectNames(ids []string) []string {
	var out []string
	for i := range p.a.Suspects {
		if slices.Contains(ids, p.a.Suspects[i].ID) {
			out = append(out, p.a.Suspects[i].Name)
		}
	}
	return out
}

// thing names an operation or a hold.
func (p *page) thing(id string) string {
	if h := p.a.Hold(id); h != nil {
		return fmt.Sprintf("do not %s until %s", strings.Join(first(h.Stops), " or "), strings.TrimSuffix(h.Name, "."))
	}
	return p.name(id)
}

// station is where one stands, in the words of the shop's region.
func (p *page) station(id string) string {
	if p.a.Settings.Locale == "en-US" {
		return strings.Replace(stationNames[id], "bonnet", "hood", 1)
	}
	return stationNames[id]
}

// stationNames are where one stands, as said on pages.
var stationNames = map[string]string{"story": "With the owner", "papers": "With the papers", "outside": "Outside, walking round",
	"cabin": "In the cabin", "luggage": "At the luggage space", "bonnet": "Under the bonnet, cold", "underneath": "Underneath, on stands or lift",
	"bench": "On the bench", "inspection": "On the bench"}

// sentenceOpen is a sentence without its full stop, for what goes on after it.
func sentenceOpen(words string) string { return strings.TrimSuffix(advisor.Sentence(words), ".") }

// sentenceStart is a sentence without its capital, for what goes on before it.
func sentenceStart(words string) string {
	r := []rune(advisor.Sentence(words))
	if len(r) > 1 && strings.ToLower(string(r[1])) == string(r[1]) {
		r[0] = []rune(strings.ToLower(string(r[0])))[0]
	}
	return string(r)
}
