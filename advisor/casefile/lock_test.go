package casefile

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
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
	h, err := Lock(OS, path, noon)
	require.NoError(t, err)
	_, err = Lock(OS, path, noon)
	var taken *Taken
	require.ErrorAs(t, err, &taken)
	assert.Contains(t, err.Error(), "process "+strconv.Itoa(os.Getpid()))
	assert.Contains(t, err.Error(), "since 2025-10-14 12:00")
	assert.Contains(t, err.Error(), path+".lock")
	require.NoError(t, h.Release())
	assert.NoFileExists(t, path+".lock")
	h, err = Lock(OS, path, noon)
	require.NoError(t, err)
	require.NoError(t, h.Release())
}

func TestLockOfTheDeadIsTakenOver(t *testing.T) {
	host, err := os.Hostname()
	require.NoError(t, err)
	const nobody = 1 << 30 // beyond any process number
	for _, c := range []struct {
		name, holder string
		todo         string // "" when it is free
	}{
		{"a process that ended", "process " + strconv.Itoa(nobody) + " on " + host + " since 2025-01-01 10:00", ""},
		{"an unfinished name", "proc", ""},
		{"a name without a time", "process 1 on elsewhere", ""},
		{"no number", "process x on " + host + " since 2025-01-01 10:00", ""},
		{"no text", "\x00\xff\x00", ""},
		{"nobody", "", ""},
		{"another machine's", "process 1 on elsewhere-" + host + " since 2025-01-01 10:00", "cannot be seen from here: when it does not, delete "},
		{"another machine's, with spaces", "process 1 on the bench since 2025-01-01 10:00\nborn 1", "cannot be seen from here: when it does not, delete "},
		{"a process that lives", "process " + strconv.Itoa(os.Getppid()) + " on " + host + " since 2025-01-01 10:00", "wait until that has ended"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "case.toml")
			require.NoError(t, os.WriteFile(path+".lock", []byte(c.holder), 0o600))
			h, err := Lock(OS, path, noon)
			if c.todo != "" {
				name, _, _ := strings.Cut(c.holder, "\n")
				assert.ErrorContains(t, err, "is being written by "+name+"; ")
				assert.ErrorContains(t, err, c.todo)
				assert.ErrorContains(t, err, path+".lock")
				return
			}
			require.NoError(t, err)
			assert.NoError(t, h.Release())
		})
	}
}

// A process number is used again: a lock left behind by a killed holder must not
// be taken for that of whoever has the number now, be it this very process.
func TestLockOfAReusedNumberIsTakenOver(t *testing.T) {
	host, err := os.Hostname()
	require.NoError(t, err)
	if born(os.Getppid()) == "" {
		t.Skip("this system does not tell when a process began")
	}
	pid := os.Getppid()
	name := "process " + strconv.Itoa(pid) + " on " + host + " since 2025-01-01 10:00"
	path := filepath.Join(t.TempDir(), "case.toml")
	require.NoError(t, os.WriteFile(path+".lock", []byte(name+"\n"+born(pid)+"\nhold 1\n"), 0o600))
	_, err = Lock(OS, path, noon)
	assert.ErrorContains(t, err, "is being written by "+name+"; wait", "the holder itself is alive")
	require.NoError(t, os.WriteFile(path+".lock", []byte(name+"\n"+born(pid)+"0\nhold 1\n"), 0o600))
	h, err := Lock(OS, path, noon)
	require.NoError(t, err)
	assert.Equal(t, name, h.Left)
	assert.NoError(t, h.Release())
	mine := holderNow(host, noon)
	require.NoError(t, os.WriteFile(path+".lock", []byte(mine.text()), 0o600))
	_, err = Lock(OS, path, noon)
	require.Error(t, err, "this process holds it")
	mine.let()
	h, err = Lock(OS, path, noon)
	require.NoError(t, err, "this process held it once, and could not remove its lock")
	assert.NoError(t, h.Release())
}

// TestLockThatCannotBeRead says which file is in the way, why, and what to do.
func TestLockThatCannotBeRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	require.NoError(t, os.Mkdir(path+".lock", 0o700))
	_, err := Lock(OS, path, noon)
	assert.EqualError(t, err, path+" cannot be taken for writing: its lock "+path+".lock: is a directory"+
		"; see that the folder can be written, and delete the lock when nobody writes the case")
	_, err = Lock(OS, filepath.Join(path, "nowhere", "case.toml"), noon)
	assert.ErrorContains(t, err, "no such file or directory")
}

// TestDeletedLockIsLeftToItsNewHolder: a writer whose lock was deleted does not
// take away that of the next one.
func TestDeletedLockIsLeftToItsNewHolder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	first, err := Lock(OS, path, noon)
	require.NoError(t, err)
	require.NoError(t, os.Remove(path+".lock"))
	second, err := Lock(OS, path, noon)
	require.NoError(t, err)
	require.NoError(t, first.Release())
	assert.FileExists(t, path+".lock")
	require.NoError(t, second.Release())
	assert.NoFileExists(t, path+".lock")
}

func TestOnlyOneHolds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	var inside, held atomic.Int32
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for range 50 {
				h, err := Lock(OS, path, noon)
				if err != nil {
					continue
				}
				held.Add(1)
				assert.Equal(t, int32(1), inside.Add(1))
				inside.Add(-1)
				assert.NoError(t, h.Release())
			}
		})
	}
	all.Wait()
	assert.Positive(t, held.Load())
}
