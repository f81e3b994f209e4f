package main

import (
	"fmt"
	"runtime/debug"
)

// version says which version of the program this is, and from which commit it
// was built where the build knows that.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return versionOf(&debug.BuildInfo{})
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	number, commit, changed := info.Main.Version, "unknown", ""
	if number == "" || number == "(devel)" {
		number = "development"
	}
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && s.Value != "":
			commit = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			changed = ", with changes since"
		}
	}
	return fmt.Sprintf("counterhand %s (commit %s%s)", number, commit, changed)
}
