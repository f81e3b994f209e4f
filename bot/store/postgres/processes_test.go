//go:build unix

package postgres_test

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"math/rand/v2"
	"os"
	"os/exec"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/postgres"
	"counterhand/commands"
)

// urlVariable tells a child which database to use.
const urlVariable = "COUNTERHAND_TEST_URL"

// parts are what a child process can be told to do. What it returns is an error
// to end with.
var parts = map[string]func(ctx context.Context, s *postgres.Store) error{
	"answer": answerAll,
	"hold":   holdLease,
}

func play(part string) int {
	ctx := context.Background()
	s, err := postgres.Open(ctx, os.Getenv(urlVariable))
	if err == nil {
		err = errors.Join(parts[part](ctx, s), s.Close())
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

// child is a process that plays a part.
type child struct {
	*exec.Cmd
	lines *bufio.Scanner
}

func startChild(t *testing.T, url, part string) child {
	t.Helper()
	program, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.CommandContext(t.Context(), program)
	cmd.Env = append(os.Environ(), partVariable+"="+part, urlVariable+"="+url)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	return child{cmd, bufio.NewScanner(out)}
}

const messages = 10_000

// answerAll answers every message, as a surface does that received all of them
// in no certain order, and says which ones it answered.
func answerAll(ctx context.Context, s *postgres.Store) error {
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	if err != nil {
		return err
	}
	engine, err := bot.NewEngine(bot.EngineConfig{Responder: assistant, Store: s, StoreTimeout: time.Minute, Log: slog.New(slog.DiscardHandler)})
	if err != nil {
		return err
	}
	work := make(chan int)
	go func() {
		defer close(work)
		for _, n := range rand.Perm(messages) {
			work <- n
		}
	}()
	var (
		wg   sync.WaitGroup
		mu   sync.Mutex
		errs []error
	)
	for range 8 {
		wg.Go(func() {
			for n := range work {
				m := bot.Message{
					ID: bot.MessageID(fmt.Sprint("chat:", n)), Channel: "chat:9",
					Person: bot.PersonID(fmt.Sprint("chat:", n%200)), Text: "binding for 54 x 68"}
				reply, err := engine.Handle(ctx, m)
				mu.Lock()
				switch {
				case errors.Is(err, bot.ErrRepeat):
				case err != nil || reply.Outcome != commands.Answer:
					errs = append(errs, fmt.Errorf("message %d: %q, %w", n, reply.Text, err))
				default:
					fmt.Println(n)
				}
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	return errors.Join(errs...)
}

// TestTwoProcessesAnswerEachMessageOnce delivers every message to two processes.
func TestTwoProcessesAnswerEachMessageOnce(t *testing.T) {
	url := newDatabase(t)
	var answered [messages]int
	var mu sync.Mutex
	children := make([]child, 2)
	for i := range children {
		children[i] = startChild(t, url, "answer")
	}
	var wg sync.WaitGroup
	shares := make([]int, len(children))
	for i, c := range children {
		wg.Go(func() {
			for c.lines.Scan() {
				var n int
				if _, err := fmt.Sscan(c.lines.Text(), &n); err != nil {
					continue
				}
				mu.Lock()
				answered[n]++
				shares[i]++
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	for _, c := range children {
		require.NoError(t, c.Wait())
	}
	for n, times := range answered {
		require.Equal(t, 1, times, "message %d", n)
	}
	t.Logf("%d messages, %d answered by one and %d by the other", messages, shares[0], shares[1])
	for _, share := range shares {
		assert.NotZero(t, share, "the test proves little if one process answers them all")
	}
}

// The lease of the test, short so that the test does not take minutes. What a
// process in use has (10 s, see the surfaces) is bounded in the same way: by
// its time to live and one attempt of the other to take it.
const (
	leaseTTL   = time.Second
	leasePause = leaseTTL / 10
)

// takeoverBound is what the design promises for a lease of 10 s.
const takeoverBound = 15 * time.Second

// holding is what a holder says.
type holding struct {
	Did   string // "took", "kept" or "lost"
	Token int64
}

// holdLease takes the lease whenever it is free, keeps it, and says all it does.
func holdLease(ctx context.Context, s *postgres.Store) error {
	out := json.NewEncoder(os.Stdout)
	name := fmt.Sprint("process ", os.Getpid())
	var held bot.Lease
	for range time.Tick(leasePause) {
		var err error
		did := "kept"
		if held.Token == 0 {
			did = "took"
			held, err = s.Acquire(ctx, "timer", name, leaseTTL)
			if errors.Is(err, bot.ErrLeaseHeld) {
				continue
			}
		} else {
			token := held.Token
			held, err = s.Renew(ctx, held, leaseTTL)
			if errors.Is(err, bot.ErrLeaseLost) {
				did, held.Token, err = "lost", 0, out.Encode(holding{"lost", token})
				if err != nil {
					return err
				}
				continue
			}
		}
		if err != nil {
			return err
		}
		if err := out.Encode(holding{did, held.Token}); err != nil {
			return err
		}
	}
	return nil
}

// next returns the next thing that the child says, and nothing once it is gone.
func (c child) next(t *testing.T) (h holding, ok bool) {
	t.Helper()
	if !c.lines.Scan() {
		return h, false
	}
	require.NoError(t, json.Unmarshal(c.lines.Bytes(), &h))
	return h, true
}

// TestLeaseIsTakenOver kills whoever holds the lease, twenty times.
func TestLeaseIsTakenOver(t *testing.T) {
	url := newDatabase(t)
	holder := startChild(t, url, "hold")
	first, ok := holder.next(t)
	require.True(t, ok)
	require.Equal(t, "took", first.Did)
	token := first.Token
	var longest time.Duration
	for round := range 20 {
		other := startChild(t, url, "hold")
		for range rand.IntN(5) { // at some moment of its holding
			kept, ok := holder.next(t)
			require.True(t, ok)
			require.Equal(t, holding{"kept", token}, kept)
		}
		require.NoError(t, holder.Process.Kill())
		killed := time.Now()
		taken, ok := other.next(t)
		took := time.Since(killed)
		require.True(t, ok)
		require.Equal(t, "took", taken.Did, "round %d", round)
		require.Greater(t, taken.Token, token, "round %d: what the dead one left behind can be told", round)
		require.Less(t, took, takeoverBound, "round %d", round)
		longest = max(longest, took)
		require.Error(t, holder.Wait())
		holder, token = other, taken.Token
	}
	t.Logf("taken over 20 times, in %s at the longest, with a lease of %s tried every %s", longest.Round(time.Millisecond), leaseTTL, leasePause)
	require.NoError(t, holder.Process.Kill())
	require.Error(t, holder.Wait())
}

// TestHolderThatWasStoppedHasLost stops the holder for longer than its lease,
// as a machine does that sleeps; when it goes on it must not believe that it
// still holds the lease.
func TestHolderThatWasStoppedHasLost(t *testing.T) {
	url := newDatabase(t)
	holder := startChild(t, url, "hold")
	taken, ok := holder.next(t)
	require.True(t, ok)
	other := startChild(t, url, "hold")

	require.NoError(t, holder.Process.Signal(syscall.SIGSTOP))
	takenOver, ok := other.next(t)
	require.True(t, ok)
	require.Equal(t, "took", takenOver.Did)
	require.NoError(t, holder.Process.Signal(syscall.SIGCONT))
	for {
		said, ok := holder.next(t)
		require.True(t, ok)
		require.Equal(t, taken.Token, said.Token)
		if said.Did == "lost" {
			break
		}
		require.Equal(t, "kept", said.Did, "it said so before it was stopped")
	}
	for _, c := range []child{holder, other} {
		require.NoError(t, c.Process.Kill())
		require.Error(t, c.Wait())
	}
}
