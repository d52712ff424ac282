package engine_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
)

// layouts are what a car can be built like: of each, question and values.
var layouts = [][]string{
	{"layout", "front_rear", "front_front", "rear_rear", "mid_rear", "four"},
	{"engine_cooling", "water", "air"},
	{"bores", "dry", "wet", "air"},
	{"head_material", "iron", "alloy"},
	{"valve_gear", "pushrod", "side_valve", "overhead_cam", "ports", "rotor"},
	{"timing_drive", "chain", "belt", "gears", "none"},
	{"engine_fuel", "petrol", "diesel"},
	{"fuelling", "carburettor", "mechanical_injection", "electronic_injection"},
	{"gearbox_kind", "manual", "automatic", "preselector"},
	{"brake_circuits", "single", "dual", "mechanical"},
	{"body", "unitary", "chassis", "wood_on_chassis", "backbone"},
	{"rear_seal_type", "lip", "rope", "thread"},
}

// built is a complete car of the facts, built as given: "question=value".
func built(t testing.TB, e *engine.Engine, decisions string, how ...string) *advisor.Case {
	data, err := os.ReadFile(facts + "92_dry_carpets.toml")
	require.NoError(t, err)
	body := string(data)
	for _, h := range how {
		q, v, _ := strings.Cut(h, "=")
		if !regexp.MustCompile(`^(\[|-?[0-9]|true$|false$|\{)`).MatchString(v) {
			v = `"` + v + `"`
		}
		line := regexp.MustCompile(`(?m)^` + q + ` = .*\n`)
		body = line.ReplaceAllString(body, "")
		body = strings.Replace(body, "[answers]\n", "[answers]\n"+q+" = "+v+"\n", 1)
	}
	c, l := casefile.Read("built.toml", []byte(body+"\n[decisions]\n"+decisions), e.Book())
	require.False(t, l.HasErrors(), "%v: %v", how, l)
	return c
}

// builtSo is what a layout must come to.
type builtSo struct {
	name   string
	how    string // the case has these answers: space-separated question=value
	none   string // not fitted
	fitted string // fitted, whatever the call
	do     string
	stands string
	never  string // holds that do not stand
}

const coolantWork = "coolant_change coolant_hoses radiator water_pump thermostat heater_matrix core_plugs radiator_cap block_repair"
const hydraulicWork = "brake_hydraulics brake_hoses brake_pipes brake_fluid"

