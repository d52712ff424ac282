package book

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// builtIn reads the built-in book's files.
func builtIn(t testing.TB) []File {
	paths, err := filepath.Glob("../../rules/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	var files []File
	for _, p := range paths {
		data, err := os.ReadFile(p)
		require.NoError(t, err)
		files = append(files, File{Name: "rules/" + filepath.Base(p), Data: data})
	}
	return files
}

func TestBuiltInBook(t *testing.T) {
	r := Load(builtIn(t))
	var b bytes.Buffer
	require.NoError(t, r.Diagnostics.WriteText(&b, nil))
	require.False(t, r.Diagnostics.HasErrors(), b.String())
}

func BenchmarkLoad(b *testing.B) {
	files := builtIn(b)
	b.ReportAllocs()
	for b.Loop() {
		Load(files)
	}
}

func TestBuiltInBookIsPinned(t *testing.T) {
	r := Check(builtIn(t))
	var b bytes.Buffer
	require.NoError(t, r.Diagnostics.WriteText(&b, nil))
	t.Logf("%+v\n%s", r.Score, b.String())
	require.False(t, r.Diagnostics.HasErrors(), b.String())
	require.Zero(t, r.Score.Bad)
}

func BenchmarkCheck(b *testing.B) {
	files := builtIn(b)
	for b.Loop() {
		Check(files)
	}
}
