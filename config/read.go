package config

import (
	"crypto/ed25519"
	"encoding/hex"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/adrg/xdg"

	"counterhand/calc/measure"
)

// errNotAllowed says that a value is none of those that a row allows; which
// these are, the row says itself.
var errNotAllowed = errors.New("not allowed")

// text is any words.
func text(key, fallback string, into *string) setting {
	return setting{key: key, fallback: fallback, allowed: "a text", read: func(w string) error {
		*into = w
		return nil
	}}
}

// secret is a text that is not shown, or, as key_file, the file that holds it.
func secret(key string, into *Secret) setting {
	return setting{key: key, allowed: "a text", secret: true, read: func(w string) error {
		*into = NewSecret(w)
		return nil
	}}
}

// path is a file; a default in relative form lies in the user's data folder.
func path(key, fallback string, into *string) setting {
	return setting{key: key, fallback: filepath.Join(xdg.DataHome, fallback), allowed: "the path of a file", read: func(w string) error {
		if w == "" || strings.ContainsRune(w, 0) {
			return errNotAllowed
		}
		*into = w
		return nil
	}}
}

// length is a length with its unit, least and most included.
func length(key, fallback, least, most string, into *measure.Length) setting {
	return setting{
		key: key, fallback: fallback,
		allowed: fmt.Sprintf("a length from %s to %s with its unit, such as %s", least, most, fallback),
		read:    func(w string) error { return within(w, least, most, into) },
	}
}

// ownSize is two lengths with an x between them, a unit at the end being for
// both; or nothing, for the size that follows the usable width.
func ownSize(key, example, least, most string, into *measure.Size) setting {
	return setting{
		key:     key,
		allowed: fmt.Sprintf("a size with its unit, each side from %s to %s, such as %s; or empty", least, most, example),
		read: func(w string) error {
			if w == "" {
				*into = measure.Size{}
				return nil
			}
			z, err := measure.ParseSize(w, measure.NoUnit)
			if err != nil {
				return err
			}
			if min(z.Width, z.Length) < literal(least) || max(z.Width, z.Length) > literal(most) {
				return errNotAllowed
			}
			*into = z
			return nil
		},
	}
}

// within reads a length between two that the table names.
func within(written, least, most string, into *measure.Length) error {
	l, err := measure.ParseLength(written, measure.NoUnit)
	if err != nil {
		return err
	}
	if l < literal(least) || l > literal(most) {
		return errNotAllowed
	}
	*into = l
	return nil
}

// literal reads a length that stands in the table; one that cannot be read is
// a mistake in this package.
func literal(written string) measure.Length {
	l, err := measure.ParseLength(written, measure.NoUnit)
	if err != nil {
		panic(fmt.Sprintf("config: %q: %v", written, err))
	}
	return l
}

// option is one word that may be chosen and what it stands for.
type option[T any] struct {
	word  string
	value T
}

var (
	systems   = []option[measure.System]{{"inches", measure.Imperial}, {"metric", measure.Metric}}
	levels    = []option[slog.Level]{{"debug", slog.LevelDebug}, {"info", slog.LevelInfo}, {"warn", slog.LevelWarn}, {"error", slog.LevelError}}
	countries = same("US", "UK", "EU", "AU")
)

// same makes options that stand for themselves.
func same(words ...string) []option[string] {
	var options []option[string]
	for _, w := range words {
		options = append(options, option[string]{w, w})
	}
	return options
}

// yesNo makes two options of which the first stands for true.
func yesNo(yes, no string) []option[bool] { return []option[bool]{{yes, true}, {no, false}} }

// choice is one of some words, in capitals or not.
func choice[T any](key, fallback string, into *T, options []option[T]) setting {
	var words []string
	for _, o := range options {
		words = append(words, o.word)
	}
	return setting{key: key, fallback: fallback, allowed: "one of " + strings.Join(words, ", "), read: func(w string) error {
		for _, o := range options {
			if strings.EqualFold(o.word, w) {
				*into = o.value
				return nil
			}
		}
		return errNotAllowed
	}}
}

// count is a whole number, least and most included.
func count(key, fallback string, least, most int, into *int) setting {
	return setting{key: key, fallback: fallback, allowed: fmt.Sprintf("a whole number from %d to %d", least, most), read: func(w string) error {
		n, err := strconv.Atoi(w)
		if err != nil || n < least || n > most {
			return errNotAllowed
		}
		*into = n
		return nil
	}}
}

