package engine_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
	"longstand/advisor/report"
)

// told is the case of a file with some lines told otherwise: `id = value` of an
// answer, or `done = [...]` of the decisions.
func told(t testing.TB, e *engine.Engine, file string, lines ...string) *advisor.Case {
	data, err := os.ReadFile(facts + file + ".toml")
	require.NoError(t, err)
	text := string(data)
	for _, line := range lines {
		key, _, _ := strings.Cut(line, " =")
		old := regexp.MustCompile(`(?m)^` + key + ` = .*$`)
		switch {
		case old.MatchString(text):
			text = old.ReplaceAllLiteralString(text, line)
		case key == "done":
			text += "\n[decisions]\n" + line + "\n"
		default:
			text = strings.Replace(text, "[answers]\n", "[answers]\n"+line+"\n", 1)
		}
	}
	c, l := casefile.Read(file, []byte(text), e.Book())
	require.False(t, l.HasErrors(), "%s %v: %v", file, lines, l)
	return c
}

// clauses are the other halves of facts: the same car told otherwise, and what
// must then appear, or must no longer.
var clauses = []struct {
	says  string
	lines []string
	fact
}{
	{"1: however short, the rubber", []string{"years_laid_up = 8"}, fact{file: "01_dry_garage", look: "coolant_hoses fuel_hoses brake_hoses", notDo: "structure_weld"}},
	{"1: however long, the metal", []string{"years_laid_up = 60"}, fact{file: "01_dry_garage", look: "coolant_hoses fuel_hoses brake_hoses", notDo: "structure_weld"}},
	{"4: both out", []string{`done = ["engine_out", "gearbox_out"]`}, fact{file: "04_engine_out_anyway", look: "clutch_kit flywheel"}},
	{"8: a return thread", []string{`rear_seal_type = "thread"`}, fact{file: "08_rope_seal", do: "rear_crank_seal sump_off clutch_kit", look: "flywheel"}},
	{"8: the original rope", []string{`originality = "strict"`}, fact{file: "08_rope_seal", do: "rear_crank_seal sump_off"}},
	{"10: the pistons stay clear", []string{`piston_clearance = "clear"`}, fact{file: "10_old_timing_belt", do: "cam_belt_or_chain", lifted: "belt_before_cranking"}},
	{"10: renewed", []string{`done = ["cam_belt_or_chain"]`}, fact{file: "10_belt_of_unknown_age", lifted: "belt_before_cranking"}},
	{"10: a young belt", []string{"timing_belt_years = 4"}, fact{file: "10_old_timing_belt", lifted: "belt_before_cranking", notDo: "cam_belt_or_chain"}},
	{"11: on years alone", []string{"years_laid_up = 45"}, fact{file: "11_quiet_chain", notDo: "timing_cover_off cam_belt_or_chain"}},
	{"12: felt free", []string{`turning = "free"`}, fact{file: "12_not_turned", lifted: "hand_turn_first"}},
	{"16: neither high nor thinned", []string{`oil_level = "on_mark"`, "oil_smells_of_petrol = false"}, fact{file: "16_petrol_in_the_oil", lifted: "cylinders_empty_first"}},
	{"17: way not found", []string{`shells_seen = "sound"`, `sump_water_from = "not_found"`}, fact{file: "17_water_in_the_sump", stands: "water_out_of_the_oil_first"}},
	{"17: way found and bearings seen", []string{`shells_seen = "sound"`, `sump_water_from = "outside"`}, fact{file: "17_water_in_the_sump", lifted: "water_out_of_the_oil_first"}},
	{"22: clearances closing up", []string{`valve_clearances = "tight"`}, fact{file: "22_soft_seats", look: "valve_clearances_set", notDo: "head_off"}},
	{"30: a sound pipe", []string{`brake_pipe_metal = "copper_alloy"`, `brake_pipe_look = "bright"`}, fact{file: "30_pitted_pipe", notDo: "brake_pipes", lifted: "pipes_not_proved"}},
	{"31: young and sound", []string{`tyre_code = "1020"`, `tyre_kinds = "alike"`}, fact{file: "31_old_tyres", notDo: "tyres", lifted: "tyres_not_fit"}},
	{"31: at any tread", []string{"tyre_tread = 9"}, fact{file: "31_old_tyres", do: "tyres", stands: "tyres_not_fit"}},
	{"32: all alike", []string{`tyre_kinds = "alike"`}, fact{file: "32_mixed_tyres", notDo: "tyres", lifted: "tyres_not_fit"}},
	{"33: teeth at a coolant hose", []string{`wiring_signs = ["none"]`, `hose_state = "gnawed"`}, fact{file: "33_gnawed_wires", look: "wiring", stands: "loom_seen_first"}},
	{"33: teeth at the plug leads", []string{`wiring_signs = ["none"]`, `ignition_signs = ["leads_chewed"]`}, fact{file: "33_gnawed_wires", look: "wiring", stands: "loom_seen_first"}},
	{"33: no teeth anywhere", []string{`wiring_signs = ["none"]`, `rodent_signs = ["none"]`, `ignition_signs = ["none"]`}, fact{file: "33_gnawed_wires", lifted: "loom_seen_first"}},
	{"38: low alone", []string{`gearbox_oil = "dark"`}, fact{file: "38_low_automatic", look: "gearbox_oil_seals", stands: "automatic_level_first"}},
	{"38: burnt alone", []string{`gearbox_level = "right"`, `gearbox_seals = "dry"`}, fact{file: "38_low_automatic", look: "gearbox_oil_seals", stands: "automatic_level_first"}},
	{"95: sound teeth", []string{`timing_teeth = "sound"`}, fact{file: "95_crumbling_teeth", notDo: "cam_belt_or_chain sump_off", lifted: "soft_teeth_before_cranking"}},
	{"95: teeth of metal", []string{`timing_drive = "gears"`, `timing_teeth = "can't tell"`}, fact{file: "95_crumbling_teeth", none: "cam_belt_or_chain"}},
}