// insisted are what a restorer would insist on, *common practice, no source*. A
// row holds for every car that is built so, whatever else it has.
var insisted = []builtSo{
	{name: "air cools it", how: "engine_cooling=air", none: coolantWork, fitted: "tinware oil_cooler", never: "radiator_whole_first hoses_whole_first pump_whole_first"},
	{name: "water cools it", how: "engine_cooling=water", none: "tinware oil_cooler", fitted: "coolant_change coolant_hoses radiator core_plugs"},
	{name: "behind the axle the engine goes down", how: "layout=rear_rear", none: "engine_upwards transfer_box axle_oil_seals", fitted: "engine_downwards driveline_joints"},
	{name: "in front, lengthwise, it goes up", how: "layout=front_rear", none: "engine_downwards", fitted: "engine_upwards driveline_joints axle_oil_seals"},
	{name: "four wheels drive", how: "layout=four", none: "engine_downwards", fitted: "engine_upwards transfer_box axle_oil_seals"},
	{name: "the front wheels drive", how: "layout=front_front", none: "axle_oil_seals axle_repair transfer_box", fitted: "engine_upwards engine_downwards driveline_joints"},
	{name: "amidships", how: "layout=mid_rear", none: "axle_oil_seals transfer_box", fitted: "engine_upwards engine_downwards"},
	{name: "an automatic has no clutch", how: "gearbox_kind=automatic", none: "clutch_kit clutch_hydraulics flywheel preselector_bands", fitted: "automatic_overhaul gearbox_oil_seals"},
	{name: "a preselector has bands", how: "gearbox_kind=preselector", none: "clutch_kit flywheel automatic_overhaul", fitted: "preselector_bands"},
	{name: "a manual gearbox has a clutch", how: "gearbox_kind=manual", none: "automatic_overhaul preselector_bands", fitted: "clutch_kit flywheel"},
	{name: "a diesel has no sparks", how: "engine_fuel=diesel", none: "ignition_service carb_reseal", fitted: "heater_plugs diesel_filters stop_control"},
	{name: "petrol needs sparks", how: "engine_fuel=petrol", none: "heater_plugs diesel_filters stop_control", fitted: "ignition_service"},
	{name: "gears do not wear like chains", how: "timing_drive=gears", none: "cam_belt_or_chain", never: "belt_before_cranking"},
	{name: "a chain needs no belt's hold", how: "timing_drive=chain", fitted: "cam_belt_or_chain", never: "belt_before_cranking"},
	{name: "wet liners have seals", how: "bores=wet", fitted: "liner_seals liners_clamped"},
	{name: "bores in the block have none", how: "bores=dry", none: "liner_seals liners_clamped"},
	{name: "a rotary has no head", how: "valve_gear=rotor", none: "head_off head_gasket valve_work rocker_gasket rebore valves_freed"},
	{name: "a two-stroke has no valves and no sump", how: "valve_gear=ports", none: "valve_work rocker_gasket valve_clearances_set sump_off bearing_shells engine_oil_filter oil_pressure_prime"},
	{name: "side valves are set too", how: "valve_gear=side_valve", fitted: "valve_clearances_set valve_work head_gasket"},
	{name: "rods and cables have no fluid", how: "brake_circuits=mechanical", none: hydraulicWork, fitted: "brake_linkage brake_friction", never: "hydraulics_not_proved hoses_not_proved pipes_not_proved fluid_not_proved"},
	{name: "one circuit", how: "brake_circuits=single", none: "brake_linkage", fitted: hydraulicWork, stands: "hydraulics_not_proved"},
	{name: "two circuits", how: "brake_circuits=dual", none: "brake_linkage", fitted: hydraulicWork, stands: "hydraulics_not_proved"},
	{name: "timber in the body", how: "body=wood_on_chassis", fitted: "timber_repair body_mounts"},
	{name: "a carburettor has seals", how: "fuelling=carburettor engine_fuel=petrol", none: "fuel_pressure_down", fitted: "carb_reseal"},
	{name: "injection holds its pressure", how: "fuelling=electronic_injection", none: "carb_reseal", fitted: "fuel_pressure_down"},
	{name: "whatever it is", how: "", fitted: "exhaust tyres steering_joints wheel_bearings parking_brake battery wiring stale_fuel structure_probe engine_mounts bore_oiling_hand_turn"},
}

// TestEveryLayout builds each pair of ways to build a car, and holds the advice to
// what a restorer would insist on for either.
func TestEveryLayout(t *testing.T) {
	e := builtin(t, nil)
	met := map[string]bool{}
	for i, one := range layouts {
		for j, two := range layouts[:i] {
			for a, v := range one[1:] {
				w := two[1+(a+j)%(len(two)-1)] // each value meets each other question
				how := []string{one[0] + "=" + v, two[0] + "=" + w}
				insist(t, e.Brief(built(t, e, "", how...)), how, met)
			}
		}
	}
	for _, row := range insisted {
		assert.True(t, met[row.name], "no car is built so: %s", row.name)
	}
}

