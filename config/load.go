package config

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/adrg/xdg"
	"github.com/spf13/cast"
	"github.com/spf13/viper"
)

// The environment variables of the settings begin with envPrefix; those that
// begin with envTests are the test suite's and no settings.
const (
	envPrefix = "COUNTERHAND_"
	envTests  = envPrefix + "TEST_"
)

// fileSuffix makes of a secret's key the key of the file that holds it.
const fileSuffix = "_file"

// EnvName gives the environment variable of a setting:
// fabric.usable_width is COUNTERHAND_FABRIC_USABLE_WIDTH.
func EnvName(key string) string {
	return envPrefix + strings.ToUpper(strings.ReplaceAll(key, ".", "_"))
}

// Keys lists every key that can be set, in the order of the table.
func Keys() []string {
	var keys []string
	for _, s := range new(Config).settings() {
		keys = append(keys, s.key)
		if s.secret {
			keys = append(keys, s.key+fileSuffix)
		}
	}
	return keys
}

// DefaultFile is the file that is read where none is named: counterhand.yaml
// in the user's folder for configurations, or empty where there is none.
func DefaultFile() string {
	file, err := xdg.SearchConfigFile("counterhand/counterhand.yaml")
	if err != nil {
		return ""
	}
	return file
}

// Load reads the file, unless its name is empty, then the environment, then
// what the command line sets by key. The error is [Faults] and complete.
func Load(file string, commandLine map[string]string) (Config, error) {
	l := loader{v: viper.New(), file: file, commandLine: commandLine}
	var c Config
	table := c.settings()
	for _, s := range table {
		l.declare(s)
	}
	l.readFile()
	l.override()
	l.refuseUnknown()
	for _, s := range table {
		l.read(s)
	}
	if len(l.faults) > 0 {
		return Config{}, l.faults
	}
	for _, rule := range c.rules() {
		if rule.broken {
			l.faults = append(l.faults, rule.fault)
		}
	}
	if len(l.faults) > 0 {
		return Config{}, l.faults
	}
	return c, nil
}

// loader gathers the sources of one configuration, and its faults.
type loader struct {
	v           *viper.Viper
	file        string
	commandLine map[string]string
	faults      Faults
}

func (l *loader) fault(err error) { l.faults = append(l.faults, err) }

// declare makes a setting known to viper, without which values from the
// environment would not be found.
func (l *loader) declare(s setting) {
	l.v.SetDefault(s.key, s.fallback)
	l.bind(s.key)
	if s.secret {
		l.v.SetDefault(s.key+fileSuffix, "")
		l.bind(s.key + fileSuffix)
	}
}

func (l *loader) bind(key string) {
	if err := l.v.BindEnv(key, EnvName(key)); err != nil {
		l.fault(err)
	}
}

func (l *loader) readFile() {
	if l.file == "" {
		return
	}
	l.v.SetConfigFile(l.file)
	l.v.SetConfigType("yaml")
	if err := l.v.ReadInConfig(); err != nil {
		l.fault(unreadable(l.file, err))
	}
}

// unreadable leaves out the file's name where the cause has it too.
func unreadable(file string, err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return Unreadable{file, err}
}

func (l *loader) override() {
	for key, value := range l.commandLine {
		l.v.Set(key, value)
	}
}

// refuseUnknown faults every key and environment variable that no setting has.
func (l *loader) refuseUnknown() {
	known := Keys()
	keys := l.v.AllKeys()
	slices.Sort(keys)
	for _, key := range keys {
		if !slices.Contains(known, key) && !l.isEmptyGroup(known, key) {
			l.fault(UnknownKey{key, l.source(key), siblings(known, key)})
		}
	}
	var names []string
	for _, key := range known {
		names = append(names, EnvName(key))
	}
	for _, pair := range os.Environ() {
		name, _, _ := strings.Cut(pair, "=")
		if strings.HasPrefix(name, envPrefix) && !strings.HasPrefix(name, envTests) && !slices.Contains(names, name) {
			l.fault(UnknownKey{name, "environment", []string{EnvName("fabric.usable_width") + " and the like"}})
		}
	}
}

// isEmptyGroup tells whether the key is that of a group of settings of which
// none is set, as is left when the lines below it are taken out.
func (l *loader) isEmptyGroup(known []string, key string) bool {
	isGroup := slices.ContainsFunc(known, func(k string) bool { return strings.HasPrefix(k, key+".") })
	switch l.v.Get(key).(type) {
	case nil, map[string]any: // viper falls back to the defaults of the group
		return isGroup
	}
	return false
}

// siblings lists what stands in the group that the key names, or in the
// nearest known one around it.
func siblings(known []string, key string) []string {
	for group := key + "."; ; group = outer(group) {
		var found []string
		for _, k := range known {
			rest, ok := strings.CutPrefix(k, group)
			head, _, _ := strings.Cut(rest, ".")
			if ok && !slices.Contains(found, group+head) {
				found = append(found, group+head)
			}
		}
		if len(found) > 0 {
			return found
		}
	}
}

// outer gives the group around a group, each with its dot; around the outermost
// ones is the empty one, which holds everything.
func outer(group string) string {
	return group[:strings.LastIndexByte(strings.TrimSuffix(group, "."), '.')+1]
}

// source names the strongest place where a key was set.
func (l *loader) source(key string) string {
	for k := range l.commandLine {
		if strings.EqualFold(k, key) {
			return "command line"
		}
	}
	if os.Getenv(EnvName(key)) != "" {
		return EnvName(key)
	}
	if l.v.InConfig(key) {
		return l.file
	}
	return "default"
}

// read takes the strongest value of a setting into the configuration.
func (l *loader) read(s setting) {
	value := l.v.Get(s.key)
	if value == nil {
		return // what stands in the place of its group was refused
	}
	written, ok := asWritten(value)
	if s.secret && l.v.GetString(s.key+fileSuffix) != "" {
		l.readSecretFile(s, written)
		return
	}
	if ok && s.read(written) == nil {
		return
	}
	if s.secret {
		written = redacted
	}
	l.fault(Fault{s.key, written, l.source(s.key), s.allowed})
}

// asWritten gives a single value as it was written; what is none is not ok.
func asWritten(value any) (string, bool) {
	if s, err := cast.ToStringE(value); err == nil {
		return strings.TrimSpace(s), true
	}
	return fmt.Sprint(value), false
}

// readSecretFile reads a secret from a file of its own.
func (l *loader) readSecretFile(s setting, written string) {
	key := s.key + fileSuffix
	file := l.v.GetString(key)
	content, err := os.ReadFile(file)
	secret := strings.TrimSpace(string(content))
	switch {
	case written != "":
		l.fault(Fault{key, file, l.source(key), "left out where " + s.key + " is set"})
	case err != nil:
		l.fault(unreadable(file, err))
	case secret == "":
		l.fault(Fault{key, file, l.source(key), "a file with the secret in it"})
	default:
		if err := s.read(secret); err != nil {
			l.fault(Fault{key, file, l.source(key), s.allowed})
		}
	}
}