// TestClausesOfFacts tells cases of facts otherwise.
func TestClausesOfFacts(t *testing.T) {
	e := builtin(t, nil)
	for _, c := range clauses {
		t.Run(c.says, func(t *testing.T) {
			a := e.Advise(told(t, e, c.file, c.lines...))
			called(t, a, c.do, "do", advisor.Do, advisor.DoOpen)
			called(t, a, c.look, "at least look first", advisor.Do, advisor.DoOpen, advisor.LookFirst)
			called(t, a, c.notDo, "not do", advisor.LookFirst, advisor.Leave, advisor.NotFitted)
			called(t, a, c.leave, "leave", advisor.Leave, advisor.NotFitted)
			called(t, a, c.none, "not fitted", advisor.NotFitted)
			held(t, a, c.fact)
		})
	}
}

// TestWhatAFactNamesIsCertain: a hold that a fact names stands for the finding,
// and not because nobody has asked yet.
func TestWhatAFactNamesIsCertain(t *testing.T) {
	e := builtin(t, nil)
	for _, f := range trade {
		if f.stands == "" {
			continue
		}
		a := advise(t, e, f.file)
		for _, id := range strings.Fields(f.stands) {
			i := slices.IndexFunc(a.Holds, func(h advisor.HoldAdvice) bool { return h.ID == id })
			require.GreaterOrEqual(t, i, 0, id)
			assert.Equal(t, advisor.True, a.Holds[i].When, "%s %s", f.file, id)
		}
	}
}

// TestMoneyOnTheEngineWaitsInTheWet is the end of fact 2, on its own car.
func TestMoneyOnTheEngineWaitsInTheWet(t *testing.T) {
	a := advise(t, builtin(t, nil), "02_wet_outdoors")
	waits := 0
	for _, l := range a.Total.Lines {
		if slices.Contains([]string{"head_off", "head_gasket", "valve_work", "rings_bores", "rebore", "engine_out", "sump_off"}, l.Operation) {
			assert.True(t, l.Waits != "" || l.Kind == "maybe" || l.Kind == "risk", l.Operation)
			waits++
		}
	}
	assert.Positive(t, waits)
}

