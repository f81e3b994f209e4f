package main

import (
	"encoding/json"
	"errors"
	"go/parser"
	"go/token"
	"io"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// direction says what the packages of one row may import of this module, and
// why no more. It is not to be relaxed to mend a build: the import is what is
// wrong then.
//
// A pattern is a path, or a path and /... for all that lies below it.
var direction = []struct {
	packages string
	mayUse   []string
	why      string
}{
	{"calc/measure", nil,
		"exact lengths serve everything else and know of nothing"},
	{"calc", []string{"calc/measure"},
		"the trade's arithmetic is checked by itself: no words, no surfaces, no storage"},
	{"calc/cutting", []string{"calc/measure"},
		"plans are proved least by themselves, whatever is said of them"},
	{"commands/scene", []string{"calc", "calc/cutting", "calc/measure"},
		"a picture is described in real lengths from what was reckoned, and drawn elsewhere"},
	{"commands/words", []string{"calc/measure"},
		"text becomes tokens before anybody asks what they mean"},
	{"commands/questionstest", []string{"calc/measure", "commands"},
		"the questions are reckoned independently of the arithmetic that they test"},
	{"commands", []string{"calc", "calc/cutting", "calc/measure", "commands/scene", "commands/words"},
		"words in, a reply out: what it says depends on no surface, store or clock"},
	{"bot", []string{"commands"},
		"conversations are the same whatever surface they come from, and wherever they are kept"},
	{"bot/store/...", []string{"bot", "bot/store/..."},
		"a store keeps records and knows nothing of what is in them"},
	{"bot/picture", []string{"calc/measure", "commands", "commands/scene"},
		"what is drawn comes as a scene, and goes out as the bytes of a file"},
	{"bot/discord", []string{"bot", "bot/discord/link", "commands", "commands/scene"},
		"a surface translates and nothing else, and needs no other surface; what draws is handed to it"},
	{"bot/discord/link", nil,
		"the chat library is hidden here, and knows of nobody else's words"},
	{"bot/discord/loopback", nil,
		"the platform's double knows nothing of what it tests"},
	{"bot/terminal", []string{"bot", "commands"},
		"a surface translates and nothing else, and needs no other surface"},
	{"config", []string{"calc/measure"},
		"settings are plain values; packages are handed theirs and never the whole"},
	{"cmd/counterhand", []string{"..."},
		"the parts are joined in one place"},
}

// homes are the packages that alone may import a library, and why.
var homes = []struct {
	library string // a pattern, see direction
	only    []string
	why     string
}{
	{"github.com/spf13/viper...", []string{"config"}, "settings are read in one place"},
	{"github.com/bwmarrin/discordgo...", []string{"bot/discord/..."}, "the chat library is hidden behind one package"},
	{"github.com/tdewolff/canvas...", []string{"bot/picture"}, "scenes are drawn in one place"},
	{"github.com/spf13/cobra...", []string{"cmd/counterhand"}, "the command line is the program's and no package's"},
	{"golang.org/x/term", []string{"bot/terminal"}, "surfaces are told apart in one place"},
	{"database/sql...", []string{"bot/store/..."}, "nothing but a store knows what keeps the records"},
	{"net/http...", []string{"bot/...", "cmd/counterhand"}, "calculations and answers need no network"},
	{"os", []string{"bot", "bot/...", "commands/questionstest", "config", "cmd/counterhand"}, "calculations and answers need no files and no environment"},
	{"time", []string{"bot", "bot/...", "config", "cmd/counterhand"}, "calculations and answers have no clock"},
}

// unlinked are modules that must not come into the program, and why.
var unlinked = []struct{ module, why string }{
	{"github.com/mattn/go-runewidth", "its start takes 40 ms, most of what an answer may take"},
	{"github.com/stretchr/testify", "it is for tests"},
}

// goPackage is what "go list" says of a package.
type goPackage struct {
	Dir, ImportPath string
	GoFiles         []string
	Imports         []string
}

const module = "counterhand"

// goList runs "go list" at the root of the module.
func goList(t *testing.T, args ...string) []goPackage {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-json=Dir,ImportPath,GoFiles,Imports"}, args...)...)
	cmd.Dir = filepath.Join("..", "..")
	var problems strings.Builder
	cmd.Stderr = &problems
	out, err := cmd.Output()
	require.NoError(t, err, problems.String())
	var packages []goPackage
	for dec := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p goPackage
		err := dec.Decode(&p)
		if errors.Is(err, io.EOF) {
			return packages
		}
		require.NoError(t, err)
		packages = append(packages, p)
	}
}

// name is a package's path within the module.
func (p goPackage) name() string { return strings.TrimPrefix(p.ImportPath, module+"/") }

// matches tells whether a package is what a pattern says.
func matches(pattern, name string) bool {
	if below, ok := strings.CutSuffix(pattern, "..."); ok {
		return strings.HasPrefix(name, below)
	}
	return name == pattern
}

func matchesAny(patterns []string, name string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool { return matches(p, name) })
}

func TestImportDirection(t *testing.T) {
	packages := goList(t, "./...")
	for _, p := range packages {
		rows := 0
		for _, row := range direction {
			if !matches(row.packages, p.name()) {
				continue
			}
			rows++
			for _, used := range p.Imports {
				if own, ok := strings.CutPrefix(used, module+"/"); ok {
					assert.True(t, matchesAny(row.mayUse, own), "%s imports %s: %s", p.name(), own, row.why)
				}
			}
		}
		assert.Equal(t, 1, rows, "%s stands in one row of the table", p.name())
	}
	for _, row := range direction {
		assert.True(t, slices.ContainsFunc(packages, func(p goPackage) bool { return matches(row.packages, p.name()) }),
			"%s is in the table and not in the module", row.packages)
	}
}

func TestLibrariesStayAtHome(t *testing.T) {
	for _, p := range goList(t, "./...") {
		for _, home := range homes {
			for _, used := range p.Imports {
				if matches(home.library, used) {
					assert.True(t, matchesAny(home.only, p.name()), "%s imports %s: %s", p.name(), used, home.why)
				}
			}
		}
	}
}

func TestNotLinked(t *testing.T) {
	linked := goList(t, "-deps", "./cmd/counterhand")
	for _, out := range unlinked {
		for _, p := range linked {
			assert.False(t, p.ImportPath == out.module || strings.HasPrefix(p.ImportPath, out.module+"/"),
				"%s is linked: %s", p.ImportPath, out.why)
		}
	}
}

func TestEveryPackageHasOnePackageComment(t *testing.T) {
	for _, p := range goList(t, "./...") {
		var commented []string
		for _, file := range p.GoFiles {
			parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, file), nil, parser.PackageClauseOnly|parser.ParseComments)
			require.NoError(t, err)
			if parsed.Doc != nil {
				commented = append(commented, file)
			}
		}
		assert.Len(t, commented, 1, "%s: files with a package comment", path.Base(p.ImportPath))
	}
}
