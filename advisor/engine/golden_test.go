package engine_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/casefile"
	"longstand/advisor/report"
)

var update = flag.Bool("update", false, "rewrite golden advice")

// TestGoldenAdvice compares the advice on every case of the repository with the
// page that was read and approved. The cars are invented: these are regression
// pages, no evidence that a rule is right.
func TestGoldenAdvice(t *testing.T) {
	e := builtin(t, nil)
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	more, err := filepath.Glob("../../testdata/cases/practice/*.toml")
	require.NoError(t, err)
	require.Len(t, append(files, more...), 13)
	for _, f := range append(files, more...) {
		t.Run(filepath.Base(f), func(t *testing.T) {
			data, err := os.ReadFile(f)
			require.NoError(t, err)
			c, l := casefile.Read(f, data, e.Book())
			require.False(t, l.HasErrors(), f)
			page := report.Text(e.Advise(c))
			for i, line := range strings.Split(page, "\n") {
				assert.LessOrEqual(t, len([]rune(line)), 80, "line %d is wider than a terminal", i+1)
			}
			golden := strings.TrimSuffix(f, ".toml") + ".advice.txt"
			if *update {
				require.NoError(t, os.WriteFile(golden, []byte(page), 0o644))
				return
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err, "run `go test ./advisor/engine -update`")
			assert.Equal(t, string(want), page)
		})
	}
}

// TestEveryOperationThatIsPromised: cases, sheets and house rules name these 56
// operations, so the book keeps them under their ids.
func TestEveryOperationThatIsPromised(t *testing.T) {
	e := builtin(t, nil)
	for _, id := range strings.Fields(`engine_out gearbox_out head_off sump_off timing_cover_off head_gasket valve_work rings_bores
		bearing_shells rear_crank_seal front_crank_seal cam_belt_or_chain core_plugs rocker_gasket engine_oil_filter
		bore_oiling_hand_turn oil_pressure_prime engine_mounts clutch_kit flywheel clutch_hydraulics gearbox_oil_seals
		driveline_joints axle_oil_seals coolant_hoses radiator water_pump thermostat drive_belts coolant_change heater_matrix
		stale_fuel fuel_tank fuel_hoses fuel_pump carb_reseal carb_rebuild ignition_service battery wiring brake_hydraulics
		brake_hoses brake_pipes brake_fluid brake_friction parking_brake tyres wheel_bearings steering_joints
		suspension_bushes_dampers structure_probe structure_weld underside_clean rodent_clean seat_belts exhaust`) {
		found := false
		for i := range e.Book().Operations {
			found = found || e.Book().Operations[i].ID == id
		}
		assert.True(t, found, id)
	}
}
