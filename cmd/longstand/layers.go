package main

import (
	"os"
	"path/filepath"
	"slices"
)

// houseVariable names the directories of house rules, as a list of paths. Set
// and empty it says that there are none.
const houseVariable = "LONGSTAND_HOUSE"

// layers are the directories of house rules that a command reads. The nearest
// place that speaks is the only one heard: the command line, then the variable,
// then the settings of whoever runs the program, which lie under the same name
// on every system. A directory named on the command line must be there; of the
// others only those that are there count, since they are named once for all cars.
func (d *door) layers() []string {
	if len(d.house) > 0 {
		return once(d.house)
	}
	if list, set := os.LookupEnv(houseVariable); set {
		return present(filepath.SplitList(list))
	}
	if home := os.Getenv("XDG_CONFIG_HOME"); filepath.IsAbs(home) {
		return present([]string{filepath.Join(home, "longstand")})
	}
	if home, err := os.UserHomeDir(); err == nil && filepath.IsAbs(home) {
		return present([]string{filepath.Join(home, ".config", "longstand")})
	}
	return nil
}

// present keeps the directories that are there.
func present(dirs []string) []string {
	return slices.DeleteFunc(once(dirs), func(dir string) bool {
		info, err := os.Stat(dir)
		return err != nil || !info.IsDir()
	})
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
