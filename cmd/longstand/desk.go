package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"longstand/advisor"
	"longstand/advisor/casefile"
	"longstand/advisor/engine"
)

// desk is one case held by this program while it is written.
type desk struct {
	d     *door
	e     *engine.Engine
	path  string
	data  []byte
	mode  fs.FileMode
	isNew bool
	c     *advisor.Case
	held  *casefile.Hold
}

// sit takes a case for writing: locked, read and without fault. A case that is
// not there yet is begun when a day is given for it.
func (d *door) sit(path, newOn string) (*desk, error) {
	e, err := d.engine()
	if err != nil {
		return nil, err
	}
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // the file is replaced, not the link to it
	}
	k := &desk{d: d, e: e, path: path}
	if _, _, err = casefile.Load(d.files(), path); err != nil && (newOn == "" || !errors.Is(err, fs.ErrNotExist)) {
		return nil, failure(plain(err)) // where there is no case, no lock is put either
	}
	if k.held, err = casefile.Lock(d.files(), path, time.Now()); err != nil {
		return nil, failure(err)
	}
	if err = k.begin(newOn); err != nil {
		return nil, k.leave(err)
	}
	return k, nil
}

// begin reads the case again, now that nobody else writes it, or starts it.
func (k *desk) begin(newOn string) error {
	if err := k.inherit(); err != nil {
		return err
	}
	data, mode, err := casefile.Load(k.d.files(), k.path)
	if err == nil {
		k.mode = mode
		return k.read(data)
	}
	if newOn == "" || !errors.Is(err, fs.ErrNotExist) {
		return failure(plain(err))
	}
	if _, err := time.Parse(time.DateOnly, newOn); err != nil {
		return usage("--date: %q is no date; write it as 2025-10-14", newOn)
	}
	name := filepath.Base(k.path)
	k.isNew, k.mode = true, 0o644
	_, err = k.keep(casefile.New(strings.TrimSuffix(name, filepath.Ext(name)), newOn))
	return err
}

// inherit clears away what a writer that was interrupted left, and says so.
func (k *desk) inherit() error {
	if k.held.Left != "" {
		fmt.Fprintf(k.d.errs, "%s was left by %s, which has ended; its lock is taken over\n", k.path, k.held.Left)
	}
	swept, err := casefile.Sweep(k.d.files(), k.path)
	if err != nil {
		return failure(err)
	}
	if swept {
		fmt.Fprintf(k.d.errs, "a save of %s was interrupted; what it left is removed, and the case is as it was kept before\n", k.path)
	}
	return nil
}

// read takes bytes as the case, or tells their faults.
func (k *desk) read(data []byte) error {
	c, faults := casefile.Read(k.path, data, k.e.Book())
	if faults.HasErrors() {
		k.d.sources[k.path] = data
		return k.d.tell(faults)
	}
	k.data, k.c = data, c
	return nil
}

// keep makes changed bytes durable and gives the case as it then reads. Bytes
// that do not read are never written.
func (k *desk) keep(data []byte) (*advisor.Case, error) {
	before, was := k.data, k.c
	if err := k.read(data); err != nil {
		return nil, err
	}
	if err := casefile.Save(k.d.files(), k.path, data, k.mode); err != nil {
		k.data, k.c = before, was
		return nil, failure(err)
	}
	return k.c, nil
}

// freeze adds the forecast to the case's bytes, if it has none.
func (k *desk) freeze(data []byte) ([]byte, error) {
	if k.c.Forecast != nil {
		return data, nil
	}
	forecast := map[string]float64{}
	for _, s := range k.e.Brief(k.c).Suspects {
		forecast[s.ID] = s.Chance
	}
	return casefile.Freeze(data, forecast, k.e.Book())
}

// leave gives the case free.
func (k *desk) leave(err error) error {
	if released := k.held.Release(); err == nil && released != nil {
		return failure(released)
	}
	return err
}
