package casefile

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
	"time"
)

// longestHolder bounds what is read of a lock, in bytes.
const longestHolder = 4096

// holder is who holds a case: a name for people; below it what tells the
// process from a later one of the same number, where the system says; and
// which of the process's own holds it is.
type holder struct {
	name, born, hold string
	pid              int
	host             string
}

// Holds of this process, by their number: a lock that it could not remove is
// told from one that it holds.
var (
	holds atomic.Int64
	held  sync.Map
)

func holderNow(host string, since time.Time) holder {
	h := holder{born: born(os.Getpid()), pid: os.Getpid(), host: host, hold: fmt.Sprint("hold ", holds.Add(1))}
	h.name = fmt.Sprintf("process %d on %s since %s", h.pid, host, since.Format("2006-01-02 15:04"))
	held.Store(h.hold, true)
	return h
}

// let ends a hold.
func (h holder) let() { held.Delete(h.hold) }

// text is a holder as it stands in a lock, a line for each part.
func (h holder) text() string { return h.name + "\n" + h.born + "\n" + h.hold + "\n" }

// readHolder reads a lock. A name that is not whole was never finished: its
// writer does not hold the case.
func readHolder(text string) (h holder) {
	lines := append(strings.Split(text, "\n"), "", "")
	h.name, h.born, h.hold = strings.TrimSpace(lines[0]), strings.TrimSpace(lines[1]), lines[2]
	rest, ok := strings.CutPrefix(h.name, "process ")
	number, rest, on := strings.Cut(rest, " on ")
	host, _, since := strings.Cut(rest, " since ")
	if _, err := fmt.Sscan(number, &h.pid); err != nil || !ok || !on || !since {
		return holder{}
	}
	h.host = host
	return h
}

// alive tells whether a holder may still be at work. Of another machine's
// processes nothing is known, so they count as alive.
func (h holder) alive(host string) bool {
	switch {
	case h.name == "":
		return false
	case h.host != host:
		return true
	}
	if now := born(h.pid); h.born != "" && now != "" && now != h.born {
		return false // its number went to another process
	}
	if h.pid == os.Getpid() {
		_, holding := held.Load(h.hold)
		return holding
	}
	p, err := os.FindProcess(h.pid)
	if err != nil || runtime.GOOS == "windows" {
		return err == nil
	}
	err = p.Signal(syscall.Signal(0))
	return err == nil || os.IsPermission(err)
}

// born tells one process of a number from another: which start of the system,
// and how long after it the process began. It is empty where there is no /proc.
func born(pid int) string {
	boot, err := os.ReadFile("/proc/sys/kernel/random/boot_id")
	if err != nil {
		return ""
	}
	stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return ""
	}
	// The name, in brackets, may hold anything; the start is the 20th behind it.
	fields := strings.Fields(string(stat[strings.LastIndexByte(string(stat), ')')+1:]))
	if len(fields) < 20 {
		return ""
	}
	return "born " + fields[19] + " in " + strings.TrimSpace(string(boot))
}
