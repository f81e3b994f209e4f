package main

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"strings"

	"github.com/spf13/cobra"

	"counterhand/bot/terminal"
)

const askHelp = `Answers one question, or with - each line of the input on its own.

With --json the reply is one JSON object on one line, and one object for every
line of the input, empty ones included. Then nothing is remembered and nothing
that you have set takes part, unless --remember is given.

Exit status:
  0  an answer
  1  the reply is a question, or says that it cannot be done as asked;
     with -, at least one of the replies
  2  wrong usage, or a configuration that is not sound
  3  a fault outside: a file, a database, the network`

func newAsk(std streams, o *options) *cobra.Command {
	var v visit
	cmd := &cobra.Command{
		Use:   "ask [flags] TEXT | -",
		Short: "Answer one question",
		Long:  askHelp,
		Example: `  counterhand ask "binding for 54 x 68"
  counterhand ask --json "how many 5 in squares from a fat quarter"
  counterhand ask --json - < questions.txt`,
		DisableFlagsInUseLine: true,
	}
	v.addFlags(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if len(args) == 0 {
			return usage(cmd, errors.New("ask: there is no question"))
		}
		v.settle(cmd)
		return ask(cmd.Context(), std, o, v, args)
	}
	return cmd
}

// ask answers what the arguments say, or the lines of the input.
func ask(ctx context.Context, std streams, o *options, v visit, args []string) error {
	h, err := newHouse(o, std, slog.LevelWarn)
	if err != nil {
		return err
	}
	desk, err := h.openDesk(ctx, v, "terminal:ask", true)
	if err != nil {
		return err
	}
	questions := one(strings.Join(args, " "))
	if len(args) == 1 && args[0] == "-" {
		questions = terminal.NewLines(std.in).Next
	}
	answered, err := desk.answerAll(ctx, questions, newPrinter(std.out, v.json))
	if err == nil && !answered {
		err = errNoAnswer
	}
	return errors.Join(err, desk.close())
}

// one gives a text once, and then io.EOF.
func one(text string) func() (string, error) {
	given := false
	return func() (string, error) {
		if given {
			return "", io.EOF
		}
		given = true
		return text, nil
	}
}
