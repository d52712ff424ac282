package tomltext

import (
	"fmt"
	"io"

	"longstand/advisor/diag"
)

// ReadLimited reads a file of at most limit bytes. A larger one is refused
// with "file-too-large" and no data, after limit+1 bytes; the error is the
// reader's own.
func ReadLimited(file string, r io.Reader, limit int64) ([]byte, diag.List, error) {
	data, err := io.ReadAll(io.LimitReader(r, limit+1))
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", file, err)
	}
	var list diag.List
	if int64(len(data)) > limit {
		list.Errorf(diag.Span{File: file}, "file-too-large", "the file is larger than %d KB", limit>>10)
		return nil, list, nil
	}
	return data, nil, nil
}
