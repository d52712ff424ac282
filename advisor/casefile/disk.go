package casefile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"runtime"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// Disk is all that keeping a case needs of a file system. It is a port so that
// a test can fail each operation in turn.
type Disk interface {
	// Open opens a file for reading.
	Open(path string) (fs.File, error)
	// Create makes a new file for writing; one that is there is an error.
	Create(path string, mode fs.FileMode) (File, error)
	Rename(from, to string) error
	Remove(path string) error
	// SyncFolder makes the names in a folder durable.
	SyncFolder(path string) error
	// Stat tells which file a path leads to.
	Stat(path string) (fs.FileInfo, error)
	// Lock opens a file, made when it is not there, that nobody else has locked
	// until it is closed.
	Lock(path string) (Locked, error)
}

// File is a file that is being written.
type File interface {
	io.Writer
	Sync() error
	Close() error
}

// Locked is a file held under the system's own lock.
type Locked interface {
	fs.File
	io.WriterAt
	Truncate(size int64) error
}

// OS is the file system of the machine.
var OS Disk = machine{}

type machine struct{}

// Open opens a file.
func (machine) Open(path string) (fs.File, error) { return os.Open(path) }

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

// Stat tells which file a path leads to.
func (machine) Stat(path string) (fs.FileInfo, error) { return os.Stat(path) }

// Lock waits for the file's own lock, which is held for an instant only.
func (machine) Lock(path string) (Locked, error) {
	f, err := lockedfile.Edit(path)
	if err != nil {
		return nil, err // not f, which would be a Locked that is not nil
	}
	return f, nil
}
