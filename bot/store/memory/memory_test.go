package memory_test

import (
	"testing"
	"time"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/bot/store/storetest"
)

func TestConformance(t *testing.T) {
	storetest.Run(t, func(*testing.T) bot.Store { return memory.Open(time.Now) })
}

func TestClockThatGoesBack(t *testing.T) {
	storetest.RunClock(t, func(_ *testing.T, now func() time.Time) bot.Store { return memory.Open(now) })
}
