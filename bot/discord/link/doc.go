// Package link is the only place that knows the chat platform's protocol and
// the library for it. The surface above it sees messages, presses and posts as
// plain values, in the order in which they happened, each once.
//
// # What is used of the library, and what is not
//
// From discordgo come the protocol's vocabulary (embeds, buttons, references,
// intents, error and operation codes), the multipart encoder and the signature
// check. Its gateway loop and its request loop are not used: the faults that
// matter sit inside them, out of reach of any setting. It reconnects for ever
// after a close code that means "stop", deadlocks when a reconnect request is
// the first packet after a resume, closes a silent connection with a code that
// ends the session, takes five intervals to notice it, never uses the resume
// address, keeps session and sequence to itself, opens without a deadline,
// keeps one rate-limit bucket for every interaction it ever answered, sleeps
// through cancelled contexts, and can send neither a nonce nor (with API
// version 10) alternative text. Both loops are short once state caches and
// voice are left out, so they are written here, over the same websocket package
// that the library uses.
//
// # Promises
//
//   - An event is handed over at most once, also when the platform replays it,
//     and the sequence moves on only after it was handed over.
//   - Nothing that a machine wrote (bots, webhooks, the account itself, notices)
//     is handed over.
//   - Whatever is sent pings nobody.
//   - No error, log line or printed value carries the token or an interaction's
//     token.
//   - Every wait ends with its context; every buffer has a bound.
package link
