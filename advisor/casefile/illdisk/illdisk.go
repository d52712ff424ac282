// Package illdisk is a disk that fails on purpose, for tests: the k-th of all
// operations fails, in one of four ways.
package illdisk

import (
	"errors"
	"io"
	"io/fs"

	"longstand/advisor/casefile"
)

// Way is how an operation fails.
type Way int

// The ways: an error, then all is well; an error from then on; half of what
// was to be read or written, without an error; and nothing reaches the disk
// from then on, not even the release of a lock.
const (
	Once Way = iota
	Always
	Short
	Crash
	Ways
)

// String names a way.
func (w Way) String() string { return [...]string{"once", "always", "short", "crash"}[w] }

// ErrDisk is the error of an operation that fails.
var ErrDisk = errors.New("the disk fails")

// Disk is the machine's disk with its K-th operation failing, counted from 1.
type Disk struct {
	K       int
	Way     Way
	Count   int               // operations so far
	Hit     bool              // one has failed
	First   string            // the operation that failed first
	Renamed func(path string) // called after each renaming that went through
}

// step counts an operation. It gives an error when it is to fail, or cuts it short.
func (d *Disk) step(op, path string) (cut bool, err error) {
	d.Count++
	lasting := d.Way == Always || d.Way == Crash
	if d.Count != d.K && !(lasting && d.Hit) {
		return false, nil
	}
	if !d.Hit {
		d.Hit, d.First = true, op
	}
	if d.Way == Short {
		return true, nil
	}
	return true, &fs.PathError{Op: op, Path: path, Err: ErrDisk}
}

// Open opens a file whose operations are counted too.
func (d *Disk) Open(path string) (fs.File, error) {
	if _, err := d.step("open", path); err != nil {
		return nil, err
	}
	f, err := casefile.OS.Open(path)
	if err != nil {
		return nil, err
	}
	return &reading{File: f, d: d, path: path}, nil
}

// Create makes a file whose operations are counted too.
func (d *Disk) Create(path string, mode fs.FileMode) (casefile.File, error) {
	if _, err := d.step("create", path); err != nil {
		return nil, err
	}
	f, err := casefile.OS.Create(path, mode)
	if err != nil {
		return nil, err
	}
	return &writing{f, d, path}, nil
}

// Rename renames a file.
func (d *Disk) Rename(from, to string) error {
	if _, err := d.step("rename", to); err != nil {
		return err
	}
	err := casefile.OS.Rename(from, to)
	if err == nil && d.Renamed != nil {
		d.Renamed(to)
	}
	return err
}

// Remove removes a file.
func (d *Disk) Remove(path string) error {
	if _, err := d.step("remove", path); err != nil {
		return err
	}
	return casefile.OS.Remove(path)
}

// SyncFolder syncs a folder.
func (d *Disk) SyncFolder(path string) error {
	_, err := d.step("sync", path)
	return err // a test's folder need not outlast a loss of power
}

// Stat tells which file a path leads to.
func (d *Disk) Stat(path string) (fs.FileInfo, error) {
	if _, err := d.step("stat", path); err != nil {
		return nil, err
	}
	return casefile.OS.Stat(path)
}

// Lock locks a file whose operations are counted too. Closing it always frees
// the system's lock, as the end of a process does.
func (d *Disk) Lock(path string) (casefile.Locked, error) {
	if _, err := d.step("lock", path); err != nil {
		return nil, err
	}
	f, err := casefile.OS.Lock(path)
	if err != nil {
		return nil, err
	}
	return &locked{f, reading{File: f, d: d, path: path}}, nil
}

// reading is a file being read; however often it is read, that is one operation.
type reading struct {
	fs.File
	d    *Disk
	path string
	left int64 // bytes until the end that it pretends, -1 for the true one
	read bool
}

func (f *reading) Stat() (fs.FileInfo, error) {
	if _, err := f.d.step("stat", f.path); err != nil {
		return nil, err
	}
	return f.File.Stat()
}

func (f *reading) Read(data []byte) (int, error) {
	if !f.read {
		f.read, f.left = true, -1
		cut, err := f.d.step("read", f.path)
		if err != nil {
			return 0, err
		}
		if info, err := f.File.Stat(); cut && err == nil {
			f.left = info.Size() / 2
		}
	}
	if f.left < 0 {
		return f.File.Read(data)
	}
	if f.left == 0 {
		return 0, io.EOF
	}
	n, err := f.File.Read(data[:min(int64(len(data)), f.left)])
	f.left -= int64(n)
	return n, err
}

func (f *reading) Close() error {
	_, err := f.d.step("close", f.path)
	return errors.Join(err, f.File.Close())
}

type locked struct {
	file casefile.Locked
	reading
}

func (f *locked) WriteAt(data []byte, at int64) (int, error) {
	cut, err := f.d.step("write", f.path)
	if cut && f.d.Count == f.d.K {
		n, _ := f.file.WriteAt(data[:len(data)/2], at) // torn, whatever is said of it
		return n, err
	}
	if err != nil {
		return 0, err
	}
	return f.file.WriteAt(data, at)
}

func (f *locked) Truncate(size int64) error {
	if _, err := f.d.step("truncate", f.path); err != nil {
		return err
	}
	return f.file.Truncate(size)
}

type writing struct {
	casefile.File
	d    *Disk
	path string
}

func (f *writing) Write(data []byte) (int, error) {
	cut, err := f.d.step("write", f.path)
	if cut && f.d.Count == f.d.K {
		n, _ := f.File.Write(data[:len(data)/2]) // torn, whatever is said of it
		return n, err
	}
	if err != nil {
		return 0, err
	}
	return f.File.Write(data)
}

func (f *writing) Sync() error {
	_, err := f.d.step("sync", f.path)
	return err
}

func (f *writing) Close() error {
	_, err := f.d.step("close", f.path)
	return errors.Join(err, f.File.Close())
}
