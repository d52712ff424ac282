package book

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the wanted diagnostics anew")

// sharp are the bad texts that are about specimens; only they are held to the
// classes of the built-in book.
var sharp = []string{"proofs.toml", "specimens.toml"}

// lines are the diagnostics of one text beside the small book, help and
// related places included.
func lines(t *testing.T, path string) string {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	files := []File{base(t), {Name: filepath.Base(path), Data: data}}
	var b bytes.Buffer
	held := filepath.Base(filepath.Dir(path)) == "ok" || slices.Contains(sharp, filepath.Base(path))
	require.NoError(t, check(files, held).Diagnostics.WriteText(&b, nil))
	return b.String()
}

func TestOkIsSilent(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/ok/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		assert.Empty(t, lines(t, path), path)
	}
}

func TestErrIsPlaced(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/err/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		want := strings.TrimSuffix(path, ".toml") + ".want"
		got := lines(t, path)
		if *update {
			require.NoError(t, os.WriteFile(want, []byte(got), 0o644))
		}
		text, err := os.ReadFile(want)
		require.NoError(t, err)
		assert.Equal(t, string(text), got, path)
		assert.NotEmpty(t, got)
	}
}

// TestEverySpanIsInItsFile holds for every diagnostic of every bad text.
func TestEverySpanIsInItsFile(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/err/*.toml")
	require.NoError(t, err)
	for _, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		small := base(t)
		sizes := map[string]int{small.Name: len(small.Data), "x.toml": len(data)}
		for _, d := range Check([]File{small, {Name: "x.toml", Data: data}}).Diagnostics {
			require.Contains(t, sizes, d.At.File, "%v", d)
			assert.True(t, 0 <= d.At.Start && d.At.Start <= d.At.End && d.At.End <= sizes[d.At.File], "%v", d)
			assert.Positive(t, d.At.Line, "%v", d)
		}
	}
}

// TestOrderOfFilesChangesNothing shuffles the built-in book's files.
func TestOrderOfFilesChangesNothing(t *testing.T) {
	files := builtIn(t)
	want := Load(files)
	random := rand.New(rand.NewPCG(1, 2))
	for range 3 {
		random.Shuffle(len(files), func(i, j int) { files[i], files[j] = files[j], files[i] })
		got := Load(files)
		require.Equal(t, want.Silences(), got.Silences())
		require.Equal(t, want.Diagnostics, got.Diagnostics)
		require.Equal(t, want.Book, got.Book)
	}
}

// TestOrderOfBadFilesChangesNothing: every fault of all bad texts together, in
// whatever order they are handed in.
func TestOrderOfBadFilesChangesNothing(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/check/err/*.toml")
	require.NoError(t, err)
	files := []File{base(t)}
	for _, path := range paths {
		if data, err := os.ReadFile(path); assert.NoError(t, err) && filepath.Base(path) != "syntax.toml" {
			files = append(files, File{Name: filepath.Base(path), Data: data})
		}
	}
	want := Check(files)
	require.Greater(t, len(want.Diagnostics), 100)
	random := rand.New(rand.NewPCG(5, 6))
	for range 5 {
		random.Shuffle(len(files), func(i, j int) { files[i], files[j] = files[j], files[i] })
		require.Equal(t, want.Diagnostics, Check(files).Diagnostics)
	}
}

func FuzzLoad(f *testing.F) {
	small, err := os.ReadFile("../../testdata/check/base.toml")
	require.NoError(f, err)
	f.Add(small)
	for _, c := range Codes() {
		f.Add([]byte(c.Wrong))
		f.Add([]byte(c.Right))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, layer := range []string{"", "house"} {
			r := Check([]File{{Name: "a.toml", Data: small}, {Name: "b.toml", Data: data, Layer: layer}})
			require.NotNil(t, r.Book)
			for _, d := range r.Diagnostics {
				holdsToken(t, d, map[string][]byte{"a.toml": small, "b.toml": data}[d.At.File])
			}
		}
	})
}
