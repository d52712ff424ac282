package casefile

import (
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var noon = time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)

func TestLockNamesItsHolder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	release, err := Lock(path, noon)
	require.NoError(t, err)
	_, err = Lock(path, noon)
	var taken *Taken
	require.ErrorAs(t, err, &taken)
	assert.Contains(t, err.Error(), "process "+strconv.Itoa(os.Getpid()))
	assert.Contains(t, err.Error(), "since 2025-10-14 12:00")
	assert.Contains(t, err.Error(), path+".lock")
	require.NoError(t, release())
	assert.NoFileExists(t, path+".lock")
	release, err = Lock(path, noon)
	require.NoError(t, err)
	require.NoError(t, release())
}

func TestLockOfTheDeadIsTakenOver(t *testing.T) {
	host, err := os.Hostname()
	require.NoError(t, err)
	const nobody = 1 << 30 // beyond any process number
	for _, c := range []struct {
		name, holder string
		free         bool
	}{
		{"a process that ended", "process " + strconv.Itoa(nobody) + " on " + host + " since 2025-01-01 10:00", true},
		{"an unfinished name", "proc", true},
		{"nobody", "", true},
		{"another machine's", "process 1 on elsewhere-" + host + " since 2025-01-01 10:00", false},
		{"a process that lives", "process " + strconv.Itoa(os.Getppid()) + " on " + host + " since 2025-01-01 10:00", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "case.toml")
			require.NoError(t, os.WriteFile(path+".lock", []byte(c.holder), 0o600))
			release, err := Lock(path, noon)
			if !c.free {
				assert.ErrorContains(t, err, c.holder)
				return
			}
			require.NoError(t, err)
			assert.NoError(t, release())
		})
	}
}

// A process number is used again: a lock left behind by a killed holder must not
// be taken for that of whoever has the number now, be it this very process.
func TestLockOfAReusedNumberIsTakenOver(t *testing.T) {
	host, err := os.Hostname()
	require.NoError(t, err)
	if born(os.Getpid()) == "" {
		t.Skip("this system does not tell when a process began")
	}
	for _, pid := range []int{os.Getpid(), os.Getppid()} {
		name := "process " + strconv.Itoa(pid) + " on " + host + " since 2025-01-01 10:00"
		path := filepath.Join(t.TempDir(), "case.toml")
		require.NoError(t, os.WriteFile(path+".lock", []byte(name+"\n"+born(pid)), 0o600))
		_, err = Lock(path, noon)
		assert.ErrorContains(t, err, "is being written by "+name+"; when", "the holder itself is alive")
		require.NoError(t, os.WriteFile(path+".lock", []byte(name+"\n"+born(pid)+"0"), 0o600))
		release, err := Lock(path, noon)
		require.NoError(t, err)
		assert.NoError(t, release())
	}
}

func TestOnlyOneHolds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	var inside, held atomic.Int32
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for range 50 {
				release, err := Lock(path, noon)
				if err != nil {
					continue
				}
				held.Add(1)
				assert.Equal(t, int32(1), inside.Add(1))
				inside.Add(-1)
				assert.NoError(t, release())
			}
		})
	}
	all.Wait()
	assert.Positive(t, held.Load())
}
