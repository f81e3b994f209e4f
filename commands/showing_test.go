package commands_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterhand/commands"
)

// "Draw it" and "print it" after an answer tell its pictures and templates in
// words and leave the request as it was.
func TestTheLastAnswerIsShown(t *testing.T) {
	fresh := newTalk(t)
	for _, c := range []struct {
		request, say, want string
		prints             bool
	}{
		{"ring of 16 blades, 6 in long", "draw it", "Picture: Ring of 16 blades of 22½°", false},
		{"ring of 16 blades, 6 in long", "show me a picture of that", "Picture: Ring of 16 blades of 22½°", false},
		{"ring of 16 blades, 6 in long", "what does it look like?", "Picture: One blade, cut 6 in long", false},
		{"ring of 16 blades, 6 in long", "template please", "To print: Templates in true size: a blade of 22½°", true},
		{"ring of 16 blades, 6 in long", "print it", "measure the check squares", true},
		{"binding for 54 x 68", "print it", "There is no template in this one; the cutting sheet lists what to cut.", true},
		{"backing and binding for 54 x 68", "show me", "Picture: 7 strips, 2½ in wide", false},
		{"2.75 yd in cm", "draw it", "There is nothing to draw in this one.", false},
		{"2.75 yd in cm", "print it", "There is nothing to print for this one.", false},
	} {
		talk := fresh.again()
		first := talk.say(c.request)
		r := talk.say(c.say)
		assert.Equal(t, commands.Answer, r.Outcome, c.say)
		assert.Equal(t, first.Topic, r.Topic, c.say)
		assert.Equal(t, first.Figures, r.Figures, c.say)
		assert.Len(t, r.Scenes, len(first.Scenes), c.say)
		assert.Contains(t, r.Text, c.want, "%s, then %s", c.request, c.say)
		assert.Equal(t, c.prints, r.ToPrint, "%s, then %s", c.request, c.say)
		assert.False(t, first.ToPrint, c.request)
	}
}

// Words for pictures within a request change nothing of the request.
func TestPicturesInARequest(t *testing.T) {
	fresh := newTalk(t)
	plain := fresh.again().say("ring of 16 blades, 6 in long")
	drawn := fresh.again().say("draw a ring of 16 blades, 6 in long, with a picture")
	assert.Equal(t, plain.Text, drawn.Text)
	printed := fresh.again().say("ring of 16 blades, 6 in long, as a pdf")
	assert.Equal(t, plain.Figures, printed.Figures)
	assert.True(t, printed.ToPrint)
}
