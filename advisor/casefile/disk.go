package casefile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Disk is what keeping a case needs of a file system. It is a port so that a
// test can fail each operation in turn.
type Disk interface {
	// Read gives a file's bytes, up to one more than MaxBytes, and its mode.
	Read(path string) ([]byte, fs.FileMode, error)
	// Create makes a new file for writing; one that is there is an error.
	Create(path string, mode fs.FileMode) (File, error)
	Rename(from, to string) error
	Remove(path string) error
	// SyncFolder makes the names in a folder durable.
	SyncFolder(path string) error
}

// File is a file that is being written.
type File interface {
	io.Writer
	Sync() error
	Close() error
}

// Save puts new bytes in place of a case so that at any moment the path holds
// the old bytes or the new ones whole: they are written to a file beside it,
// synced, renamed into place, and the folder synced. When it returns without
// error they are durable. The caller holds the case's lock, so a file that an
// interrupted save left beside it is nobody's.
func Save(disk Disk, path string, data []byte, mode fs.FileMode) error {
	folder, name := filepath.Split(path)
	beside := filepath.Join(folder, "."+name+".new")
	if err := disk.Remove(beside); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%s is not saved: %w", path, err)
	}
	if err := write(disk, beside, data, mode); err != nil {
		_ = disk.Remove(beside)
		return fmt.Errorf("%s is not saved: %w", path, err)
	}
	if err := disk.Rename(beside, path); err != nil {
		_ = disk.Remove(beside)
		return fmt.Errorf("%s is not saved: %w", path, err)
	}
	if folder == "" {
		folder = "."
	}
	if err := disk.SyncFolder(folder); err != nil {
		return fmt.Errorf("%s is written, but may not outlast a loss of power: %w", path, err)
	}
	return nil
}

func write(disk Disk, path string, data []byte, mode fs.FileMode) error {
	f, err := disk.Create(path, mode)
	if err != nil {
		return err
	}
	n, err := f.Write(data)
	if err == nil && n < len(data) {
		err = io.ErrShortWrite
	}
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}

// OS is the file system of the machine.
var OS Disk = machine{}

type machine struct{}

// Read reads a file through a limit.
func (machine) Read(path string) ([]byte, fs.FileMode, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, 0, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, 0, err
	}
	if info.IsDir() {
		return nil, 0, &fs.PathError{Op: "read", Path: path, Err: errors.New("is a directory, not a case")}
	}
	data, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	return data, info.Mode().Perm(), err
}

// Create makes a file; its mode is set whatever the umask.
func (machine) Create(path string, mode fs.FileMode) (File, error) {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return nil, err
	}
	if err := f.Chmod(mode); err != nil && runtime.GOOS != "windows" {
		return nil, errors.Join(err, f.Close())
	}
	return f, nil
}

// Rename renames a file over another.
func (machine) Rename(from, to string) error { return os.Rename(from, to) }

// Remove removes a file.
func (machine) Remove(path string) error { return os.Remove(path) }

// SyncFolder syncs a folder; systems that cannot do without.
func (machine) SyncFolder(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
