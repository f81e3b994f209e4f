package main

import (
	"fmt"

	"github.com/spf13/cobra"
)

func newCheck(std streams, o *options) *cobra.Command {
	return &cobra.Command{
		Use:   "check",
		Short: "Say whether the configuration is sound",
		Long: `Reads the configuration as every other command does, and says whether it is
sound or everything that is wrong with it. It connects to nothing.

Exit status:
  0  it is sound
  2  it is not, or wrong usage`,
		Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			if _, err := o.load(); err != nil {
				return err
			}
			from := o.path()
			if from == "" {
				from = "no file; defaults, environment and command line alone"
			}
			_, err := fmt.Fprintf(std.out, "The configuration is sound (%s).\n", from)
			return err
		},
	}
}