// spans are the units that a length of time is written in.
var spans = map[string]time.Duration{
	"millisecond": time.Millisecond, "second": time.Second, "minute": time.Minute,
	"hour": time.Hour, "day": 24 * time.Hour, "week": 7 * 24 * time.Hour,
}

// span is a length of time, such as 30 days, least and most included.
func span(key, fallback, least, most string, into *time.Duration) setting {
	return setting{
		key: key, fallback: fallback,
		allowed: fmt.Sprintf("a time from %s to %s, such as %s", least, most, fallback),
		read: func(w string) error {
			d, err := parseSpan(w)
			if err != nil {
				return err
			}
			if lo, err := parseSpan(least); err != nil || d < lo {
				return errNotAllowed
			}
			if hi, err := parseSpan(most); err != nil || d > hi {
				return errNotAllowed
			}
			*into = d
			return nil
		},
	}
}

// parseSpan reads a whole number and a unit of time.
func parseSpan(written string) (time.Duration, error) {
	number, unit, _ := strings.Cut(strings.TrimSpace(written), " ")
	n, err := strconv.ParseInt(number, 10, 32)
	of := spans[strings.TrimSuffix(strings.TrimSpace(unit), "s")]
	if err != nil || of == 0 || n < 0 || n > int64(maxSpan/of) {
		return 0, errNotAllowed
	}
	return time.Duration(n) * of, nil
}

// maxSpan is longer than anything allowed, and far from overflowing.
const maxSpan = 100 * 365 * 24 * time.Hour

// timeZone is a name of the time zone database, or Local or UTC.
func timeZone(key, fallback string, into **time.Location) setting {
	return setting{key: key, fallback: fallback, allowed: "a time zone, such as Europe/London", read: func(w string) (err error) {
		if w == "" {
			return errNotAllowed
		}
		*into, err = time.LoadLocation(w)
		return err
	}}
}

// weekday gives the key of a day, by time.Weekday.
func weekday(day int) string { return strings.ToLower(time.Weekday(day).String()) }

// hours are two times of one day, closed, or nothing where they are not known.
func hours(key, fallback string, into *Hours) setting {
	return setting{key: key, fallback: fallback, allowed: `closed, or two times such as "10:00 to 17:30"`, read: func(w string) error {
		switch w {
		case "":
			*into = Hours{}
			return nil
		case "closed":
			*into = Hours{Known: true}
			return nil
		}
		from, till, _ := strings.Cut(w, " to ")
		opens, err := clock(from)
		if err != nil {
			return err
		}
		closes, err := clock(till)
		if err != nil {
			return err
		}
		if closes <= opens {
			return errNotAllowed
		}
		*into = Hours{Known: true, From: opens, Till: closes}
		return nil
	}}
}

// clock reads a time of day as it was counted from midnight; 24:00 is the
// midnight that ends the day.
func clock(written string) (time.Duration, error) {
	written = strings.TrimSpace(written)
	if written == "24:00" {
		return 24 * time.Hour, nil
	}
	t, err := time.Parse("15:04", written)
	if err != nil {
		return 0, err
	}
	return time.Duration(t.Hour())*time.Hour + time.Duration(t.Minute())*time.Minute, nil
}

// publicKey is an Ed25519 key of 32 bytes in hexadecimal, or nothing.
func publicKey(key, fallback string, into *string) setting {
	return setting{key: key, fallback: fallback, allowed: "64 hexadecimal digits, or empty", read: func(w string) error {
		if bytes, err := hex.DecodeString(w); err != nil || w != "" && len(bytes) != ed25519.PublicKeySize {
			return errNotAllowed
		}
		*into = w
		return nil
	}}
}

// address is where a server listens, or nothing where it does not.
func address(key, fallback string, into *string) setting {
	return setting{key: key, fallback: fallback, allowed: "a host and a port such as 127.0.0.1:8080, or empty", read: func(w string) error {
		if w == "" {
			*into = ""
			return nil
		}
		_, port, err := net.SplitHostPort(w)
		if err != nil {
			return err
		}
		if n, err := strconv.Atoi(port); err != nil || n < 0 || n > 65535 {
			return errNotAllowed
		}
		*into = w
		return nil
	}}
}
