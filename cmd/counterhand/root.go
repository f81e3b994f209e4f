package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"counterhand/config"
)

const rootHelp = `Counterhand works out sizes for quilts: what to cut, how many, what to buy.
Ask in your own words. Without a command it opens a conversation.

Exit status:
  0  an answer, or what was to be done is done
  1  the reply is a question, or says that it cannot be done as asked
  2  wrong usage, or a configuration that is not sound
  3  a fault outside: a file, a database, the network

Settings come from a file in YAML, then from the environment, then from --set;
the later one counts. fabric.usable_width in the file is
COUNTERHAND_FABRIC_USABLE_WIDTH in the environment. "counterhand check" says
whether they are sound.`

// options are what the command line says to every command.
type options struct {
	file string
	set  []string
}

// load reads the configuration. Its faults are the caller's to mend.
func (o options) load() (config.Config, error) {
	sets := map[string]string{}
	for _, s := range o.set {
		key, value, ok := strings.Cut(s, "=")
		if !ok {
			return config.Config{}, usageError{fmt.Errorf("--set %q: write it as KEY=VALUE", s)}
		}
		sets[strings.ToLower(strings.TrimSpace(key))] = value
	}
	c, err := config.Load(o.path(), sets)
	if err != nil {
		return config.Config{}, usageError{err}
	}
	return c, nil
}

// path is the file that was named, or the usual one, or none.
func (o options) path() string {
	if o.file != "" {
		return o.file
	}
	return config.DefaultFile()
}

// newRoot makes the command with all that belong to it.
func newRoot(std streams) *cobra.Command {
	var o options
	talk := newTalk(std, &o)
	root := &cobra.Command{
		Use:           "counterhand",
		Short:         "Sizing questions about quilts, answered",
		Long:          rootHelp,
		Version:       version(),
		Args:          noArgs,
		RunE:          talk.RunE,
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	root.SetIn(std.in)
	root.SetOut(std.out)
	root.SetErr(std.err)
	root.SetVersionTemplate("{{.Version}}\n")
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error { return usage(c, err) })
	root.CompletionOptions.HiddenDefaultCmd = true
	root.PersistentFlags().StringVar(&o.file, "config", "", "read the configuration from this file")
	root.PersistentFlags().StringArrayVar(&o.set, "set", nil, "set one value, as KEY=VALUE; may be given again")
	root.AddCommand(newAsk(std, &o), talk, newCheck(std, &o), newServe(std, &o), newExport(std, &o), newImport(std, &o), newBackup(std, &o))
	return root
}

// noArgs refuses what stands behind a command that takes nothing.
func noArgs(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return usage(c, fmt.Errorf("%s: there is no command %q", c.CommandPath(), args[0]))
	}
	return nil
}

// usage makes a fault of usage that names where help is.
func usage(c *cobra.Command, err error) error {
	return usageError{fmt.Errorf("%w\nSee %s --help", err, c.CommandPath())}
}
