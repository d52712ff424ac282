//go:build linux

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
	"unsafe"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pair opens a pseudo-terminal: our end, and the end that a program sees.
func pair(t *testing.T) (ours, theirs *os.File) {
	ours, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no pseudo-terminals here: ", err)
	}
	var number, unlock uint32
	control(t, ours, syscall.TIOCSPTLCK, unsafe.Pointer(&unlock))
	control(t, ours, syscall.TIOCGPTN, unsafe.Pointer(&number))
	theirs, err = os.OpenFile(fmt.Sprint("/dev/pts/", number), os.O_RDWR|syscall.O_NOCTTY, 0)
	require.NoError(t, err)
	size := [4]uint16{24, 80}
	control(t, theirs, syscall.TIOCSWINSZ, unsafe.Pointer(&size))
	return ours, theirs
}

func control(t *testing.T, f *os.File, what uintptr, arg unsafe.Pointer) {
	_, _, errno := syscall.Syscall(syscall.SYS_IOCTL, f.Fd(), what, uintptr(arg))
	require.Zero(t, errno)
}

// session is an intake at a pseudo-terminal.
type session struct {
	t    *testing.T
	ours *os.File
	seen string
	at   int // behind what was awaited last
}

// await reads until a text has come behind the one awaited last.
func (s *session) await(text string) string {
	buf := make([]byte, 4096)
	for {
		if i := strings.Index(s.seen[s.at:], text); i >= 0 {
			from := s.at
			s.at += i + len(text)
			return s.seen[from:s.at]
		}
		n, err := s.ours.Read(buf)
		s.seen += string(buf[:n])
		require.NoError(s.t, err, "waiting for %q behind:\n%s", text, s.seen[s.at:])
	}
}

func (s *session) send(keys string) {
	_, err := s.ours.WriteString(keys)
	require.NoError(s.t, err)
}

func start(t *testing.T, path string, env ...string) (*session, *exec.Cmd) {
	return startCommand(t, []string{"intake", path, "--date", "2025-10-14"}, env...)
}

func startCommand(t *testing.T, args []string, env ...string) (*session, *exec.Cmd) {
	ours, theirs := pair(t)
	self, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(self)
	cmd.Args = append([]string{"longstand"}, args...)
	cmd.Env = append(append(os.Environ(), "TERM=xterm", "ACCESSIBLE=", "NO_COLOR="), env...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = theirs, theirs, theirs
	require.NoError(t, cmd.Start())
	require.NoError(t, theirs.Close())
	late := time.AfterFunc(time.Minute, func() { _ = cmd.Process.Kill() })
	t.Cleanup(func() { late.Stop(); ours.Close() })
	return &session{t: t, ours: ours}, cmd
}

func TestIntakeAtATerminal(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	s, cmd := start(t, path)
	text := s.await("> ")
	assert.Contains(t, text, "\x1b[1mIs the car yours to order work on?\x1b[0m")
	s.send("yex\x7fs\r") // a slip, and the key that takes it back
	s.await("kept: yes")
	s.await("> ")
	s.send("overh\t") // completed by Tab
	s.await("overheated")
	s.send("\r")
	s.await("kept: it boiled")
	s.await("> ")
	s.send("\x03") // Ctrl-C keeps what was answered
	s.await("2 answers are kept")
	assert.Error(t, cmd.Wait())
	assert.Equal(t, exitFault, cmd.ProcessState.ExitCode())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(data), "may_order = true\nreason_parked = [\"overheated\"]\n")
	assert.NoFileExists(t, path+".lock")
}

// TestOnceOverAtATerminal: a once-over by its keys, with Tab, and back to it.
func TestOnceOverAtATerminal(t *testing.T) {
	path := filepath.Join(t.TempDir(), "case.toml")
	s, cmd := start(t, path)
	s.await("> ")
	s.send("station papers\r")
	text := s.await("> ")
	assert.Contains(t, text, "\x1b[1mHow is the car laid out: what is not as listed?\x1b[0m")
	assert.Contains(t, text, "    8 gearbox: usually manual\r")
	s.send("only gearb\t\r") // completed by Tab
	s.await("cannot be told: layout")
	s.await("Manual or automatic gearbox?")
	s.await("> ")
	s.send("b\r")
	s.await("now looked, cannot say (seen)")
	s.await("> ")
	s.send("none\r")
	s.await("kept: as usual: layout")
	s.await("> ")
	s.send("q\r")
	s.await("questions left")
	assert.NoError(t, cmd.Wait())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(data), "layout = \"front_rear\"\nbody = \"unitary\"\n")
	assert.Contains(t, string(data), "gearbox_kind = \"manual\"\n")
	assert.NotContains(t, string(data), "can't tell")
}

// A terminal left in raw mode echoes nothing: whoever ends the program from
// outside must get it back as it was, and the case unlocked.
func TestTerminalIsGivenBackWhenEnded(t *testing.T) {
	for _, with := range []syscall.Signal{syscall.SIGTERM, syscall.SIGHUP} {
		t.Run(with.String(), func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "case.toml")
			s, cmd := start(t, path)
			fresh, other := pair(t)
			defer fresh.Close()
			defer other.Close()
			before := modes(t, fresh)
			s.await("> ")
			s.send("yes\r")
			s.await("kept: yes")
			s.await("> ")
			s.send("x") // echoed by the program, so the terminal is raw now
			s.await("x")
			assert.NotEqual(t, before, modes(t, s.ours))
			require.NoError(t, cmd.Process.Signal(with))
			s.await("1 answer is kept")
			assert.Error(t, cmd.Wait())
			assert.Equal(t, exitFault, cmd.ProcessState.ExitCode())
			assert.Equal(t, before, modes(t, s.ours))
			assert.NoFileExists(t, path+".lock")
		})
	}
}

// modes reads how the terminal behind our end is set.
func modes(t *testing.T, ours *os.File) syscall.Termios {
	var m syscall.Termios
	control(t, ours, syscall.TCGETS, unsafe.Pointer(&m))
	return m
}

func TestTerminalReadAloud(t *testing.T) {
	for _, env := range []string{"ACCESSIBLE=1", "TERM=dumb", "NO_COLOR=1"} {
		t.Run(env, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "case.toml")
			s, cmd := start(t, path, env)
			s.await("> ")
			s.send("yes\r")
			s.await("kept: yes")
			s.await("> ")
			s.send("stop\r")
			s.await("questions left")
			assert.NoError(t, cmd.Wait())
			assert.NotContains(t, s.seen, "\x1b[1m")
			if env != "NO_COLOR=1" {
				assert.NotContains(t, s.seen, "\x1b", "nothing moves the cursor")
			}
		})
	}
}

func TestANewRuleIsAskedForAtATerminal(t *testing.T) {
	path := filepath.Join(t.TempDir(), "salt.toml")
	s, cmd := startCommand(t, []string{"rules", "new", "standing", "-o", path, "by=the foreman"})
	for _, one := range [][2]string{{"id: ", "salt_eats"}, {"operations: ", "exhuast"}, {`did you mean "exhaust"`, ""}, {"operations: ", "exhaust"}, {"says: ", ""}, {"because: ", "Salt eats it."}} {
		s.await(one[0])
		if one[1] != "" || strings.HasSuffix(one[0], ": ") {
			s.await("> ")
			s.send(one[1] + "\r")
		}
	}
	s.await("written: ")
	assert.NoError(t, cmd.Wait())
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(data), "\nid = \"salt_eats\" ")
	assert.Contains(t, string(data), "\nby = \"the foreman\"\n")
}
