package book

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// actsNeed says which hazard a look must name for an act that it performs; any
// one of those with a bar between them will do.
var actsNeed = map[string][]string{
	"lifted":  {"under_car|lifting"},
	"powered": {},
	"charged": {"battery_gas"},
	"filled":  {"glycol|chemicals"},
	"moved":   {},
	"turned":  {"rotating|in_gear", "in_gear|compressed_air"},
	"cranked": {"rotating", "in_gear"},
	"run":     {"carbon_monoxide", "rotating"},
	"driven":  {"carbon_monoxide", "alone"},
	"road":    {"alone"},
}

// touches says which work and looks of the built-in book touch a hazard, one
// that is known from what the work is: its opener, not its page, would forget it.
var touches = map[string]string{
	"under_car":           "on_lift wheels_off gearbox_out sump_off axle_oil_seals fuel_tank exhaust structure_probe underside_clean tank_from_below look_from_below",
	"lifting":             "on_lift engine_out engine_upwards engine_downwards engine_parted gearbox_out head_off flywheel suspension_bushes_dampers",
	"hoist":               "engine_upwards",
	"let_down":            "engine_downwards",
	"alone":               "engine_out gearbox_out first_start road_test",
	"fuel_vapour":         "stale_fuel fuel_tank fuel_hoses fuel_pipes fuel_pump carb_reseal carb_rebuild engine_out structure_weld fuel_jar tank_look carb_bowl_look spark_test compression_test first_start",
	"thinned_oil":         "engine_oil_filter sump_sample",
	"hot_work":            "structure_weld fuel_tank exhaust underside_clean studs_freed",
	"welding":             "structure_weld",
	"battery_gas":         "battery charging starter_motor wiring battery_load_test battery_hydrometer",
	"acid":                "battery battery_hydrometer battery_load_test",
	"high_tension":        "ignition_service spark_test compression_test compression_oiled oil_pressure_prime oil_pressure_test",
	"asbestos":            "brake_friction brake_hydraulics parking_brake drums_off drums_off_look calipers_look clutch_kit flywheel gearbox_out engine_parted preselector_bands overdrive automatic_overhaul head_gasket exhaust heat_parts rear_crank_seal",
	"springs":             "brake_friction brake_hydraulics parking_brake clutch_kit valve_work suspension_bushes_dampers steering_joints front_pivots rear_height",
	"pressure":            "brake_pressure fluid_suspension fuel_pressure_down injection_bench overdrive power_steering",
	"pretensioner":        "seat_belts airbag_system pull_the_belts structure_weld wiring",
	"suspension_pressure": "fluid_suspension suspension_bushes_dampers",
	"refrigerant":         "engine_out radiator drive_belts heater_matrix refrigerant_out",
	"gas_conversion":      "gas_system stale_fuel fuel_tank fuel_hoses structure_weld engine_out",
	"hot_coolant":         "radiator_cap coolant_change coolant_hoses radiator thermostat head_off gas_test",
	"brake_fluid":         "brake_hydraulics brake_hoses brake_pipes brake_fluid brake_servo clutch_hydraulics",
	"glycol":              "coolant_change coolant_hoses radiator water_pump thermostat heater_matrix core_plugs head_off engine_out cooling_pressure_test",
	"rodents":             "rodent_clean wiring heater_matrix nest_search wiring_walk loom_look",
	"mould":               "rodent_clean water_sealing seat_belts heater_matrix nest_search",
	"lead_paint":          "structure_weld structure_probe underside_clean probe_the_structure",
	"burnt_rubber":        "heat_parts look_where_it_burnt",
	"radium":              "wiring loom_look",
	"carbon_monoxide":     "exhaust first_start gas_test road_test bell_housing_watch",
	"compressed_air":      "leakdown_test leakdown_repeat brake_hydraulics carb_rebuild block_crack_test crankcase_air_test",
	"old_tyres":           "tyres tyres_look wheel_rims",
	"rotating":            "drive_belts cam_belt_or_chain timing_cover_off first_start belts_look belt_cover_look",
	"throttle":            "first_start carb_outside_look stop_control",
	"in_gear":             "bore_oiling_hand_turn first_start compression_test oil_pressure_prime oil_pressure_test clutch_free_it",
	"rust_dust":           "structure_probe structure_weld underside_clean exhaust",
}

// named gathers the hazards of every operation and inspection by its id.
func named(t *testing.T) (hazards, acts map[string][]string, cautions []string) {
	b := Load(builtIn(t)).Book
	require.NotNil(t, b)
	hazards, acts = map[string][]string{}, map[string][]string{}
	for _, o := range b.Operations {
		hazards[o.ID] = o.Hazards
	}
	for _, i := range b.Inspections {
		hazards[i.ID], acts[i.ID] = i.Hazards, i.Acts
	}
	for _, c := range b.Cautions {
		cautions = append(cautions, c.Hazard)
	}
	return hazards, acts, cautions
}

// TestWhatALookDoesNamesItsHazards: whoever is told to turn, crank, run or
// drive is told what that can do.
func TestWhatALookDoesNamesItsHazards(t *testing.T) {
	hazards, acts, _ := named(t)
	for id, does := range acts {
		for _, act := range does {
			require.Contains(t, actsNeed, act, "%s: a new act wants its hazards", id)
			for _, need := range actsNeed[act] {
				found := slices.ContainsFunc(strings.Split(need, "|"), func(h string) bool { return slices.Contains(hazards[id], h) })
				assert.True(t, found, "%s is %s and names none of %s", id, act, need)
			}
		}
	}
}

// TestEveryTouchedHazardIsCautioned goes through the hazards of the trade.
func TestEveryTouchedHazardIsCautioned(t *testing.T) {
	hazards, _, cautions := named(t)
	for hazard, ids := range touches {
		assert.Contains(t, cautions, hazard)
		for _, id := range strings.Fields(ids) {
			require.Contains(t, hazards, id, hazard)
			assert.Contains(t, hazards[id], hazard, id)
		}
	}
}
