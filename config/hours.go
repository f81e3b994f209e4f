package config

import (
	"fmt"
	"strings"
	"time"
)

// Hours are the opening hours of one weekday, counted from midnight. The shop
// is closed all day where Known is true and both times are zero.
type Hours struct {
	Known      bool
	From, Till time.Duration
}

// Closed tells whether the shop is known to stay closed on the day.
func (h Hours) Closed() bool { return h.Known && h.Till == 0 }

// String writes the hours as they are set: "10:00 to 17:30", "closed", or
// nothing where they are not known.
func (h Hours) String() string {
	switch {
	case !h.Known:
		return ""
	case h.Closed():
		return "closed"
	}
	return clockText(h.From) + " to " + clockText(h.Till)
}

func clockText(d time.Duration) string {
	return fmt.Sprintf("%d:%02d", int(d.Hours()), int(d.Minutes())%60)
}

// week is the days in the order in which a shop's door lists them.
var week = [7]time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday, time.Sunday}

// Week writes what is known of a week: "Tuesday 10:00 to 17:30, Saturday 9:30 to
// 16:00; closed on Monday and Sunday". It is empty where nothing is.
func (s Shop) Week() string {
	var open, closed []string
	for _, day := range week {
		switch h := s.Open[day]; {
		case h.Closed():
			closed = append(closed, day.String())
		case h.Known:
			open = append(open, day.String()+" "+h.String())
		}
	}
	text := strings.Join(open, ", ")
	if len(closed) == 0 || len(open) == 0 {
		return text
	}
	last := len(closed) - 1
	if last > 0 {
		closed = append(closed[:last-1], closed[last-1]+" and "+closed[last])
	}
	return text + "; closed on " + strings.Join(closed, ", ")
}
