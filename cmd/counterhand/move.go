package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os"

	"github.com/spf13/cobra"

	"counterhand/bot"
)

const moveStatus = `
Exit status:
  0  done
  2  wrong usage, or a configuration that is not sound
  3  it could not be done, and nothing was changed`

func newExport(std streams, o *options) *cobra.Command {
	return &cobra.Command{
		Use:   "export [FILE]",
		Short: "Write everything that is kept as JSON lines",
		Long: `Writes every record as JSON lines, all as they stood at one moment, to a new
file or to the output. Any store can import them.
` + moveStatus,
		Args: atMost(1),
		RunE: func(c *cobra.Command, args []string) error {
			return withStore(c.Context(), std, o, func(ctx context.Context, store bot.Store) error {
				if len(args) == 1 {
					return bot.ExportFile(ctx, store, args[0])
				}
				_, err := bot.Export(ctx, store, std.out)
				return err
			})
		},
	}
}

func newImport(std streams, o *options) *cobra.Command {
	return &cobra.Command{
		Use:   "import [FILE]",
		Short: "Read what export wrote",
		Long: `Reads what export wrote, from a file or from the input. A record takes the
place of the one with its key. Where the file is at fault nothing is changed.
` + moveStatus,
		Args: atMost(1),
		RunE: func(c *cobra.Command, args []string) error {
			from, done, err := source(std, args)
			if err != nil {
				return err
			}
			err = withStore(c.Context(), std, o, func(ctx context.Context, store bot.Store) error {
				n, err := bot.Import(ctx, store, from)
				if err != nil {
					return err
				}
				_, err = fmt.Fprintf(std.out, "%d records.\n", n)
				return err
			})
			return errors.Join(err, done())
		},
	}
}

// source is the file that is named, or the input.
func source(std streams, args []string) (from io.Reader, done func() error, err error) {
	if len(args) == 0 {
		return std.in, func() error { return nil }, nil
	}
	f, err := os.Open(args[0])
	if err != nil {
		return nil, nil, err
	}
	return f, f.Close, nil
}

func newBackup(std streams, o *options) *cobra.Command {
	return &cobra.Command{
		Use:   "backup FILE",
		Short: "Copy everything that is kept while it is in use",
		Long: `Writes a copy that is consistent, also while others use the store, to a new
file: a file of the same kind where records are kept in a file, else JSON lines
for import.
` + moveStatus,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != 1 {
				return usage(c, errors.New("backup: name one file"))
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			return withStore(c.Context(), std, o, func(ctx context.Context, store bot.Store) error {
				return store.Backup(ctx, args[0])
			})
		},
	}
}

// withStore does something with the store that the configuration names.
func withStore(ctx context.Context, std streams, o *options, do func(context.Context, bot.Store) error) error {
	h, err := newHouse(o, std, slog.LevelWarn)
	if err != nil {
		return err
	}
	store, err := h.openStore(ctx)
	if err != nil {
		return err
	}
	return errors.Join(do(ctx, store), store.Close())
}

// atMost refuses more arguments than that.
func atMost(n int) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) > n {
			return usage(c, fmt.Errorf("%s: %q is too much", c.CommandPath(), args[n]))
		}
		return nil
	}
}
