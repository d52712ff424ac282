package casefile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
)

// Load gives a file's bytes, up to one more than MaxBytes, and its mode. Bytes
// that end before the file does are an error: half a case, changed and saved,
// would be half a case for good.
func Load(disk Disk, path string) (data []byte, mode fs.FileMode, err error) {
	f, err := disk.Open(path)
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
	data, err = io.ReadAll(io.LimitReader(f, MaxBytes+1))
	if err == nil && int64(len(data)) < min(info.Size(), MaxBytes) {
		err = &fs.PathError{Op: "read", Path: path, Err: fmt.Errorf("only %d of its %d bytes could be read", len(data), info.Size())}
	}
	return data, info.Mode().Perm(), err
}

// Save puts new bytes in place of a case so that at any moment the path holds
// the old bytes or the new ones whole: they are written to a file beside it,
// synced, renamed into place, and the folder synced. When it returns without
// error they are durable. The caller holds the case's lock, so a file that an
// interrupted save left beside it is nobody's.
func Save(disk Disk, path string, data []byte, mode fs.FileMode) error {
	if _, err := Sweep(disk, path); err != nil {
		return err
	}
	beside := unfinished(path)
	if err := write(disk, beside, data, mode); err != nil {
		_ = disk.Remove(beside)
		return fmt.Errorf("%s is not saved: %w", path, err)
	}
	if err := disk.Rename(beside, path); err != nil {
		_ = disk.Remove(beside)
		return fmt.Errorf("%s is not saved: %w", path, err)
	}
	if err := disk.SyncFolder(filepath.Dir(path)); err != nil {
		return fmt.Errorf("%s is written, but may not outlast a loss of power: %w", path, err)
	}
	return nil
}

// Sweep removes what a save that was interrupted left beside a case, and tells
// whether there was anything. The caller holds the case's lock.
func Sweep(disk Disk, path string) (swept bool, err error) {
	switch err := disk.Remove(unfinished(path)); {
	case err == nil:
		return true, nil
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	default:
		return false, fmt.Errorf("%s is not saved: what an interrupted save left beside it is in the way: %w", path, err)
	}
}

// unfinished is the file that holds the new bytes of a case until they are whole.
func unfinished(path string) string {
	folder, name := filepath.Split(path)
	return filepath.Join(folder, "."+name+".new")
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
