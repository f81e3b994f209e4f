package calc

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// said fills a step in as a person who works in inches reads it.
func said(s Step) string {
	args := make([]any, len(s.Args))
	for i, a := range s.Args {
		switch v := a.(type) {
		case measure.Length:
			args[i] = v.Show(measure.Imperial)
		case Unrounded:
			args[i] = v.Show(measure.Imperial)
		case measure.Cloth:
			args[i] = v.Show(measure.Imperial)
		case measure.Size:
			args[i] = v.Show(measure.Imperial)
		case measure.Angle:
			args[i] = v.Show()
		default:
			args[i] = v
		}
	}
	return fmt.Sprintf(s.Format, args...)
}

// saidAll fills in a working.
func saidAll(steps []Step) []string {
	lines := make([]string, len(steps))
	for i, s := range steps {
		lines[i] = said(s)
	}
	return lines
}

// refusal gives what a person reads of a request that cannot be met: the input,
// the reason and what would work.
func refusal(t *testing.T, err error) string {
	t.Helper()
	var l *LimitError
	require.ErrorAs(t, err, &l)
	return l.Input + ": " + said(l.Reason) + " " + said(l.Works)
}
