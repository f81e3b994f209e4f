package main

import (
	"context"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"counterhand/bot"
	"counterhand/bot/picture"
	"counterhand/commands"
)

// filing is a handler that also draws what goes with an answer, and writes it
// into a folder. Files of one run never take each other's names; those of an
// earlier run are written over.
type filing struct {
	next   bot.Handler
	folder string
	paper  picture.Paper
	log    *slog.Logger

	mu    sync.Mutex
	taken map[string]bool
}

// newFiling makes the folder where it is missing.
func newFiling(next bot.Handler, folder string, paper picture.Paper, log *slog.Logger) (*filing, error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, err
	}
	return &filing{next: next, folder: folder, paper: paper, log: log, taken: map[string]bool{}}, nil
}

// Handle implements [bot.Handler]. What cannot be drawn is left out and logged,
// since the answer holds without it; what cannot be written is an error.
func (f *filing) Handle(ctx context.Context, m bot.Message) (commands.Reply, error) {
	reply, err := f.next.Handle(ctx, m)
	if err != nil {
		return reply, err
	}
	files, err := picture.Files(reply, picture.Formats{Want: []picture.Format{picture.AsEverything}, Paper: f.paper})
	if err != nil {
		f.log.Warn("not everything could be drawn", "err", err)
	}
	for i := range files {
		files[i].Name = f.free(filepath.Base(files[i].Name))
		if err := os.WriteFile(filepath.Join(f.folder, files[i].Name), files[i].Data, 0o666); err != nil {
			return reply, err
		}
	}
	reply.Files = append(reply.Files, files...)
	return reply, nil
}

// paper is what the shop prints on.
func (h *house) paper() picture.Paper {
	if h.config.Work.Letter {
		return picture.Letter
	}
	return picture.A4
}

// free numbers a name that was given in this run already: ring-2.svg.
func (f *filing) free(name string) string {
	f.mu.Lock()
	defer f.mu.Unlock()
	ending := filepath.Ext(name)
	free := name
	for n := 2; f.taken[free]; n++ {
		free = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ending), n, ending)
	}
	f.taken[free] = true
	return free
}
