//go:build unix

package sqlite_test

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
)

const crashes = 200

// people is how many people the crashing process writes for, one after another.
const people = 20

// acknowledgement is what the child says once a write has returned.
type acknowledgement struct {
	Round, N int // the N-th write of this round
}

func (a acknowledgement) person() bot.PersonID {
	return bot.PersonID(fmt.Sprintf("chat:%d", a.N%people))
}

func (a acknowledgement) message() bot.MessageID {
	return bot.MessageID(fmt.Sprintf("chat:%d-%d", a.Round, a.N))
}

func (a acknowledgement) conversation() bot.ConversationID {
	return bot.ConversationID("chat:9/" + string(a.person()))
}

// writeUntilKilled writes records of every kind and says so after each.
func writeUntilKilled(argument string) int {
	var job struct {
		Path  string
		Round int
	}
	ctx := context.Background()
	if err := json.Unmarshal([]byte(argument), &job); err != nil {
		return report(err)
	}
	s, err := sqlite.Open(ctx, job.Path)
	if err != nil {
		return report(err)
	}
	out := json.NewEncoder(os.Stdout)
	for n := 1; ; n++ {
		a := acknowledgement{Round: job.Round, N: n}
		document, err := json.Marshal(a)
		if err != nil {
			return report(err)
		}
		err = s.ChangeSettings(ctx, bot.OwnerOfPerson(a.person()), time.Now(), func(json.RawMessage) (json.RawMessage, error) { return document, nil })
		if err != nil {
			return report(err)
		}
		if mine, err := s.Claim(ctx, a.message(), "the child", time.Now()); err != nil || !mine {
			return report(fmt.Errorf("claim: %t, %w", mine, err))
		}
		if err := s.SaveConversation(ctx, bot.Conversation{ID: a.conversation(), Person: a.person(), State: document, At: time.Now()}); err != nil {
			return report(err)
		}
		if err := out.Encode(a); err != nil {
			return report(err)
		}
	}
}

func report(err error) int {
	fmt.Fprintln(os.Stderr, err)
	return 1
}

// TestKilledProcessLosesNothing kills a process that writes, at random moments
// of its life, and looks for everything that it acknowledged.
func TestKilledProcessLosesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	program := itself(t)
	latest := make(map[bot.PersonID]acknowledgement) // of all rounds
	total := 0
	for round := 1; round <= crashes; round++ {
		acknowledged := crash(t, program, path, round)
		for _, a := range acknowledged {
			latest[a.person()] = a
		}
		total += len(acknowledged)

		s, err := sqlite.Open(t.Context(), path)
		require.NoError(t, err, "round %d: the file must open", round)
		require.Empty(t, s.SetAside(), "round %d: the file must be whole", round)
		for _, a := range acknowledged {
			mine, err := s.Claim(t.Context(), a.message(), "the parent", time.Now())
			require.NoError(t, err)
			require.False(t, mine, "round %d: %s was claimed and acknowledged", round, a.message())
		}
		for person, a := range latest {
			requireAtLeast(t, s, person, a)
		}
		require.NoError(t, s.Close())
	}
	require.Greater(t, total, crashes, "the test proves little if hardly anything is written")
	t.Logf("%d writes acknowledged in %d rounds", total, crashes)
}

// crash runs the child until it has acknowledged a random number of writes or a
// random time is over, kills it, and returns what it acknowledged.
func crash(t *testing.T, program, path string, round int) (acknowledged []acknowledgement) {
	t.Helper()
	argument, err := json.Marshal(map[string]any{"Path": path, "Round": round})
	require.NoError(t, err)
	cmd := child(t, program, "write until killed", string(argument))
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())

	kill := func() { _ = cmd.Process.Kill() } // it may be dead already
	// Every fourth is killed by the clock, while it starts or opens the file.
	if round%4 == 0 {
		time.AfterFunc(time.Duration(rand.IntN(100))*time.Millisecond, kill)
	}
	enough := 1 + rand.IntN(60)
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		var a acknowledgement
		if err := json.Unmarshal(lines.Bytes(), &a); err != nil {
			break // killed in the middle of a line
		}
		acknowledged = append(acknowledged, a)
		if len(acknowledged) == enough {
			// Somewhere in the writes that follow.
			time.AfterFunc(time.Duration(rand.IntN(2000))*time.Microsecond, kill)
		}
	}
	require.Error(t, cmd.Wait(), "round %d: the child must end by being killed", round)
	require.Equal(t, "signal: killed", cmd.ProcessState.String(), "round %d", round)
	return acknowledged
}

// requireAtLeast demands that what is kept for the person is what was last
// acknowledged, or newer: the last write before the end may be there without
// having been acknowledged.
func requireAtLeast(t *testing.T, s bot.Store, person bot.PersonID, want acknowledgement) {
	t.Helper()
	found, err := s.Settings(t.Context(), bot.OwnerOfPerson(person))
	require.NoError(t, err)
	conversation, err := s.Conversation(t.Context(), want.conversation())
	require.NoError(t, err)
	for _, document := range []json.RawMessage{found[bot.OwnerOfPerson(person)].Document, conversation.State} {
		var got acknowledgement
		require.NoError(t, json.Unmarshal(document, &got))
		assert.False(t, got.Round < want.Round || got.Round == want.Round && got.N < want.N,
			"%s: %+v is kept, but %+v was acknowledged", person, got, want)
	}
}
