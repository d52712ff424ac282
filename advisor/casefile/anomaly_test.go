package casefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fault is how an operation of the disk fails.
type fault int

const (
	once   fault = iota // an error, then all is well
	always              // an error from then on
	short               // half of a write, without an error
	crash               // nothing reaches the disk from then on
	faults
)

var errDisk = errors.New("the disk fails")

// ill is the real disk with its k-th operation failing.
type ill struct {
	Disk
	k     int
	fault fault
	count int
	hit   bool
}

// step counts an operation and says whether it is to fail.
func (d *ill) step() error {
	d.count++
	if d.count == d.k || d.count > d.k && (d.fault == always || d.fault == crash) {
		d.hit = true
		if d.fault != short {
			return errDisk
		}
	}
	return nil
}

func (d *ill) Create(path string, mode fs.FileMode) (File, error) {
	if err := d.step(); err != nil {
		return nil, err
	}
	f, err := d.Disk.Create(path, mode)
	return &illFile{f, d}, err
}

func (d *ill) Rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.Disk.Rename(from, to)
}

func (d *ill) Remove(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.Disk.Remove(path)
}

func (d *ill) SyncFolder(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.Disk.SyncFolder(path)
}

type illFile struct {
	File
	d *ill
}

func (f *illFile) Write(data []byte) (int, error) {
	err := f.d.step()
	if f.d.hit {
		n, _ := f.File.Write(data[:len(data)/2]) // torn, whatever is said of it
		return n, err
	}
	return f.File.Write(data)
}

func (f *illFile) Sync() error {
	if err := f.d.step(); err != nil {
		return err
	}
	return f.File.Sync()
}

func (f *illFile) Close() error {
	err := f.d.step()
	return errors.Join(err, f.File.Close())
}

// TestEveryFailingOperation fails each operation of a save in turn, in each
// way: the case is then the old one or the new one whole, and a save that
// reports no error has saved. The next save goes through whatever was left.
func TestEveryFailingOperation(t *testing.T) {
	loops := 0
	for f := range faults {
		for k := 1; ; k++ {
			path := filepath.Join(t.TempDir(), "case.toml")
			oldText, newText := []byte("case = 1\n# old\n"), []byte("case = 1\n# new and longer\n")
			require.NoError(t, os.WriteFile(path, oldText, 0o640))
			d := &ill{Disk: OS, k: k, fault: f}
			err := Save(d, path, newText, 0o640)
			loops++
			where := fmt.Sprintf("fault %d at operation %d", f, k)
			got, mode, readErr := OS.Read(path)
			require.NoError(t, readErr, where)
			assert.Contains(t, []string{string(oldText), string(newText)}, string(got), where)
			assert.Equal(t, fs.FileMode(0o640), mode, where)
			if err == nil {
				assert.Equal(t, string(newText), string(got), where)
			} else {
				assert.ErrorContains(t, err, path, where)
			}
			require.NoError(t, Save(OS, path, newText, 0o640), where)
			left, _ := os.ReadDir(filepath.Dir(path))
			assert.Len(t, left, 1, "%s: something is left beside the case", where)
			if !d.hit {
				break
			}
		}
	}
	assert.Greater(t, loops, 4*6, "too few operations were failed")
	t.Logf("%d saves with one failing operation", loops)
}
