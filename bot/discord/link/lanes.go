package link

import (
	"context"
	"errors"
	"log/slog"
	"runtime/debug"
	"sync"
)

// ErrFull means that a lane, or all of them together, take no more work.
var ErrFull = errors.New("too much is waiting already")

// Lanes do work in order within a lane, and side by side between lanes, with a
// fixed number of workers and a bound on what waits. A fault in a piece of work
// costs that piece only.
type Lanes struct {
	perLane, total int
	log            *slog.Logger

	mu     sync.Mutex
	work   sync.Cond
	lanes  map[string]*lane
	ready  []*lane // lanes with work that nobody works at
	queued int
	closed bool
	done   sync.WaitGroup
}

type lane struct {
	key   string
	works []func()
}

// NewLanes starts the workers. perLane and total bound the pieces of work that
// have been taken and not finished.
func NewLanes(workers, perLane, total int, log *slog.Logger) *Lanes {
	l := &Lanes{perLane: perLane, total: total, log: log, lanes: map[string]*lane{}}
	l.work.L = &l.mu
	for range workers {
		l.done.Go(l.toil)
	}
	return l
}

// Put adds work to a lane, or reports ErrFull. After Close everything is full.
func (l *Lanes) Put(key string, work func()) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	at := l.lanes[key]
	if l.closed || l.queued >= l.total || at != nil && len(at.works) >= l.perLane {
		return ErrFull
	}
	l.queued++
	if at != nil {
		at.works = append(at.works, work)
		return nil
	}
	at = &lane{key: key, works: []func(){work}}
	l.lanes[key] = at
	l.ready = append(l.ready, at)
	l.work.Signal()
	return nil
}

// toil does one piece of one ready lane after another. The piece stays at the
// head of its lane while it is done, which keeps the lane from being ready twice.
func (l *Lanes) toil() {
	l.mu.Lock()
	defer l.mu.Unlock()
	for {
		for len(l.ready) == 0 {
			if l.closed && l.queued == 0 {
				return
			}
			l.work.Wait()
		}
		at := l.ready[0]
		l.ready[0] = nil
		l.ready = l.ready[1:]
		l.perform(at.works[0])
		l.finish(at)
	}
}

func (l *Lanes) perform(work func()) {
	l.mu.Unlock()
	defer l.mu.Lock()
	defer func() {
		if p := recover(); p != nil {
			l.log.Error("a piece of work failed", "fault", p, "stack", string(debug.Stack()))
		}
	}()
	work()
}

func (l *Lanes) finish(at *lane) {
	l.queued--
	at.works[0] = nil
	at.works = at.works[1:]
	if len(at.works) == 0 {
		delete(l.lanes, at.key)
	} else {
		l.ready = append(l.ready, at)
		l.work.Signal()
	}
	if l.closed && l.queued == 0 {
		l.work.Broadcast()
	}
}

// Waiting gives the number of pieces taken and not finished.
func (l *Lanes) Waiting() int {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.queued
}

// Close takes no more work and waits until everything taken is done, or until
// ctx ends; then it reports ctx's error and the workers stop when they can.
func (l *Lanes) Close(ctx context.Context) error {
	l.mu.Lock()
	l.closed = true
	l.work.Broadcast()
	l.mu.Unlock()
	over := make(chan struct{})
	go func() { l.done.Wait(); close(over) }()
	select {
	case <-over:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
