package casefile

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"syscall"
	"time"
)

// holder is who holds a case: a name for people, and below it what tells the
// process from a later one of the same number, where the system says.
type holder struct{ name, born string }

func holderNow(host string, since time.Time) holder {
	name := fmt.Sprintf("process %d on %s since %s", os.Getpid(), host, since.Format("2006-01-02 15:04"))
	return holder{name, born(os.Getpid())}
}

func readHolder(text string) holder {
	name, mark, _ := strings.Cut(text, "\n")
	return holder{strings.TrimSpace(name), strings.TrimSpace(mark)}
}

func (h holder) text() string { return strings.TrimSpace(h.name + "\n" + h.born) }

// alive tells whether a holder may still be at work. Of another machine's
// processes nothing is known, so they count as alive.
func (h holder) alive(host string) bool {
	var pid int
	var on string
	if _, err := fmt.Sscanf(h.name, "process %d on %s since", &pid, &on); err != nil {
		return false // never finished writing its name
	}
	if on != host {
		return true
	}
	if now := born(pid); h.born != "" && now != "" && now != h.born {
		return false // its number went to another process
	}
	if pid == os.Getpid() {
		return true
	}
	p, err := os.FindProcess(pid)
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
