package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"longstand/advisor/diag"
	"longstand/advisor/tomltext"
)

// houseVariable names the directories of house rules, as a list of paths. Set
// and empty it says that there are none.
const houseVariable = "LONGSTAND_HOUSE"

// besideName is the file that lies beside cases and names their layers.
const besideName = "longstand.toml"

// layers are the directories of house rules that a command reads. The nearest
// place that speaks is the only one heard: the command line, then the variable,
// then longstand.toml beside the case, then the settings of whoever runs the
// program, which lie under the same name on every system. A directory named on
// the command line or beside the case must be there; of the others only those
// that are there count, since they are named once for all cars.
func (d *door) layers() ([]string, error) {
	if len(d.house) > 0 {
		return once(d.house), nil
	}
	if list, set := os.LookupEnv(houseVariable); set {
		return present(filepath.SplitList(list)), nil
	}
	if dirs, there, err := d.besideLayers(); there || err != nil {
		return dirs, err
	}
	if home := os.Getenv("XDG_CONFIG_HOME"); filepath.IsAbs(home) {
		return present([]string{filepath.Join(home, "longstand")}), nil
	}
	if home, err := os.UserHomeDir(); err == nil && filepath.IsAbs(home) {
		return present([]string{filepath.Join(home, ".config", "longstand")}), nil
	}
	return nil, nil
}

// cases notes the folder whose longstand.toml counts: that of the case which
// the command's arguments name, by the place of CASE in its usage line. A
// command without a case stands in the folder in which it is run.
func (d *door) cases(use string, args []string) {
	d.folder = "."
	for i, word := range strings.Fields(use)[1:] {
		if strings.HasPrefix(word, "CASE") && i < len(args) {
			d.folder = filepath.Dir(args[i])
		}
	}
}

// besideLayers reads longstand.toml of the cases' folder, and tells whether
// there is one. Its one key is layers, a list of directories as seen from it.
func (d *door) besideLayers() (dirs []string, there bool, err error) {
	file := filepath.ToSlash(filepath.Join(d.folder, besideName))
	f, err := os.Open(file)
	if err != nil {
		if os.IsNotExist(err) || !isDir(d.folder) {
			return nil, false, nil // a folder that is not there is the case's fault, told later
		}
		return nil, false, failure(plain(err))
	}
	defer f.Close()
	data, faults, err := tomltext.ReadLimited(file, f, maxBeside)
	if err != nil {
		return nil, true, failure(plain(err))
	}
	d.sources[file] = data
	if !faults.HasErrors() {
		dirs, faults = besideDirs(file, data, d.folder)
	}
	if faults.HasErrors() {
		return nil, true, d.tell(faults)
	}
	return once(dirs), true, nil
}

// maxBeside is the size in bytes above which a longstand.toml is refused.
const maxBeside = 64 << 10

// besideDirs reads the text of a longstand.toml. Every fault is placed.
func besideDirs(file string, data []byte, folder string) (dirs []string, faults diag.List) {
	root, faults := tomltext.Parse(file, data)
	for i := range root.Fields {
		if f := &root.Fields[i]; f.Key != "layers" {
			faults.Errorf(f.KeySpan, "unknown-key", "%s has no key %q", besideName, f.Key).Help = `its only key is layers, as: layers = ["../house"]`
		}
	}
	list := root.Get("layers")
	switch {
	case faults.HasErrors():
		return nil, faults
	case list == nil:
		faults.Errorf(root.Span, "missing-key", "%s has no layers", besideName).Help = `name the directories of house rules, as: layers = ["../house"], or layers = [] for none`
		return nil, faults
	case list.Kind != tomltext.Array:
		faults.Errorf(list.Span, "wrong-kind", `layers is a list of directories, as ["../house"], and this is %s`, list.Kind)
		return nil, faults
	}
	for _, n := range list.Items {
		dir := filepath.FromSlash(n.Str)
		if n.Kind == tomltext.String && !filepath.IsAbs(dir) {
			dir = filepath.Join(folder, dir)
		}
		switch {
		case n.Kind != tomltext.String || n.Str == "":
			faults.Errorf(n.Span, "wrong-kind", "a layer is a directory in quotes")
		case !isDir(dir):
			faults.Errorf(n.Span, "no-layer", "there is no directory %q", n.Str).Help = "a layer is named as seen from the folder in which " + besideName + " lies"
		}
		dirs = append(dirs, dir)
	}
	return dirs, faults
}

// isDir tells whether a directory is there.
func isDir(dir string) bool {
	info, err := os.Stat(dir)
	return err == nil && info.IsDir()
}

// present keeps the directories that are there.
func present(dirs []string) []string {
	return slices.DeleteFunc(once(dirs), func(dir string) bool { return !isDir(dir) })
}

// once drops a directory that is named again: its rules would clash with themselves.
func once(dirs []string) []string {
	var out []string
	for _, dir := range dirs {
		if dir = filepath.Clean(dir); !slices.Contains(out, dir) {
			out = append(out, dir)
		}
	}
	return out
}
