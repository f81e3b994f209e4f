package link

import (
	"errors"
	"fmt"
	"strings"

	"github.com/bwmarrin/discordgo"
)

var (
	// ErrRevoked means that the platform no longer accepts the token. Nothing
	// more is sent: hammering on would get the machine's address banned.
	ErrRevoked = errors.New("the chat token was refused: make a new one in the application's settings and start again with it")

	// ErrBusy means that too much waits to be sent already.
	ErrBusy = errors.New("too many requests wait for the chat platform")

	// ErrHeld means that so many requests were refused lately that nothing is
	// sent for a while, so that the machine's address is not banned.
	ErrHeld = errors.New("requests to the chat platform are held back after many refusals")

	// ErrTooLate means that an interaction can no longer be answered.
	ErrTooLate = errors.New("the interaction can no longer be answered")
)

// Refusal is a request that the platform understood and did not do.
type Refusal struct {
	What   string // what was asked for, without ids and tokens
	Status int    // of HTTP
	Code   int    // the platform's own, 0 if it gave none
	Reason string // the platform's words
}

func (r *Refusal) Error() string {
	return fmt.Sprintf("%s: refused with %d/%d: %s", r.What, r.Status, r.Code, r.Reason)
}

// Codes that stand neither in the library nor among its names.
const (
	codeArchivedThread = discordgo.ErrCodePerformedOperationOnArchivedThread
	codeNoHistory      = 160002
	codeLockedThread   = 160005
	codeAutoModeration = 200000
	codeHarmfulLink    = 240000
)

func code(err error) int {
	var r *Refusal
	if errors.As(err, &r) {
		return r.Code
	}
	return 0
}

// Gone reports whether the channel, guild or message is no longer there for
// us: what is bound to it ends.
func Gone(err error) bool {
	switch code(err) {
	case discordgo.ErrCodeUnknownChannel, discordgo.ErrCodeUnknownGuild, discordgo.ErrCodeUnknownMessage,
		discordgo.ErrCodeMissingAccess:
		return true
	}
	return false
}

// Forbidden reports whether a right is missing.
func Forbidden(err error) bool {
	c := code(err)
	return c == discordgo.ErrCodeMissingPermissions || c == discordgo.ErrCodeMissingAccess
}

// NoHistory reports whether a reply was refused because earlier messages may
// not be read, or because the message replied to is gone.
func NoHistory(err error) bool {
	var r *Refusal
	if !errors.As(err, &r) {
		return false
	}
	return r.Code == codeNoHistory ||
		r.Code == discordgo.ErrCodeInvalidFormBody && strings.Contains(r.Reason, "message_reference")
}

// Unwelcome reports whether the person does not take direct messages.
func Unwelcome(err error) bool {
	return code(err) == discordgo.ErrCodeCannotSendMessagesToThisUser
}

// Shut reports whether the place takes no messages just now: a locked or
// archived thread, slow mode, moderation. There is nothing to mend on our side.
func Shut(err error) bool {
	switch code(err) {
	case codeArchivedThread, codeLockedThread, codeAutoModeration, codeHarmfulLink,
		discordgo.ErrCodeThisActionCannotBePerformedDueToSlowmodeRateLimit,
		discordgo.ErrCodeChannelHasHitWriteRateLimit:
		return true
	}
	return false
}

// Expired reports whether an interaction was answered too late.
func Expired(err error) bool {
	c := code(err)
	return errors.Is(err, ErrTooLate) || c == discordgo.ErrCodeUnknownInteraction || c == discordgo.ErrCodeUnknownWebhook
}

func alreadyAnswered(err error) bool {
	return code(err) == discordgo.ErrCodeInteractionHasAlreadyBeenAcknowledged
}

// Stopped is the end of a gateway connection that must not be tried again.
type Stopped struct {
	Code   int // close code
	Reason string
}

func (s *Stopped) Error() string {
	return fmt.Sprintf("the chat gateway closed with %d: %s", s.Code, s.Reason)
}

// Unwrap makes a refused token known as [ErrRevoked].
func (s *Stopped) Unwrap() error {
	if s.Code == closeAuthentication {
		return ErrRevoked
	}
	return nil
}
