// Package discord lets people ask in a group chat. It translates: what is
// written or pressed there becomes a bot.Message, and a commands.Reply becomes
// a message there. What is understood and said is decided elsewhere.
//
// # Which messages are taken for questions
//
// A direct message; a message that mentions the account by name; a reply to one
// of the account's messages; a slash command or a button. Where the operator has
// switched listening on and a channel's keepers have set a sign, also a message
// that begins with it. Nothing that a machine wrote.
//
// # What becomes of an answer
//
// The text carries all that matters; a card with the figures, a picture and
// buttons are added where the platform allows them. What the person wrote is
// never shown as formatting and never pings. A text over the platform's limit is
// cut at a line, with the whole of it in a file. A question that its author
// changes within the window is answered anew in the same place; one that is
// deleted takes its answer along.
//
// # Limits
//
// What waits is bounded, for each conversation and over all; each person and
// each channel has a quota, and is told once when it is used up. In a channel's
// quiet hours answers go to the person alone. When the context of [Surface.Run]
// ends, nothing more is taken on, and what was taken on is answered within ten
// seconds.
package discord