// insist holds an advice to every row that its car is built like.
func insist(t *testing.T, a *advisor.Advice, how []string, met map[string]bool) {
	t.Helper()
	is := map[string]string{}
	for i := range a.Case.Answers {
		is[a.Case.Answers[i].Question] = fmt.Sprint(a.Case.Answers[i].Written)
	}
	for _, row := range insisted {
		if !slices.ContainsFunc(strings.Fields(row.how), func(h string) bool {
			q, v, _ := strings.Cut(h, "=")
			return is[q] != v
		}) {
			met[row.name] = true
			who := fmt.Sprintf("%s (%v)", row.name, how)
			called(t, a, row.none, "not fitted: "+who, advisor.NotFitted)
			called(t, a, row.fitted, "fitted: "+who, advisor.Do, advisor.DoOpen, advisor.LookFirst, advisor.Leave)
			held(t, a, fact{stands: row.stands, lifted: row.never})
		}
	}
}

// TestLayoutsInParticular are more facts of the trade, *common practice, no source*,
// that hang on more than how the car is built.
func TestLayoutsInParticular(t *testing.T) {
	e := builtin(t, nil)
	for _, row := range []builtSo{
		{name: "front drive: a split boot is renewed before the road", how: "layout=front_front driveshaft_boots=split", do: "driveline_joints", stands: "boots_closed_first"},
		{name: "a rear engine: the same", how: "layout=rear_rear driveshaft_boots=split", do: "driveline_joints", stands: "boots_closed_first"},
		{name: "a propshaft with play", how: "layout=front_rear propshaft_joints=play", do: "driveline_joints", stands: "propshaft_tight_first"},
		{name: "the pump that the timing belt drives goes with it", how: "timing_drive=belt valve_gear=overhead_cam pump_on_timing_belt=true", do: "cam_belt_or_chain water_pump"},
		{name: "soft timber in the body", how: "body=wood_on_chassis timber_frame=soft", do: "timber_repair"},
		{name: "a transfer box with milky oil", how: "layout=four transfer_oil=milky", do: "transfer_box", stands: "transfer_oil_first"},
		{name: "a cooler that weeps, air cooled", how: "engine_cooling=air bores=air air_cooling_state=cooler_leaks", do: "oil_cooler", none: coolantWork},
		{name: "a diesel with dead plugs", how: "engine_fuel=diesel heater_plugs_glow=none", do: "heater_plugs", none: "ignition_service"},
		{name: "a block that was tested and leaks", how: "block_tight=false", do: "block_repair"},
		{name: "an axle that growls and sheds metal", how: "axle_noise=growls axle_sample=metal", do: "axle_repair"},
		{name: "a power-steering hose alone", how: `equipment=["power_steering"] power_steering_state=hose`, do: "power_steering", stands: "power_steering_tight_first"},
		{name: "a belt of unknown age stops the starter", how: "timing_drive=belt valve_gear=overhead_cam", do: "cam_belt_or_chain", stands: "belt_before_cranking"},
	} {
		a := e.Advise(built(t, e, "", strings.Fields(row.how)...))
		called(t, a, row.do, row.name, advisor.Do, advisor.DoOpen)
		called(t, a, row.none, row.name, advisor.NotFitted)
		held(t, a, fact{stands: row.stands})
	}
	side := e.Advise(built(t, e, "accepted = [\"head_off\"]", "valve_gear=side_valve"))
	assert.NotContains(t, []advisor.Call{advisor.Do, advisor.DoOpen}, call(side, "rocker_gasket").Call, "the head of a side-valve engine comes off alone")
	assert.Contains(t, []advisor.Call{advisor.Do, advisor.DoOpen}, call(e.Advise(built(t, e, "accepted = [\"head_off\"]")), "rocker_gasket").Call)
	// A propshaft runs only from end to end. Boots are asked of all: with the engine
	// in front and the wheels hung singly behind, half-shafts have them too.
	hose, ram := call(e.Advise(built(t, e, "", `equipment=["power_steering"]`, "power_steering_state=hose")), "power_steering"), call(e.Advise(built(t, e, "", `equipment=["power_steering"]`, "power_steering_state=leaks")), "power_steering")
	assert.Less(t, hose.Cost, ram.Cost, "a hose is not a ram")
	one, two := call(e.Advise(built(t, e, "")), "stale_fuel"), call(e.Advise(built(t, e, "", `equipment=["two_tanks"]`)), "stale_fuel")
	assert.Less(t, one.Cost, two.Cost, "two tanks are drained one by one")
	for layout, asked := range map[string]bool{"front_rear": true, "four": true, "front_front": false, "rear_rear": false, "mid_rear": false} {
		open := e.Advise(built(t, e, "", "layout="+layout)).Open
		boots := slices.ContainsFunc(open, func(o advisor.OpenQuestion) bool { return o.ID == "driveshaft_boots" })
		shaft := slices.ContainsFunc(open, func(o advisor.OpenQuestion) bool { return o.ID == "propshaft_joints" })
		assert.True(t, boots, "driveshaft boots, %s", layout)
		assert.Equal(t, asked, shaft, "propshaft joints, %s", layout)
	}
}

