package main

import (
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkStartToFirstAnswer is the time from calling the program to its end,
// with one question answered in between.
func BenchmarkStartToFirstAnswer(b *testing.B) {
	program := filepath.Join(b.TempDir(), "counterhand")
	out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(b, err, string(out))
	for b.Loop() {
		out, err := exec.Command(program, "ask", "--json", "binding for 54 x 68").Output()
		require.NoError(b, err, string(out))
	}
}
