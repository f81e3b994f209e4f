package storetest

import (
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

// become is a change that replaces a document.
func become(document string) func(json.RawMessage) (json.RawMessage, error) {
	return func(json.RawMessage) (json.RawMessage, error) { return json.RawMessage(document), nil }
}

func testSettings(t *testing.T, empty Factory) {
	t.Run("nothing kept is an empty map", func(t *testing.T) {
		found, err := empty(t).Settings(t.Context(), bot.OwnerOfPerson(ada))
		require.NoError(t, err)
		assert.Empty(t, found)
	})

	t.Run("no owners is an empty map", func(t *testing.T) {
		found, err := empty(t).Settings(t.Context())
		require.NoError(t, err)
		assert.Empty(t, found)
	})

	t.Run("what was changed is read back", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		var given json.RawMessage
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, func(old json.RawMessage) (json.RawMessage, error) {
			given = old
			return json.RawMessage(`{"seam":"1/4 in"}`), nil
		}))
		assert.Nil(t, given, "there was none before")
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon.Add(1e9), func(old json.RawMessage) (json.RawMessage, error) {
			given = old
			return json.RawMessage(`{"seam":"7 mm"}`), nil
		}))
		assert.JSONEq(t, `{"seam":"1/4 in"}`, string(given))

		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.JSONEq(t, `{"seam":"7 mm"}`, string(found[owner].Document))
		assert.Equal(t, noon.Add(1e9), found[owner].Changed)
	})

	t.Run("owners of one id in different scopes are apart", func(t *testing.T) {
		s := empty(t)
		owners := []bot.Owner{{Scope: bot.ScopePerson, ID: "chat:7"}, {Scope: bot.ScopeChannel, ID: "chat:7"}, {Scope: bot.ScopeShop, ID: "chat:7"}}
		for i, o := range owners {
			require.NoError(t, s.ChangeSettings(t.Context(), o, noon, become(fmt.Sprintf(`{"n":%d}`, i))))
		}
		found, err := s.Settings(t.Context(), owners...)
		require.NoError(t, err)
		for i, o := range owners {
			assert.JSONEq(t, fmt.Sprintf(`{"n":%d}`, i), string(found[o].Document))
		}
	})

	t.Run("many owners are read at once", func(t *testing.T) {
		s := empty(t)
		var owners []bot.Owner
		for i := range 8 {
			owners = append(owners, bot.OwnerOfChannel(bot.ChannelID(fmt.Sprintf("chat:%d", i))))
			require.NoError(t, s.ChangeSettings(t.Context(), owners[i], noon, become(`{"n":1}`)))
		}
		found, err := s.Settings(t.Context(), owners...)
		require.NoError(t, err)
		assert.Len(t, found, len(owners))
	})

	t.Run("nil removes the document", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		remove := func(json.RawMessage) (json.RawMessage, error) { return nil, nil }
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, remove), "nothing to remove")
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, become(`{"n":1}`)))
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, remove))
		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.Empty(t, found)
	})

	t.Run("an error from the change writes nothing", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		fault := errors.New("no")
		refuse := func(json.RawMessage) (json.RawMessage, error) { return json.RawMessage(`{"n":2}`), fault }
		assert.Equal(t, fault, s.ChangeSettings(t.Context(), owner, noon, refuse))
		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.Empty(t, found)

		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, become(`{"n":1}`)))
		assert.Equal(t, fault, s.ChangeSettings(t.Context(), owner, noon, refuse))
		found, err = s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.JSONEq(t, `{"n":1}`, string(found[owner].Document))
	})

	t.Run("what is given out may be written to", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		require.NoError(t, s.ChangeSettings(t.Context(), owner, noon, become(`{"n":1}`)))
		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		clear(found[owner].Document)
		found, err = s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.JSONEq(t, `{"n":1}`, string(found[owner].Document))
	})

	t.Run("changes at once do not lose one another", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		const writers, each = 8, 10
		var wg sync.WaitGroup
		errs := make([]error, writers)
		for w := range writers {
			wg.Go(func() {
				for range each {
					errs[w] = errors.Join(errs[w], s.ChangeSettings(t.Context(), owner, noon, countUp))
				}
			})
		}
		wg.Wait()
		require.NoError(t, errors.Join(errs...))
		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		assert.JSONEq(t, fmt.Sprintf(`{"n":%d}`, writers*each), string(found[owner].Document))
	})

	t.Run("removing and changing at once end in one of the two", func(t *testing.T) {
		s := empty(t)
		owner := bot.OwnerOfPerson(ada)
		var wg sync.WaitGroup
		errs := make([]error, 8)
		for w := range errs {
			wg.Go(func() {
				for range 10 {
					change := countUp
					if w%2 == 0 {
						change = func(json.RawMessage) (json.RawMessage, error) { return nil, nil }
					}
					errs[w] = errors.Join(errs[w], s.ChangeSettings(t.Context(), owner, noon, change))
				}
			})
		}
		wg.Wait()
		require.NoError(t, errors.Join(errs...))
		found, err := s.Settings(t.Context(), owner)
		require.NoError(t, err)
		if kept, ok := found[owner]; ok {
			assert.NotEmpty(t, kept.Document)
		}
	})
}

// countUp adds one to the field n.
func countUp(old json.RawMessage) (json.RawMessage, error) {
	var document struct {
		N int `json:"n"`
	}
	if old != nil {
		if err := json.Unmarshal(old, &document); err != nil {
			return nil, err
		}
	}
	document.N++
	return json.Marshal(document)
}
