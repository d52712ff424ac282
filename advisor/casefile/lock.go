package casefile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"
)

// Hold is a case that this program may write until it is released.
type Hold struct {
	// Left is who held the case before and ended without releasing it, "" for
	// nobody. Its last change may not have come through.
	Left string

	disk       Disk
	path, lock string
	me         holder
}

// Taken is the error of a case that another program is writing.
type Taken struct {
	Path, Lock string
	By         string // process, machine and since when
	Elsewhere  bool   // on another machine, of which nothing can be seen from here
}

// Error says who holds the case, and what to do about it.
func (t *Taken) Error() string {
	if t.Elsewhere {
		return fmt.Sprintf("%s is being written by %s; whether that still runs cannot be seen from here: when it does not, delete %s",
			t.Path, t.By, t.Lock)
	}
	return fmt.Sprintf("%s is being written by %s; wait until that has ended; if that process is another program's by now, delete %s",
		t.Path, t.By, t.Lock)
}

// Lock takes a case for one writer until it is released. The lock is a file
// beside the case that names its holder; the file's own lock is held only while
// the name is read or written, so a holder that was killed is found out, even
// when its process number belongs to another by now, and its lock taken over.
// A case that is taken gives a *Taken error at once.
func Lock(disk Disk, path string, since time.Time) (*Hold, error) {
	host, _ := os.Hostname()
	h := &Hold{disk: disk, path: path, lock: path + ".lock", me: holderNow(host, since)}
	err := h.change(func(f Locked, text string) error {
		there := readHolder(text)
		if there.alive(host) {
			return &Taken{path, h.lock, there.name, there.host != host}
		}
		if h.Left = there.name; h.Left == "" && text != "" {
			h.Left = "a writer that never finished its name"
		}
		err := rewrite(f, h.me.text())
		if err != nil {
			_ = disk.Remove(h.lock) // half a name is nobody's
		}
		return err
	})
	if err != nil {
		var taken *Taken
		if !errors.As(err, &taken) {
			_ = h.Release() // whatever of it came through
		}
		h.me.let()
		return nil, h.cannot("cannot be taken for writing", err,
			"; see that the folder can be written, and delete the lock when nobody writes the case")
	}
	return h, nil
}

// Release lets the case go. When that fails, the next writer finds that nobody
// holds it any more and takes it over.
func (h *Hold) Release() error {
	defer h.me.let()
	err := h.change(func(f Locked, text string) error {
		if text != "" && text != h.me.text() {
			return nil // somebody deleted our lock, and another holds the case by now
		}
		if h.disk.Remove(h.lock) == nil {
			return nil
		}
		return f.Truncate(0) // where an open file cannot be removed, an empty one is free as well
	})
	return h.cannot("is kept, but is not let go", err, "; the next command takes it over")
}

// cannot says what of a lock's work failed, and what to do.
func (h *Hold) cannot(what string, err error, todo string) error {
	var taken *Taken
	if err == nil || errors.As(err, &taken) {
		return err
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err // its path is named already
	}
	return fmt.Errorf("%s %s: its lock %s: %w%s", h.path, what, h.lock, err, todo)
}

// change reads the lock, and lets an action change it, under the file's own
// lock. A file that was removed while waiting for it is not the lock any more:
// then again.
func (h *Hold) change(do func(f Locked, text string) error) error {
	for {
		f, err := h.disk.Lock(h.lock)
		if err != nil {
			return err
		}
		gone, err := h.changed(f, do)
		if closing := f.Close(); err == nil {
			err = closing
		}
		if !gone || err != nil {
			return err
		}
	}
}

func (h *Hold) changed(f Locked, do func(Locked, string) error) (gone bool, err error) {
	mine, err := f.Stat()
	if err != nil {
		return false, err
	}
	there, err := h.disk.Stat(h.lock)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !os.SameFile(mine, there) {
		return true, nil
	}
	if err != nil {
		return false, err
	}
	text, err := io.ReadAll(io.LimitReader(f, longestHolder))
	if err == nil && int64(len(text)) < min(mine.Size(), longestHolder) {
		err = io.ErrUnexpectedEOF // half a name would pass for nobody's
	}
	if err != nil {
		return false, err
	}
	return false, do(f, string(text))
}

// rewrite puts a text in place of what a file holds.
func rewrite(f Locked, text string) error {
	if err := f.Truncate(0); err != nil {
		return err
	}
	n, err := f.WriteAt([]byte(text), 0)
	if err == nil && n < len(text) {
		err = io.ErrShortWrite
	}
	return err
}
