package casefile

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// Taken is the error of a case that another program is writing.
type Taken struct {
	Path, Lock string
	By         string // process, machine and since when
}

// Error says who holds the case, and what to do when nobody does any more.
func (t *Taken) Error() string {
	return fmt.Sprintf("%s is being written by %s; when that is no longer so, delete %s", t.Path, t.By, t.Lock)
}

// Lock takes a case for one writer until release is called. The lock is a file
// beside the case that names its holder; the file's own lock is held only while
// the name is read or written, so a holder that was killed is found out, even
// when its process number belongs to another by now, and its lock taken over. A case that is taken gives a *Taken error at once.
func Lock(path string, since time.Time) (release func() error, err error) {
	lock := path + ".lock"
	host, _ := os.Hostname()
	me := holderNow(host, since)
	err = hold(lock, func(text string) (string, error) {
		if there := readHolder(text); text != "" && there.alive(host) {
			return "", &Taken{path, lock, there.name}
		}
		return me.text(), nil
	})
	if err != nil {
		return nil, err
	}
	return func() error {
		return hold(lock, func(text string) (string, error) {
			if text != me.text() {
				return text, nil
			}
			_ = os.Remove(lock) // where that cannot be, an empty one is free as well
			return "", nil
		})
	}, nil
}

// hold changes the holder's name under the file's own lock. A file that was
// removed while waiting for it is not the lock any more: then again.
func hold(lock string, change func(holder string) (string, error)) error {
	for {
		f, err := lockedfile.Edit(lock)
		if err != nil {
			return err
		}
		again, err := held(f, lock, change)
		if closing := f.Close(); err == nil {
			err = closing
		}
		if !again {
			return err
		}
	}
}

func held(f *lockedfile.File, lock string, change func(string) (string, error)) (again bool, err error) {
	mine, err := f.Stat()
	if err != nil {
		return false, err
	}
	if there, err := os.Stat(lock); err != nil || !os.SameFile(mine, there) {
		return true, nil
	}
	data, err := io.ReadAll(io.LimitReader(f, 4096))
	if err != nil {
		return false, err
	}
	holder, err := change(strings.TrimSpace(string(data)))
	if err != nil {
		return false, err
	}
	if err := f.Truncate(0); err != nil {
		return false, err
	}
	_, err = f.WriteAt([]byte(holder), 0)
	return false, err
}
