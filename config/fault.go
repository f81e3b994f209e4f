package config

import (
	"fmt"
	"strings"
)

// Fault is one value that cannot be used.
type Fault struct {
	Key     string
	Value   string // as it was written; a secret is redacted
	Source  string // where it was written
	Allowed string // what would be right, as the end of "it must be ..."
}

// Error says the fault in one line.
func (f Fault) Error() string {
	return fmt.Sprintf("%s is %q (%s); it must be %s", f.Key, f.Value, f.Source, f.Allowed)
}

// UnknownKey is a key that no setting has.
type UnknownKey struct {
	Key    string
	Source string
	Known  []string // what stands where it was looked for
}

// Error says the fault in one line.
func (u UnknownKey) Error() string {
	return fmt.Sprintf("%s is no setting (%s); there are %s", u.Key, u.Source, strings.Join(u.Known, ", "))
}

// Unreadable is a file that could not be read, or is not what it should be.
type Unreadable struct {
	Path string
	Err  error
}

// Error says the fault in one line.
func (u Unreadable) Error() string { return fmt.Sprintf("%s cannot be read: %v", u.Path, u.Err) }

// Unwrap gives the cause.
func (u Unreadable) Unwrap() error { return u.Err }

// Faults are all the faults of a configuration.
type Faults []error

// Error lists the faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults to package errors.
func (fs Faults) Unwrap() []error { return fs }
