package link

import "log/slog"

// Token is the application's secret. However it is printed, it shows nothing.
type Token string

const hidden = "(secret)"

// String hides the secret from %s and %v.
func (Token) String() string { return hidden }

// GoString hides the secret from %#v.
func (Token) GoString() string { return hidden }

// LogValue hides the secret from structured logs.
func (Token) LogValue() slog.Value { return slog.StringValue(hidden) }

// MarshalText hides the secret from encoders.
func (Token) MarshalText() ([]byte, error) { return []byte(hidden), nil }
