// Package loopback is a chat platform for tests, on a loopback address: a
// gateway that greets, identifies, resumes and replays, an HTTP interface with
// request limits, and faults on demand.
//
// It judges rather than believes. Every request and every response is checked
// against the platform's own published description in testdata/chat-api, and
// against the rules of its documentation that the description leaves out; a
// breach fails the test. So neither the sender nor this double can drift from
// the real thing.
//
// One difference is deliberate: time limits of the platform that would make
// tests slow (heartbeats, the pause between sessions) are set by the test.
package loopback
