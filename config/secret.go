package config

import "log/slog"

// redacted is what a secret shows of itself.
const redacted = "[redacted]"

// Secret is a text that must not be shown: however it is printed, logged or
// written as JSON or YAML, it says only that it is there. The zero value is no
// secret at all and shows as nothing.
type Secret struct{ value string }

// NewSecret hides a text.
func NewSecret(value string) Secret { return Secret{value} }

// Unwrap gives the text, for the one call that needs it.
func (s Secret) Unwrap() string { return s.value }

// IsEmpty tells whether there is no secret.
func (s Secret) IsEmpty() bool { return s.value == "" }

// String says that there is a secret, or nothing where there is none.
func (s Secret) String() string {
	if s.IsEmpty() {
		return ""
	}
	return redacted
}

// GoString is [Secret.String], for %#v.
func (s Secret) GoString() string { return s.String() }

// MarshalText is [Secret.String], for encoders.
func (s Secret) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// LogValue is [Secret.String], for package slog.
func (s Secret) LogValue() slog.Value { return slog.StringValue(s.String()) }