// seldom are the operations that no fact calls for, each with a sign that does.
var seldom = map[string]string{
	"automatic_overhaul":   "gearbox_kind=automatic gearbox_works=slips gearbox_oil=burnt automatic_pan=metal",
	"axle_repair":          "axle_noise=growls axle_sample=metal axle_level=low",
	"block_repair":         "block_outside=crack block_tight=false",
	"brake_pressure":       `equipment=["pressure_brakes"] pressure_store=silent`,
	"charging":             "charging_state=rough runs_now=even",
	"cover_passage_sealed": `bores=wet cover_carries_water=true oil_dipstick=cream sump_water=true water_drips_from=cover liners_dry_below=false bills=["head_twice"]`,
	"crank_ground":         "shells_seen=journals_bad turning=tight_spot sump_water=true",
	"gearbox_repair":       "gearbox_inside=worn",
	"heat_parts":           `flooded=true harm=["fire"] heat_look=faulty`,
	"heater_plugs":         "engine_fuel=diesel heater_plugs_glow=none",
	"liner_seals":          "bores=wet liners_dry_below=false coolant_level=low sump_water=true",
	"oil_cooler":           "engine_cooling=air air_cooling_state=cooler_leaks",
	"overdrive":            "overdrive_fitted=true overdrive_tried=faulty",
	"overdrive_rebuild":    "gearbox_kind=manual overdrive_fitted=true overdrive_state=stays_in overdrive_released=false gearbox_works=stiff clutch_frees=true gearbox_inside=worn",
	"studs_freed":          `head_studs=corroded bubbles=repeated leakdown=[10,78,80,12] air_goes=["neighbour"] compression=[140,60,62,140]`,
	"thrust_washers":       "crank_end_float=over",
}

// TestEveryOperationIsCalledForSomewhere: for each operation there is a layout in
// which a finding makes it work to do.
func TestEveryOperationIsCalledForSomewhere(t *testing.T) {
	e := builtin(t, nil)
	done := map[string]bool{}
	note := func(a *advisor.Advice) {
		for i := range a.Operations {
			if c := a.Operations[i].Call; c == advisor.Do || c == advisor.DoOpen {
				done[a.Operations[i].ID] = true
			}
		}
	}
	for _, cars := range []string{facts + "*.toml", facts + "../practice/*.toml"} {
		files, err := filepath.Glob(cars)
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, f := range files {
			data, err := os.ReadFile(f)
			require.NoError(t, err)
			c, l := casefile.Read(f, data, e.Book())
			require.False(t, l.HasErrors(), f)
			note(e.Advise(c))
		}
	}
	for id, how := range seldom {
		a := e.Advise(built(t, e, "", strings.Fields(how)...))
		assert.Contains(t, []advisor.Call{advisor.Do, advisor.DoOpen}, call(a, id).Call, "%s: %s", id, call(a, id).Reason)
		note(a)
	}
	for i := range e.Book().Operations {
		assert.True(t, done[e.Book().Operations[i].ID], "nothing calls for %s", e.Book().Operations[i].ID)
	}
}