// TestAnOilyFilmSpeaksOfALeak is the first half of fact 3.
func TestAnOilyFilmSpeaksOfALeak(t *testing.T) {
	e := builtin(t, nil)
	for suspect, seen := range map[string]string{"front_seal_leak": "timing_cover_oil", "rocker_gasket_leaks": "rocker_gasket_state"} {
		oily := without(stay(t, e, "03_oily_underside"), seen)
		assert.Greater(t, chance(t, e.Advise(oily), suspect), chance(t, e.Advise(without(oily, "underside_dirt")), suspect), suspect)
	}
}

// TestBothOutCostNoWayIn is the end of fact 4: with engine and gearbox out,
// clutch and flywheel ask for no access of their own.
func TestBothOutCostNoWayIn(t *testing.T) {
	e := builtin(t, nil)
	a := e.Advise(told(t, e, "04_engine_out_anyway", `done = ["engine_out", "gearbox_out"]`))
	for _, id := range []string{"clutch_kit", "flywheel"} {
		for _, need := range call(a, id).Needs {
			assert.False(t, call(a, need).Access, "%s needs %s", id, need)
		}
	}
}

// TestCheapCoolingPartsAreNotStudied is fact 5.
func TestCheapCoolingPartsAreNotStudied(t *testing.T) {
	a := advise(t, builtin(t, nil), "05_cooling_open")
	for _, id := range []string{"thermostat_in_hot_water", "belts_look", "squeeze_the_hoses"} {
		for _, in := range a.Inspections {
			assert.False(t, in.ID == id && in.Advised, id)
		}
	}
}

// TestAHeadLeftOnSaysWhatWouldChangeIt is fact 7.
func TestAHeadLeftOnSaysWhatWouldChangeIt(t *testing.T) {
	e := builtin(t, nil)
	c := stay(t, e, "07_head_left_on")
	head := call(e.Advise(c), "head_off")
	assert.Contains(t, head.Reason+head.Until, "liner seals")
	w := e.Why(c, "head_off")
	assert.Contains(t, turned(&w), "gas_in_coolant")
}

func turned(w *advisor.Why) (out []string) {
	for _, u := range w.Turns {
		out = append(out, u.Question)
	}
	return out
}

// TestTheSealDecidesTheVariant is the end of fact 8.
func TestTheSealDecidesTheVariant(t *testing.T) {
	e := builtin(t, nil)
	for _, c := range []struct{ variant, file, line string }{
		{"one-piece lip seal", "08_lip_seal", `rear_seal_type = "lip"`},
		{"wrap-around", "08_rope_seal", `originality = "looks"`},
		{"wrap-around", "08_rope_seal", `rear_seal_type = "thread"`},
		{"original rope", "08_rope_seal", `originality = "strict"`},
	} {
		assert.Contains(t, call(e.Advise(told(t, e, c.file, c.line)), "rear_crank_seal").Variant, c.variant, c.line)
	}
}

// TestTheWayOfTheWaterComesFirst is the middle of fact 17, and of fact 20: what
// the water did is known before the sump is dropped or money goes into a block.
func TestTheWayOfTheWaterComesFirst(t *testing.T) {
	e := builtin(t, nil)
	a := advise(t, e, "17_water_in_the_sump")
	way := a.Inspection("water_way_look")
	require.True(t, way.Advised)
	assert.Less(t, way.Rank, a.Inspection("shells_look").Rank)
	assert.Equal(t, 1, advise(t, e, "20_froze_on_water").Inspection("block_crack_test").Rank)
}

// TestNoPageTellsTheWaterInTheFluid is the end of fact 26, on every page.
func TestNoPageTellsTheWaterInTheFluid(t *testing.T) {
	e := builtin(t, nil)
	c := stay(t, e, "26_fluid_age_unknown")
	a := e.Advise(c)
	w := e.Why(c, "brake_fluid")
	letter, err := report.Letter(a, e.Book(), report.LetterOptions{Format: "text"})
	require.NoError(t, err)
	reasons, _, _ := strings.Cut(report.Why(a, &w), "\nSources\n") // one of which tells of a count of cars, not of years
	for _, page := range []string{report.Text(a), report.Sheet(a, e.Book()), reasons, letter} {
		words := strings.Join(strings.Fields(page), " ")
		assert.NotRegexp(t, `[0-9] ?(%|per cent|in 100) (of )?(parts )?water|water (content )?(of|about) [0-9]`, words)
	}
}
