// Counterhand answers sizing questions about quilts, in the terminal, in a
// group chat and on a page.
//
// This command only joins the parts: it reads the configuration, hands each
// package the plain values that it needs, and decides the exit status. What is
// understood and said is decided elsewhere.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
)

// The exit statuses, as the help lists them.
const (
	statusAnswer = 0 // an answer, or whatever else was to be done is done
	statusNoSum  = 1 // the reply is a question or a decline
	statusUsage  = 2 // wrong usage, or a configuration that is not sound
	statusFault  = 3 // a fault outside: a file, a database, the network
)

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

func main() {
	os.Exit(run(context.Background(), os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}

// run is the whole program, given its arguments. It gives the exit status.
func run(ctx context.Context, args []string, std streams) int {
	root := newRoot(std)
	root.SetArgs(args)
	return status(root.ExecuteContext(ctx), std.err)
}

// status decides the exit status, and tells the person what went wrong.
func status(err error, out io.Writer) int {
	var usage usageError
	switch {
	case err == nil:
		return statusAnswer
	case errors.Is(err, errNoAnswer):
		return statusNoSum
	case errors.As(err, &usage):
		fmt.Fprintf(out, "%v\n", err)
		return statusUsage
	default:
		fmt.Fprintf(out, "counterhand: %v\n", err)
		return statusFault
	}
}

// errNoAnswer says that a reply was given and was a question or a decline.
var errNoAnswer = errors.New("the reply is no answer")

// usageError is a fault of whoever called the command or wrote its
// configuration.
type usageError struct{ error }

// Unwrap gives the cause.
func (u usageError) Unwrap() error { return u.error }
