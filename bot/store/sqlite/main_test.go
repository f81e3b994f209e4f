//go:build unix

package sqlite_test

import (
	"fmt"
	"os"
	"os/exec"
	"testing"
)

// A test binary that is started with partVariable set plays that part in a test
// instead of running the tests; its arguments lie in argumentVariable.
const (
	partVariable     = "COUNTERHAND_TEST_PART"
	argumentVariable = "COUNTERHAND_TEST_ARGUMENT"
)

// parts are what a child process can be told to do. What it returns is its
// exit status.
var parts = map[string]func(argument string) int{
	"write until killed": writeUntilKilled,
	"open":               openAndReport,
	"fill the disk":      fillTheDisk,
}

func TestMain(m *testing.M) {
	part := os.Getenv(partVariable)
	if part == "" {
		os.Exit(m.Run())
	}
	play, ok := parts[part]
	if !ok {
		fmt.Fprintf(os.Stderr, "no part %q\n", part)
		os.Exit(2)
	}
	os.Exit(play(os.Getenv(argumentVariable)))
}

// child makes a process that plays a part.
func child(t *testing.T, program, part, argument string) *exec.Cmd {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), program)
	cmd.Env = append(os.Environ(), partVariable+"="+part, argumentVariable+"="+argument)
	cmd.Stderr = os.Stderr
	return cmd
}

// itself is the path of the test binary.
func itself(t *testing.T) string {
	t.Helper()
	path, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	return path
}
