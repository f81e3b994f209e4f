package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets the scripts call the program under its own name.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"counterhand": main})
}

// TestScripts runs the whole program as a person or a script would. Each script
// has folders of its own for configurations, data and states.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       os.Getenv("UPDATE_SCRIPTS") != "",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			for name, folder := range map[string]string{
				"XDG_CONFIG_HOME": "/config", "XDG_DATA_HOME": "/data", "XDG_STATE_HOME": "/state", "HOME": "/home",
			} {
				e.Setenv(name, e.WorkDir+folder)
			}
			e.Setenv("XDG_CONFIG_DIRS", e.WorkDir+"/none")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status":  cmdStatus,
			"objects": cmdObjects,
		},
	})
}
