package link

import (
	"crypto/ed25519"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"time"

	"github.com/bwmarrin/discordgo"
)

const (
	maxInteraction = 256 << 10       // bytes of a request
	signatureAge   = 5 * time.Minute // how old, or how far ahead, a signed request may be
)

// Endpoint receives interactions by HTTP instead of by the gateway. It answers
// each at once with "accepted"; the answer proper goes through the client like
// any other, so that the same code serves both ways.
type Endpoint struct {
	key  ed25519.PublicKey
	used func(Interaction)
	seen *seen
	now  func() time.Time
}

// NewEndpoint makes an endpoint. The key is the application's public key in
// hexadecimal, as its settings show it. The function given returns at once.
func NewEndpoint(key string, used func(Interaction)) (*Endpoint, error) {
	raw, err := hex.DecodeString(key)
	if err != nil || len(raw) != ed25519.PublicKeySize {
		return nil, fmt.Errorf("public key of the chat application: want %d hexadecimal digits", 2*ed25519.PublicKeySize)
	}
	return &Endpoint{key: raw, used: used, seen: newSeen(50_000, 2*signatureAge, time.Now), now: time.Now}, nil
}

func (e *Endpoint) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		w.Header().Set("Allow", http.MethodPost)
		http.Error(w, "only POST", http.StatusMethodNotAllowed)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, maxInteraction)
	if !e.timely(r.Header.Get("X-Signature-Timestamp")) || !discordgo.VerifyInteraction(r, e.key) {
		http.Error(w, "invalid request signature", http.StatusUnauthorized)
		return
	}
	data, err := io.ReadAll(r.Body)
	if err != nil {
		var long *http.MaxBytesError
		if errors.As(err, &long) {
			http.Error(w, "too long", http.StatusRequestEntityTooLarge)
			return
		}
		http.Error(w, "unreadable", http.StatusBadRequest)
		return
	}
	e.take(w, data)
}

func (e *Endpoint) timely(stamp string) bool {
	n, err := strconv.ParseInt(stamp, 10, 64)
	if err != nil {
		return false
	}
	age := e.now().Sub(time.Unix(n, 0))
	return age <= signatureAge && age >= -signatureAge
}

func (e *Endpoint) take(w http.ResponseWriter, data []byte) {
	var kind struct {
		Type discordgo.InteractionType `json:"type"`
	}
	if !decode(data, &kind) {
		http.Error(w, "not an interaction", http.StatusBadRequest)
		return
	}
	if kind.Type == discordgo.InteractionPing {
		w.Header().Set("Content-Type", "application/json")
		_ = json.NewEncoder(w).Encode(map[string]int{"type": int(discordgo.InteractionResponsePong)}) // the caller has gone if this fails
		return
	}
	i, ok := interaction(data)
	if !ok {
		http.Error(w, "not an interaction", http.StatusBadRequest)
		return
	}
	if e.seen.first(string(i.ID)) {
		e.used(i)
	}
	w.WriteHeader(http.StatusAccepted)
}
