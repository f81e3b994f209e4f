package bot

import (
	"context"
	"sync"
)

// turnstile lets the messages of one conversation through one at a time, in the
// order in which they came; different conversations do not wait for each other.
type turnstile struct {
	mu   sync.Mutex
	last map[ConversationID]chan struct{} // closed when the newest to come has left
}

func newTurnstile() *turnstile {
	return &turnstile{last: make(map[ConversationID]chan struct{})}
}

// enter waits until all who came before have left. Whoever entered must call
// leave once. When the context ends first, its error comes back and there is
// nothing to leave.
func (t *turnstile) enter(ctx context.Context, id ConversationID) (func(), error) {
	mine := make(chan struct{})
	t.mu.Lock()
	before := t.last[id]
	t.last[id] = mine
	t.mu.Unlock()

	leave := func() {
		t.mu.Lock()
		if t.last[id] == mine {
			delete(t.last, id)
		}
		t.mu.Unlock()
		close(mine)
	}
	if before == nil {
		return leave, nil
	}
	select {
	case <-before:
		return leave, nil
	case <-ctx.Done():
		// Whoever comes after still has to wait for those before.
		go func() {
			<-before
			leave()
		}()
		return nil, ctx.Err()
	}
}
