package report

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longstand/advisor"
)

// The bench welds before it plumbs, fits the clutch last, keeps oil off new
// linings, and closes first what it opened last.
func TestSheetOrderIsTheBenchs(t *testing.T) {
	op := func(id, part, phase string, needs ...string) advisor.OperationAdvice {
		return advisor.OperationAdvice{ID: id, Part: part, Phase: phase, Call: advisor.Do, Needs: needs}
	}
	p := &sheet{page: page{a: &advisor.Advice{Operations: []advisor.OperationAdvice{
		op("brake_pipes", "brakes", "repair"), op("axle_oil_seals", "driveline", "repair"), op("clutch_kit", "clutch", "repair"),
		op("flywheel", "clutch", "repair"), op("core_plugs", "engine_bottom", "repair"), op("hidden_core_plugs_done", "engine_bottom", "repair", "core_plugs"),
		op("rear_crank_seal", "crank_seals", "repair"), op("of_the_house", "somewhere", "repair"), op("structure_weld", "structure", "repair"),
		op("rocker_gasket", "engine_top", "refit"), op("head_gasket", "engine_top", "refit", "rocker_gasket"),
		op("on_lift", "access", "look"), op("left_alone", "access", "look"),
	}}}}
	p.a.Operations[12].Call = advisor.Leave
	var got []string
	for _, o := range p.inOrder() {
		got = append(got, o.ID)
	}
	assert.Equal(t, []string{"on_lift", "structure_weld", "core_plugs", "hidden_core_plugs_done", "rear_crank_seal", "flywheel", "clutch_kit",
		"axle_oil_seals", "brake_pipes", "of_the_house", "head_gasket", "rocker_gasket"}, got)
}

// A look stands behind what opens it and behind what lifts its stop; the quick
// ones first, and one that follows another behind it.
func TestSheetPlacesLooks(t *testing.T) {
	looks := []advisor.InspectionAdvice{
		{ID: "compression", Advised: true, Access: []string{"plugs_out"}, Blocked: []string{"hand_turn"}, Minutes: 20},
		{ID: "leakdown", Advised: true, Access: []string{"plugs_out"}, Minutes: 40},
		{ID: "leakdown_again", Advised: true, Access: []string{"plugs_out"}, Before: []string{"leakdown"}, Minutes: 30},
		{ID: "plugs", Advised: true, Access: []string{"plugs_out"}, Minutes: 10},
		{ID: "clutch_seen", Advised: true, Access: []string{"gearbox_out"}, Minutes: 15},
		{ID: "no_door", Advised: true, Minutes: 5},
	}
	p := &sheet{page: page{a: &advisor.Advice{Inspections: looks, Operations: []advisor.OperationAdvice{
		{ID: "plugs_out", Part: "access", Phase: "look", Call: advisor.Do}, {ID: "bores", Part: "engine_bottom", Phase: "look", Call: advisor.Do},
		{ID: "gearbox_out", Phase: "strip", Call: advisor.LookFirst},
	}, Holds: []advisor.HoldAdvice{{ID: "hand_turn", LiftedBy: []advisor.Settle{{Kind: "operation", ID: "bores"}}}}}},
		opened: map[string][]*advisor.InspectionAdvice{}}
	p.order = p.inOrder()
	p.placeLooks()
	got := map[string][]string{}
	for id, list := range p.opened {
		for _, k := range list {
			got[id] = append(got[id], k.ID)
		}
	}
	assert.Equal(t, map[string][]string{"plugs_out": {"plugs", "leakdown", "leakdown_again"}, "bores": {"compression"}, "gearbox_out": {"clutch_seen"}}, got)
	assert.False(t, p.listed["no_door"], "it stands at the start of the looking")
}
