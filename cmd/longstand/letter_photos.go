package main

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"longstand/advisor"
	"longstand/advisor/diag"
	"longstand/advisor/report"
)

// mostPhotos is the size in bytes of all photographs of a letter together.
const mostPhotos = 24 << 20

// photographs reads the photographs that the answers of a case name, beside the
// case's file. Each fault is told at the place that names the photograph.
func (d *door) photographs(c *advisor.Case) (map[string][]byte, error) {
	out := map[string][]byte{}
	var faults diag.List
	all := 0
	for i := range c.Answers {
		for _, p := range c.Answers[i].Photos {
			if _, read := out[p.File]; read {
				continue
			}
			data, fault, help := readPhoto(filepath.Join(filepath.Dir(c.File), filepath.FromSlash(p.File)))
			if all += len(data); fault == "" && all > mostPhotos {
				fault, help = "makes the letter too large: its photographs have at most 24 MB together", "make them smaller"
			}
			if fault != "" {
				faults.Errorf(p.At, "photo", "the photograph %s %s", p.File, fault).Help = help
				continue
			}
			out[p.File] = data
		}
	}
	if faults.HasErrors() {
		return nil, d.tell(faults)
	}
	return out, nil
}

// readPhoto reads one photograph through its limit; fault says what is wrong with it.
func readPhoto(path string) (data []byte, fault, help string) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, "is not there", "its name is taken from the folder of the case"
	case err != nil || !info.Mode().IsRegular():
		return nil, "is no file that can be read", ""
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, "cannot be read", ""
	}
	defer f.Close()
	data, err = io.ReadAll(io.LimitReader(f, report.MaxPhoto+1))
	switch {
	case err != nil:
		return nil, "cannot be read", ""
	case len(data) > report.MaxPhoto:
		return nil, "has more than 4 MB", "make it smaller"
	case report.PhotoKind(data) == "":
		return nil, "is neither JPEG, PNG nor WebP", ""
	}
	return data, "", ""
}
