package main

import (
	"encoding/json"
	"errors"
	"os/exec"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// cmdStatus runs a program and wants a certain exit status:
//
//	status 1 counterhand ask hello
func cmdStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N program args...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

// cmdObjects wants that many lines on standard output, each one JSON object
// that holds every field of a reply, and no list that is null:
//
//	objects 3
func cmdObjects(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: objects N")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	out := ts.ReadFile("stdout")
	lines := strings.SplitAfter(out, "\n")
	if last := len(lines) - 1; lines[last] == "" {
		lines = lines[:last]
	}
	if len(lines) != want {
		ts.Fatalf("%d lines, want %d", len(lines), want)
	}
	for i, line := range lines {
		if !strings.HasSuffix(line, "\n") {
			ts.Fatalf("line %d does not end", i+1)
		}
		var object map[string]any
		if err := json.Unmarshal([]byte(line), &object); err != nil {
			ts.Fatalf("line %d: %v", i+1, err)
		}
		for _, field := range []string{"outcome", "topic", "text"} {
			if _, ok := object[field].(string); !ok {
				ts.Fatalf("line %d: %s is %v, want words", i+1, field, object[field])
			}
		}
		for _, field := range []string{"understood", "figures", "assumed", "working", "reminders", "choices", "files"} {
			if _, ok := object[field].([]any); !ok {
				ts.Fatalf("line %d: %s is %v, want a list", i+1, field, object[field])
			}
		}
	}
}
