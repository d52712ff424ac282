package engine_test

import (
	"os"
	"path/filepath"
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

const facts = "../../testdata/cases/facts/"

// opened is the work that opens an assembly.
const opened = "engine_out gearbox_out head_off sump_off timing_cover_off"

// fact is what common practice says of one case: space-separated ids.
type fact struct {
	file   string
	do     string // called do or do while open
	look   string // at least look first
	notDo  string // never do
	leave  string // leave
	none   string // not fitted
	stops  string // acts that some hold stops
	stands string // holds that stand, by id
	lifted string // holds that do not stand
	free   string // acts that no hold stops, not even one that only may apply
}

var trade = []fact{
	{file: "01_dry_garage", look: "coolant_hoses fuel_hoses brake_hoses", notDo: "structure_weld"},
	{file: "02_wet_outdoors", do: "structure_probe"},
	{file: "04_engine_out_anyway", look: "clutch_kit flywheel gearbox_oil_seals"},
	{file: "05_cooling_open", do: "coolant_change thermostat coolant_hoses drive_belts"},
	{file: "06_carburettor_ran_well", leave: "carb_rebuild"},
	{file: "07_head_left_on", leave: "head_off head_gasket"},
	{file: "08_lip_seal", do: "rear_crank_seal gearbox_out clutch_kit", look: "flywheel", notDo: "sump_off"},
	{file: "08_rope_seal", do: "rear_crank_seal sump_off clutch_kit", look: "flywheel"},
	{file: "09_by_the_book", free: "powered turned cranked run", leave: opened + " head_gasket valve_work rings_bores bearing_shells clutch_kit carb_rebuild radiator water_pump structure_weld wiring"},
	{file: "10_old_timing_belt", do: "cam_belt_or_chain", stops: "cranked run", stands: "belt_before_cranking"},
	{file: "10_belt_of_unknown_age", do: "cam_belt_or_chain", stops: "cranked run", stands: "belt_before_cranking"},
	{file: "11_quiet_chain", notDo: "timing_cover_off cam_belt_or_chain"},
	{file: "12_not_turned", do: "bore_oiling_hand_turn", stops: "cranked run", stands: "hand_turn_first", lifted: "clutch_pieces_out_first ring_gear_whole_first"},
	{file: "13_solid", stops: "turned cranked run", stands: "no_force_on_a_solid_engine"},
	{file: "14_varnish", do: "stale_fuel", stops: "run", stands: "old_fuel_out_first"},
	{file: "15_mechanical_injection", do: "stale_fuel", look: "carb_rebuild", stops: "cranked run", stands: "injection_cut_off_first injection_free_first"},
	{file: "16_petrol_in_the_oil", do: "engine_oil_filter", look: "fuel_pump carb_reseal", stops: "run", stands: "fresh_oil_first"},
	{file: "17_water_in_the_sump", look: "bearing_shells sump_off head_gasket", stops: "cranked run", stands: "water_out_of_the_oil_first"},
	{file: "18_two_low_neighbours", do: "head_off head_gasket", look: "head_machined"},
	{file: "19_bubbles_repeated", do: "head_off head_gasket"},
	{file: "19_one_bubble", look: "head_off", notDo: "head_off head_gasket"},
	{file: "20_froze_on_water", do: "core_plugs", notDo: "rings_bores bearing_shells valve_work", stops: "filled cranked run", stands: "prove_the_block_first core_plugs_in_first"},
	{file: "72_froze_and_seized", do: "head_off sump_off core_plugs", look: "clutch_kit flywheel", leave: "rings_bores rebore bearing_shells crank_ground valve_work", stops: "turned filled cranked run", stands: "prove_the_block_first"},
	{file: "21_boiled_alloy_head", do: "head_off head_gasket", look: "head_machined"},
	{file: "22_soft_seats", notDo: "head_off valve_work"},
	{file: "23_no_oil_pressure", look: "oil_path_cleared", stops: "run", stands: "oil_pressure_first"},
	{file: "24_stuck_clutch", notDo: "gearbox_out engine_out clutch_kit", stops: "driven", stands: "clutch_frees_first"},
	{file: "25_single_circuit", do: "brake_hydraulics brake_hoses brake_fluid", stops: "road"},
	{file: "26_fluid_age_unknown", do: "brake_fluid", stops: "road"},
	{file: "27_one_cracked_hose", do: "brake_hoses brake_fluid", stops: "road", stands: "hoses_not_proved"},
	{file: "28_sinking_pedal", do: "brake_hydraulics", stops: "driven road", stands: "no_pedal_no_moving brakes_not_to_be_driven_on"},
	{file: "29_oiled_linings", do: "brake_friction axle_oil_seals", stops: "road", stands: "linings_not_seen"},
	{file: "29_fluid_on_linings", do: "brake_friction brake_hydraulics", stops: "road", stands: "linings_not_seen"},
	{file: "30_pitted_pipe", do: "brake_pipes brake_fluid", stops: "road", stands: "pipes_not_proved"},
	{file: "31_old_tyres", do: "tyres", stops: "road", stands: "tyres_not_fit"},
	{file: "31_undated_tyres", do: "tyres", stops: "road", stands: "tyres_not_fit"},
	{file: "31_cracked_tyres", do: "tyres", stops: "road", stands: "tyres_not_fit"},
	{file: "32_mixed_tyres", do: "tyres", stops: "road", stands: "tyres_not_fit"},
	{file: "33_gnawed_wires", look: "wiring", stops: "powered", stands: "loom_seen_first"},
	{file: "34_folding_point", do: "structure_weld", stops: "lifted", stands: "point_that_folds"},
	{file: "35_moving_anchorage", do: "structure_weld", stops: "road", stands: "belts_not_proved"},
	{file: "35_frayed_belts", do: "seat_belts", stops: "road", stands: "belts_not_proved"},
	{file: "35_loaded_belts", do: "seat_belts", stops: "road", stands: "belts_not_proved"},
	{file: "35_no_belts", none: "seat_belts", lifted: "belts_not_proved"},
	{file: "36_cracked_fuel_hose", do: "fuel_hoses", stops: "run", stands: "fuel_hoses_whole_first"},
	{file: "36_hose_of_unknown_age", do: "fuel_hoses", stops: "run", stands: "fuel_hoses_whole_first"},
	{file: "36_pinholed_tank", do: "fuel_tank stale_fuel", stops: "run", stands: "tank_fit_first"},
	{file: "37_milky_oils", do: "gearbox_oil_seals axle_oil_seals", stops: "road", stands: "gearbox_water_out_first axle_water_out_first"},
	{file: "37_bent_track_rod", do: "steering_joints", stops: "driven road", stands: "steering_jammed_or_loose"},
	{file: "38_low_automatic", look: "gearbox_oil_seals", none: "clutch_kit", stops: "driven", stands: "automatic_level_first"},
	{file: "40_swollen_battery", do: "battery", stops: "charged", stands: "battery_whole_first"},
	{file: "41_nest_in_the_intake", do: "rodent_clean", stops: "cranked run", stands: "intake_clear_first"},
	{file: "42_stuffed_exhaust", stops: "run", stands: "exhaust_clear_first"},
	{file: "43_stuck_throttle", look: "carb_reseal", stops: "run", stands: "throttle_free_first"},
	{file: "44_struck_a_kerb", do: "structure_probe", look: "structure_weld steering_joints wheel_rims", notDo: opened, stops: "road", stands: "struck_and_not_measured"},
	{file: "45_deep_knock", do: "sump_off", look: "bearing_shells"},
	{file: "46_liquid_in_a_cylinder", stops: "cranked run", stands: "cylinders_empty_first"},
	{file: "47_dragging_wheels", do: "brake_friction", stops: "moved driven", stands: "locked_wheels"},
	{file: "48_split_radiator", do: "radiator", stops: "run", stands: "radiator_whole_first"},
	{file: "49_slipping_clutch", do: "clutch_kit", look: "flywheel", stops: "driven", stands: "clutch_holds_first"},
	{file: "50_air_cooled_rear_engine", do: "structure_weld rodent_clean drive_belts driveline_joints exhaust", look: "engine_out",
		none:   "core_plugs coolant_hoses coolant_change radiator water_pump thermostat heater_matrix clutch_hydraulics cam_belt_or_chain axle_oil_seals seat_belts",
		stops:  "lifted moved driven road",
		stands: "belt_turns_the_fan_first cooling_tin_clear_first point_that_folds structure_gone",
		lifted: "coolant_in_first coolant_full_first hoses_whole_first pump_whole_first radiator_whole_first core_plugs_in_first prove_the_block_first no_start_with_a_proved_gasket propshaft_tight_first axle_oil_in_first servo_hose_cut"},
	{file: "51_pre_war_tourer", do: "wiring fuel_tank tyres", look: "timber_repair brake_linkage brake_friction", notDo: "fuel_hoses bearing_shells",
		none:   "brake_hydraulics brake_hoses brake_pipes brake_fluid water_pump thermostat heater_matrix fuel_pump clutch_hydraulics cam_belt_or_chain",
		stands: "linkage_not_proved timber_not_proved",
		lifted: "hydraulics_not_proved hoses_not_proved pipes_not_proved fluid_not_proved pump_whole_first"},
	{file: "52_diesel", do: "stale_fuel fuel_tank driveline_joints", look: "carb_rebuild", notDo: opened,
		none: "ignition_service carb_reseal", stops: "cranked", stands: "injection_cut_off_first"},
	{file: "53_vee_eight_automatic", do: "radiator coolant_change brake_hydraulics rodent_clean seat_belts", notDo: "valve_work bearing_shells",
		none: "clutch_kit flywheel clutch_hydraulics", stands: "automatic_level_first no_pedal_no_moving", lifted: "clutch_holds_first clutch_pieces_out_first"},
	{file: "70_flood_over_the_floor", do: "gearbox_oil_seals axle_oil_seals wheel_bearings wiring rodent_clean stale_fuel", notDo: "brake_pipes",
		stops: "turned powered cranked driven road", stands: "flooded_engine_first flooded_wires_first flooded_gearbox_first flooded_axle_first", lifted: "struck_and_not_measured burnt_wires_first"},
	{file: "71_flood_at_the_wheels", do: "gearbox_oil_seals axle_oil_seals wheel_bearings", notDo: "wiring rodent_clean", stands: "flooded_gearbox_first", lifted: "flooded_wires_first flooded_engine_first"},
	{file: "72_salt_water", do: "brake_hydraulics brake_pipes structure_probe parking_brake wheel_bearings wiring", stops: "powered", stands: "flooded_wires_first"},
	{file: "73_fire_under_the_bonnet", do: "wiring fuel_hoses brake_hoses", look: "heat_parts", notDo: "rodent_clean", stops: "powered driven",
		stands: "burnt_wires_first burnt_parts_first", lifted: "flooded_wires_first flooded_axle_first struck_and_not_measured"},
	{file: "74_crashed_coupe", do: "structure_probe airbag_system seat_belts", look: "steering_joints structure_weld", notDo: opened,
		none: "heat_parts", stops: "powered road", stands: "airbags_made_safe_first belts_not_proved struck_and_not_measured", lifted: "flooded_wires_first burnt_parts_first"},
	{file: "75_sunk_on_its_spheres", do: "fluid_suspension", stops: "lifted driven", stands: "body_held_before_below suspension_up_first"},
	{file: "75_held_by_its_body", do: "fluid_suspension", stops: "driven", stands: "suspension_up_first", lifted: "body_held_before_below"},
	{file: "76_pressure_brakes", look: "brake_pressure", stops: "driven", stands: "pressure_store_not_proved", lifted: "linkage_not_proved"},
	{file: "77_silicone_with_a_bill", notDo: "brake_fluid", lifted: "fluid_not_proved"},
	{file: "78_silicone_topped_up", do: "brake_fluid brake_hydraulics", stops: "road", stands: "fluid_not_proved"},
	{file: "78_silicone_in_pressure_brakes", do: "brake_fluid brake_hydraulics", look: "brake_pressure", stops: "driven", stands: "pressure_store_not_proved"},
	{file: "79_rod_brakes", look: "body_mounts", none: "brake_hydraulics brake_hoses brake_pipes brake_fluid brake_pressure", stops: "road", stands: "rods_not_balanced", lifted: "linkage_not_proved hydraulics_not_proved"},
	{file: "80_dry_trunnions", do: "front_pivots", stops: "road", stands: "pivots_not_proved"},
	{file: "81_worn_kingpins", do: "front_pivots", stops: "road", stands: "pivots_not_proved"},
	{file: "82_swing_axles_tail_high", do: "rear_height", none: "radiator front_pivots", stops: "road", stands: "rear_stance_first"},
	{file: "83_body_off_its_frame", do: "body_mounts structure_probe", look: "structure_weld", stops: "road", stands: "mounts_not_proved"},
	{file: "84_rotten_hood", do: "structure_probe folding_roof water_sealing", look: "structure_weld", notDo: opened, lifted: "roof_latches_first"},
	{file: "85_clicking_splines", do: "wire_wheels", stops: "road", stands: "wire_wheels_not_proved"},
	{file: "86_split_rims", do: "wheel_rims", none: "wire_wheels"},
	{file: "87_door_springs_open", do: "doors_locks", notDo: "structure_weld", stops: "road", stands: "doors_hold_first"},
	{file: "88_brakes_opened", stops: "driven road", stands: "brakes_tried_after_work"},
	{file: "88_brakes_opened_and_tried", lifted: "brakes_tried_after_work brakes_not_to_be_driven_on hydraulics_not_proved"},
	{file: "88_brakes_opened_again", stops: "driven road", stands: "brakes_tried_after_work"},
	{file: "88_brakes_tried_by_a_friend", stops: "driven road", stands: "brakes_tried_after_work"},
	{file: "88_steering_apart", stops: "road", stands: "track_set_after_work", lifted: "steering_not_proved brakes_tried_after_work"},
	{file: "88_steering_set", lifted: "track_set_after_work steering_not_proved"},
	{file: "89_just_welded", stops: "road", stands: "welds_looked_at", lifted: "structure_not_proved structure_gone"},
	{file: "90_power_steering_leaks", do: "power_steering", stops: "road", stands: "power_steering_tight_first"},
	{file: "91_crack_in_the_view", do: "glass", stops: "road", stands: "glass_fit_first"},
	{file: "92_dry_carpets", none: "fluid_suspension brake_pressure front_pivots rear_height wire_wheels folding_roof power_steering body_mounts airbag_system heat_parts",
		leave: "water_sealing doors_locks glass structure_weld", lifted: "body_held_before_below pressure_store_not_proved mounts_not_proved wire_wheels_not_proved pivots_not_proved flooded_wires_first"},
	{file: "93_burnt_tail", do: "fuel_hoses brake_hoses", look: "heat_parts", notDo: "wiring seat_belts", stands: "burnt_parts_first burnt_wires_first"},
	{file: "93_wet_floor", do: "structure_probe rodent_clean", look: "water_sealing structure_weld"},
	{file: "94_low_hydrometer", do: "coolant_change", stops: "charged", stands: "flat_battery_seen_first"},
	{file: "94_low_pedal", do: "brake_fluid", stops: "road", stands: "pedal_reserve_first"},
	{file: "94_sold_as_it_stands", do: "stale_fuel", look: "structure_probe", leave: opened + " engine_oil_filter battery tyres brake_hydraulics brake_hoses fuel_hoses thermostat wiring", stops: "road"},
	{file: "94_drowned_and_to_be_sold", do: "stale_fuel structure_probe", leave: opened + " wiring brake_hydraulics seat_belts engine_oil_filter", stops: "powered road", stands: "flooded_wires_first"},
	{file: "94_valves_met", do: "head_off head_gasket valve_work cam_belt_or_chain", look: "rings_bores", stops: "cranked run", stands: "bent_valves_do_not_turn"},
	{file: "94_side_valve_stands_open", do: "head_off head_gasket valve_work", stops: "cranked", stands: "valves_move_first"},
	{file: "94_wet_manifold", do: "intake_joint", look: "cooling_fan_mended", leave: "head_off head_gasket", stops: "run", stands: "manifold_joint_dry_first"},
	{file: "94_two_wet_seals", do: "sump_off", look: "head_off liner_seals cover_passage_sealed timing_cover_off", notDo: "head_off head_gasket timing_cover_off"},
	{file: "94_clearance_gone", do: "valve_clearances_set", look: "head_off valve_work", notDo: "head_off rings_bores"},
	{file: "54_diesel_stop_sticks", do: "stop_control diesel_filters", none: "ignition_service carb_reseal", stops: "run", stands: "stop_control_first"},
	{file: "55_two_stroke", look: "rear_crank_seal front_crank_seal ignition_service", none: "engine_oil_filter oil_pressure_prime sump_off bearing_shells valve_work valve_clearances_set rocker_gasket cam_belt_or_chain timing_cover_off", stops: "cranked run", stands: "mixture_oil_first", lifted: "oil_pressure_first fresh_oil_first"},
	{file: "56_overdrive_dead", look: "overdrive", notDo: "gearbox_out engine_out gearbox_repair"},
	{file: "57_overdrive_stays_in", look: "overdrive", stops: "driven", stands: "overdrive_out_before_reverse"},
	{file: "58_injection_laid_up", do: "fuel_hoses fuel_pressure_down", look: "carb_rebuild fuel_pump", none: "carb_reseal", stops: "run"},
	{file: "59_gas_conversion", do: "gas_system", stops: "driven road", stands: "gas_tested_first"},
	{file: "60_air_conditioned", do: "engine_out refrigerant_out rear_crank_seal"},
	{file: "61_watered_transfer_box", do: "transfer_box", stops: "driven road", stands: "transfer_oil_first four_wheel_out_first"},
	{file: "62_jammed_starter", do: "starter_motor", stops: "cranked", stands: "starter_not_jammed"},
	{file: "63_seized_blower", do: "blower_rebuild", notDo: opened, stops: "run", stands: "blower_turns_first"},
	{file: "64_dead_fan", do: "cooling_fan_mended", stops: "driven", stands: "fan_works_first"},
	{file: "65_tin_missing", do: "tinware", none: "radiator radiator_cap coolant_change", stops: "run", stands: "cooling_air_first"},
	{file: "66_rotten_fuel_pipe", do: "fuel_pipes fuel_hoses", stops: "run", stands: "fuel_pipes_whole_first"},
	{file: "67_original_thread", do: "rear_crank_seal seal_track_sleeved sump_off engine_out"},
	{file: "68_preselector", do: "preselector_bands gearbox_oil_seals", none: "clutch_kit flywheel automatic_overhaul", stops: "driven", stands: "preselector_pedal_first"},
	{file: "69_burnt_automatic", look: "gearbox_oil_seals", notDo: "gearbox_out automatic_overhaul", stops: "driven", stands: "automatic_level_first"},
	{file: "70_tight_all_round", do: "bore_oiling_hand_turn ring_soak", notDo: opened + " rings_bores", stops: "cranked", stands: "hand_turn_first", lifted: "no_force_on_a_solid_engine"},
	{file: "71_stops_hard", do: "bore_oiling_hand_turn cam_belt_or_chain", stops: "turned cranked", stands: "marks_before_cranking cylinders_empty_first hand_turn_first"},
	{file: "73_wet_liners_full", leave: "head_off head_gasket liner_seals", stops: "run"},
	{file: "74_flooded_bores", do: "engine_oil_filter", stops: "cranked run", stands: "cylinders_empty_first fresh_oil_first"},
	{file: "75_rotary", do: "engine_oil_filter ignition_service", none: "head_off head_gasket valve_work rocker_gasket cam_belt_or_chain", notDo: "rings_bores"},
	{file: "76_dripping_automatic", do: "gearbox_oil_seals", stops: "driven", stands: "automatic_level_first"},
	{file: "77_plug_pushed_out", do: "core_plugs", look: "block_repair", notDo: "rings_bores bearing_shells valve_work", stops: "filled cranked run", stands: "prove_the_block_first core_plugs_in_first"},
	{file: "78_rusted_solid", do: "engine_out head_off sump_off timing_cover_off head_gasket rings_bores bearing_shells valve_work front_crank_seal rear_crank_seal core_plugs", look: "clutch_kit flywheel", stops: "turned cranked", stands: "no_force_on_a_solid_engine"},
	{file: "95_crumbling_teeth", do: "cam_belt_or_chain timing_cover_off front_crank_seal sump_off engine_oil_filter", stops: "cranked run", stands: "soft_teeth_before_cranking"},
	{file: "39_any_waking", do: "engine_oil_filter wheel_nuts_again", stops: "run", stands: "fresh_oil_first"},
}

// TestFactsOfTheTrade holds the advice to what common practice is agreed on.
func TestFactsOfTheTrade(t *testing.T) {
	e := builtin(t, nil)
	for _, f := range trade {
		t.Run(f.file, func(t *testing.T) {
			a := advise(t, e, f.file)
			called(t, a, f.do, "do", advisor.Do, advisor.DoOpen)
			called(t, a, f.look, "at least look first", advisor.Do, advisor.DoOpen, advisor.LookFirst)
			called(t, a, f.notDo, "not do", advisor.LookFirst, advisor.Leave, advisor.NotFitted)
			called(t, a, f.leave, "leave", advisor.Leave, advisor.NotFitted)
			called(t, a, f.none, "not fitted", advisor.NotFitted)
			held(t, a, f)
		})
	}
}

// called checks that every operation named has one of the calls.
func called(t *testing.T, a *advisor.Advice, ids, want string, calls ...advisor.Call) {
	t.Helper()
	for _, id := range strings.Fields(ids) {
		o := call(a, id)
		assert.Contains(t, calls, o.Call, "%s should be %s: %s", id, want, o.Reason)
	}
}

// held checks the acts that are stopped and the holds that stop them.
func held(t *testing.T, a *advisor.Advice, f fact) {
	t.Helper()
	var stopped, ids []string
	for _, h := range a.Holds {
		stopped = append(stopped, h.Stops...)
		ids = append(ids, h.ID)
	}
	for _, act := range strings.Fields(f.stops) {
		assert.Contains(t, stopped, act)
	}
	for _, id := range strings.Fields(f.stands) {
		assert.Contains(t, ids, id)
	}
	for _, act := range strings.Fields(f.free) {
		assert.NotContains(t, stopped, act)
	}
	for _, id := range strings.Fields(f.lifted) {
		assert.NotContains(t, ids, id)
	}
}

// advise gives the advice on one case of facts.
func advise(t testing.TB, e *engine.Engine, file string) *advisor.Advice {
	return e.Advise(stay(t, e, file))
}

func stay(t testing.TB, e *engine.Engine, file string) *advisor.Case {
	data, err := os.ReadFile(facts + file + ".toml")
	require.NoError(t, err)
	c, l := casefile.Read(file, data, e.Book())
	require.False(t, l.HasErrors(), file)
	return c
}

// TestEveryFactIsHeld keeps the table and the files together.
func TestEveryFactIsHeld(t *testing.T) {
	files, err := filepath.Glob(facts + "*.toml")
	require.NoError(t, err)
	told := []string{"03_oily_underside"} // a comparison, tested by itself
	for _, f := range trade {
		told = append(told, f.file)
	}
	for _, f := range files {
		assert.Contains(t, told, strings.TrimSuffix(filepath.Base(f), ".toml"))
	}
	assert.Len(t, told, len(files))
}

// without is the case with one question not answered.
func without(c *advisor.Case, question string) *advisor.Case {
	less := *c
	less.Answers = slices.DeleteFunc(slices.Clone(c.Answers), func(a advisor.Answer) bool { return a.Question == question })
	return &less
}

func chance(t *testing.T, a *advisor.Advice, suspect string) float64 {
	i := slices.IndexFunc(a.Suspects, func(s advisor.SuspectAdvice) bool { return s.ID == suspect })
	require.GreaterOrEqual(t, i, 0, suspect)
	return a.Suspects[i].Chance
}

// TestAnOilyFilmSpeaksAgainstRust is fact 3.
func TestAnOilyFilmSpeaksAgainstRust(t *testing.T) {
	e := builtin(t, nil)
	c := stay(t, e, "03_oily_underside")
	assert.Less(t, chance(t, e.Advise(c), "structure_rusted"), chance(t, e.Advise(without(c, "underside_dirt")), "structure_rusted"))
}

// TestASolidEngineIsLookedIntoFirst is fact 13: of all looks at the engine the
// plugs come first, and whatever turns or cranks it is stopped.
func TestASolidEngineIsLookedIntoFirst(t *testing.T) {
	e := builtin(t, nil)
	a := advise(t, e, "13_solid")
	engine := []string{"plugs_look", "borescope_look", "compression_test", "compression_oiled", "leakdown_test", "valve_look", "sump_sample", "first_start",
		"core_plugs_look", "mounts_look", "oil_pressure_test", "oil_path_look", "chain_with_cover_off", "shells_look", "liner_seal_test", "spark_test"}
	var order []string
	for _, in := range a.Inspections {
		if in.Advised && slices.Contains(engine, in.ID) {
			order = append(order, in.ID)
		}
		if in.ID == "first_start" || strings.HasPrefix(in.ID, "compression_") && len(in.Bundle) == 0 {
			assert.NotEmpty(t, in.Blocked, in.ID)
		}
	}
	require.NotEmpty(t, order)
	assert.Equal(t, "plugs_look", order[0])
}

// TestASinkingPedalPointsAtTheMaster is the other half of fact 28: bleeding by a
// friend lifts nothing.
func TestASinkingPedalPointsAtTheMaster(t *testing.T) {
	e := builtin(t, nil)
	c := stay(t, e, "28_sinking_pedal")
	with, less := e.Advise(c), e.Advise(without(c, "done_since"))
	assert.Len(t, with.Holds, len(less.Holds))
	master := chance(t, with, "master_cylinder_bypasses")
	assert.Greater(t, master, 0.5)
	assert.Greater(t, master, chance(t, with, "cylinders_leak_or_stick"), "the master cylinder leads")
}

// TestNothingBelowAFoldingPoint is fact 34: every look under the car waits.
func TestNothingBelowAFoldingPoint(t *testing.T) {
	a := advise(t, builtin(t, nil), "34_folding_point")
	for _, in := range a.Inspections {
		below := slices.ContainsFunc(in.Cautions, func(c advisor.CautionAdvice) bool { return c.Hazard == "under_car" })
		if below && in.ID != "find_sound_metal_to_hold_by" {
			assert.Contains(t, in.Blocked, "point_that_folds", in.ID)
		}
	}
}

// TestATrialComesAfterTheWork: what was measured before the work lifts nothing;
// only the trial after it does.
func TestATrialComesAfterTheWork(t *testing.T) {
	a := advise(t, builtin(t, nil), "88_brakes_opened")
	i := slices.IndexFunc(a.Holds, func(h advisor.HoldAdvice) bool { return h.ID == "brakes_tried_after_work" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, []advisor.Settle{{Kind: "inspection", ID: "try_the_brakes_again"}}, a.Holds[i].LiftedBy)
}

// TestPagesOfTheTrade reads the pages where a fact is a matter of words.
func TestPagesOfTheTrade(t *testing.T) {
	e := builtin(t, nil)
	for _, p := range []struct{ file, says, never string }{
		{"07_head_left_on", "liner seals", ""},
		{"08_lip_seal", "one-piece lip seal", ""},
		{"08_rope_seal", "sump and rear main cap off too", ""},
		{"13_solid", "Plugs out", `(?i)\b(turn|spin|crank|try|free) it (on|with) the starter|by pump drive or starter|a longer bar (may|will|can)`},
		{"14_varnish", "clean separate supply", ""},
		{"15_mechanical_injection", "A stiff rack is not worked free on the car", `(?i)\btry (it|the (injection )?pump)\b`},
		{"23_no_oil_pressure", "does not move in half a minute", ""},
		{"23_no_oil_pressure", "relief valve, renew the filter, prime or reseal the pump, clean the pick-up", ""},
		{"35_frayed_belts", "never stitched", ""},
		{"20_froze_on_water", "neither proof nor rescue", ""},
		{"60_air_conditioned", "recovered by somebody licensed", ""},
		{"67_original_thread", "machine the crank for the original pattern", ""},
		{"26_fluid_age_unknown", "", `[0-9] ?(%|per cent) (of )?water`},
		{"29_oiled_linings", "", "(wash|degrease) the linings"},
		{"30_pitted_pipe", "only a new one", ""},
		{"36_pinholed_tank", "No flame", ""},
		{"73_fire_under_the_bonnet", "not touched bare-handed", ""},
		{"74_crashed_coupe", "somebody trained", ""},
		{"75_sunk_on_its_spheres", "stands come first", ""},
		{"78_silicone_topped_up", "top up with nothing until that is certain", ""},
		{"86_split_rims", "pump only in a cage", ""},
		{"92_dry_carpets", "", "(?i)silicone fluid is said|pump only in a cage|suspension is lowered"},
		{"27_one_cracked_hose", "renew all flexible brake hoses", ""},
		{"29_oiled_linings", "on both sides of that axle with the leak cured, never washed and refitted", ""},
		{"29_fluid_on_linings", "on both sides of that axle with the leak cured, never washed and refitted", ""},
		{"31_old_tyres", "renew the tyres, the spare included", ""},
		{"31_undated_tyres", "renew the tyres, the spare included", ""},
		{"37_milky_oils", "drained and flushed, and the bearings looked at for pits", ""},
		{"37_milky_oils", "UNTIL no water is in the axle oil, or it is flushed and the bearings are looked at", ""},
		{"37_milky_oils", "UNTIL no water is in the gearbox oil, or it is flushed and the bearings are listened to", ""},
		{"37_bent_track_rod", "renewed, never straightened, for then it breaks later, and its mate is looked at", "(?i)straighten the (track )?rod"},
		{"18_two_low_neighbours", "Whether it is flat decides the quotation", ""},
		{"78_rusted_solid", "upwards on a crane", ""},
		{"50_air_cooled_rear_engine", "", "upwards on a crane"},
		{"39_any_waking", "again after the first hours", ""},
		{"39_any_waking", "first 50 to 100 km", "re-?tighten the head"},
	} {
		page := strings.Join(strings.Fields(report.Text(advise(t, e, p.file))), " ")
		assert.Contains(t, page, p.says, p.file)
		if p.never != "" {
			assert.NotRegexp(t, p.never, page, p.file)
		}
	}
}

// TestFlatnessIsAMaybeWithMoney is the end of facts 18 and 21: whether the head is
// flat is known with it off, and the sum says what it costs if it is not.
func TestFlatnessIsAMaybeWithMoney(t *testing.T) {
	e := builtin(t, nil)
	line := func(file, operation string) advisor.Line {
		for _, l := range advise(t, e, file).Total.Lines {
			if l.Operation == operation && l.Kind != "risk" {
				return l
			}
		}
		return advisor.Line{}
	}
	maybe := line("18_two_low_neighbours", "head_machined")
	assert.Equal(t, "maybe", maybe.Kind)
	assert.Positive(t, maybe.Mean)
	assert.True(t, 0 < maybe.Chance && maybe.Chance < 1)
	assert.Positive(t, line("21_boiled_alloy_head", "head_machined").Mean)
	assert.Positive(t, line("21_boiled_alloy_head", "head_gasket").Mean, "and a new gasket")
}

// TestFreeingComesFirst is the middle of fact 24: of all looks at the clutch the
// one that frees it leads.
func TestFreeingComesFirst(t *testing.T) {
	a := advise(t, builtin(t, nil), "24_stuck_clutch")
	free := a.Inspection("clutch_free_it")
	require.True(t, free.Advised)
	for _, in := range a.Inspections {
		if in.Advised && in.ID != free.ID && strings.HasPrefix(in.ID, "clutch_") {
			assert.Less(t, free.Rank, in.Rank, in.ID)
		}
	}
}

// TestNoEngineMoneyBeforeTheShell is the end of fact 2.
func TestNoEngineMoneyBeforeTheShell(t *testing.T) {
	e := builtin(t, nil)
	a := e.Advise(without(stay(t, e, "78_rusted_solid"), "structure_seen"))
	assert.Equal(t, advisor.Do, call(a, "engine_out").Call)
	waits := map[string]string{}
	for _, l := range a.Total.Lines {
		waits[l.Operation] = l.Waits
	}
	for _, id := range []string{"engine_out", "engine_upwards", "engine_parted", "head_gasket"} {
		assert.NotEmpty(t, waits[id], id)
	}
	assert.Empty(t, waits["structure_probe"])
}
