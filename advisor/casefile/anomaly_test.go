package casefile_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longstand/advisor/casefile"
	"longstand/advisor/casefile/illdisk"
)

// failEach lists the failed operations of which no error told. It fails the k-th operation of an action in each way, k from 1 until
// the action has no k-th one, and lets a check look at what is left.
func failEach(t *testing.T, act func(d casefile.Disk, path string) error, check func(path string, err error, where string)) (unsaid []string) {
	failed := 0
	for way := range illdisk.Ways {
		for k := 1; ; k++ {
			path := filepath.Join(t.TempDir(), "case.toml")
			require.NoError(t, os.WriteFile(path, []byte(oldText), 0o640))
			d := &illdisk.Disk{K: k, Way: way}
			err := act(d, path)
			if !d.Hit {
				require.NoError(t, err)
				break
			}
			failed++
			where := fmt.Sprintf("%s, operation %d", way, k)
			if err != nil {
				assert.ErrorContains(t, err, path, where)
			} else if way != illdisk.Short {
				unsaid = append(unsaid, d.First)
			}
			check(path, err, where)
			left, err := os.ReadDir(filepath.Dir(path))
			require.NoError(t, err)
			assert.Len(t, left, 1, "%s: something is left beside the case", where)
		}
	}
	t.Logf("%d failed operations", failed)
	assert.Greater(t, failed, 4*3)
	return unsaid
}

const oldText, newText = "case = 1\n# old\n", "case = 1\n# new and longer\n"

// TestEveryFailingSave: the case is the old one or the new one whole, and a
// save that reports no error has saved. The next one goes through whatever was left.
func TestEveryFailingSave(t *testing.T) {
	save := func(d casefile.Disk, path string) error { return casefile.Save(d, path, []byte(newText), 0o640) }
	unsaid := failEach(t, save, func(path string, err error, where string) {
		got, mode, readErr := casefile.Load(casefile.OS, path)
		require.NoError(t, readErr, where)
		assert.Contains(t, []string{oldText, newText}, string(got), where)
		assert.Equal(t, fs.FileMode(0o640), mode, where)
		if err == nil {
			assert.Equal(t, newText, string(got), where)
		}
		require.NoError(t, save(casefile.OS, path), where)
	})
	assert.Empty(t, unsaid, "what fails is told")
}

// TestEveryFailingLoad: what is read is the whole case, or an error.
func TestEveryFailingLoad(t *testing.T) {
	var got []byte
	failEach(t, func(d casefile.Disk, path string) (err error) {
		got, _, err = casefile.Load(d, path)
		return err
	}, func(_ string, err error, where string) {
		if err == nil {
			assert.Equal(t, oldText, string(got), where)
		}
	})
}

// TestEveryFailingLock takes and releases a case: nobody holds it afterwards,
// and nobody held it when it could not be taken.
func TestEveryFailingLock(t *testing.T) {
	noon := time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)
	failEach(t, func(d casefile.Disk, path string) error {
		h, err := casefile.Lock(d, path, noon)
		if err != nil {
			if way := d.(*illdisk.Disk).Way; way == illdisk.Once || way == illdisk.Short {
				left, _ := os.ReadFile(path + ".lock")
				assert.Empty(t, string(left), "half a name is left behind")
			}
			return err
		}
		var taken *casefile.Taken
		_, second := casefile.Lock(casefile.OS, path, noon)
		assert.ErrorAs(t, second, &taken, "two hold it at once")
		return h.Release()
	}, func(path string, _ error, where string) {
		h, err := casefile.Lock(casefile.OS, path, noon)
		require.NoError(t, err, where)
		require.NoError(t, h.Release(), where)
	})
}

// TestNoFailureTakesAHeldCase: whatever fails, a case that another holds is not taken.
func TestNoFailureTakesAHeldCase(t *testing.T) {
	noon := time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)
	for way := range illdisk.Ways {
		for k, hit := 1, true; hit; k++ {
			path := filepath.Join(t.TempDir(), "case.toml")
			first, err := casefile.Lock(casefile.OS, path, noon)
			require.NoError(t, err)
			d := &illdisk.Disk{K: k, Way: way}
			_, err = casefile.Lock(d, path, noon)
			require.Error(t, err, "%s, operation %d", way, k)
			require.NoError(t, first.Release())
			hit = d.Hit
		}
	}
}
