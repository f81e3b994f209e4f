package commands

import (
	"slices"

	"counterhand/commands/words"
)

// task is what an answer is about to make a person do.
type task uint8

const (
	cutting task = iota
	pressing
	starching
	gluing
	handSewing
	machineSewing
	appliqueing
)

// reminder is one short safety reminder with where it comes from.
type reminder struct {
	id     string
	task   task
	text   string
	source string
}

// reminders are said with answers, one at a time, the first that fits and was
// not said yet in the conversation.
// Sources: 4-H clothing safety guide, https://pdfkiwi.com/documents/safety-guide-5dffe78087827;
// rotary cutter handout, https://slideblast.com/rotary-cutters-quilt-rulers-shopmartingale_597064ee1723dda0d44cc949.html;
// Irons, Sydney Children's Hospitals Network, https://kidshealth.schn.health.nsw.gov.au/irons;
// Using aerosols safely, https://aero-pack.com/using-aerosol-safely.html;
// Sewing eTool, US OSHA, https://www.osha.gov/etools/sewing/station-design.
var reminders = []reminder{
	{"cutter closed", cutting, "Close the cutter each time you put it down.", "4-H clothing safety guide"},
	{"cut away", cutting, "Cut away from you, with your fingers well back from the ruler's edge.", "rotary cutter handout; 4-H clothing safety guide"},
	{"dull blade", cutting, "Change a dull blade rather than press harder: it jumps the ruler.", "common practice, no source"},
	{"iron off", pressing, "Turn the iron off and unplug it when you leave it; it stays hot for up to 90 minutes.", "Irons, Sydney Children's Hospitals Network"},
	{"steam", pressing, "Keep hands and face out of the steam.", "4-H clothing safety guide"},
	{"spray", starching, "Spray starch or glue with a window open, away from flames and the hot iron, and let it dry.", "Using aerosols safely"},
	{"glue", gluing, "Use basting glue as its label says, and let it dry before you press.", "common practice, no source"},
	{"needles", handSewing, "Count your needles and pins back into the tin.", "4-H clothing safety guide"},
	{"over pins", machineSewing, "Take pins out before the foot reaches them.", "4-H clothing safety guide"},
	{"fingers", machineSewing, "Keep your fingers beside the foot, never in front of the needle.", "sewing safety rules, a 4-H club (2010)"},
}

// remind gives one reminder that fits what is about to be done and was not
// said yet in this conversation.
func (c *conversation) remind(tasks []task) string {
	for _, t := range tasks {
		for _, r := range reminders {
			if r.task == t && !slices.Contains(c.state.Reminded, r.id) {
				// One for each task; a second only where the task is new again.
				if said := slices.ContainsFunc(reminders, func(o reminder) bool {
					return o.task == t && slices.Contains(c.state.Reminded, o.id)
				}); said {
					break
				}
				c.state.Reminded = append(slices.Clone(c.state.Reminded), r.id)
				return r.text
			}
		}
	}
	return ""
}

// The concepts of accidents.
const (
	bodyPart words.Concept = "part of the body"
	injuring words.Concept = "hurting"
	blood    words.Concept = "blood"
	myself   words.Concept = "myself"
	byHand   words.Concept = "by hand"
	dyeRuns  words.Concept = "dye that runs"
)

var safetyTerms = []words.Term{
	{Concept: bodyPart, Words: "finger, thumb, hand, palm, knuckle, arm, leg, foot of mine, toe, wrist, face, eye, fingertip, skin, knee"},
	{Concept: injuring, Words: "sliced, burned, burnt, scalded, stabbed, pricked, hurt, hurts, injured, gashed, nicked, slashed, chopped, sewed through, sewn through, stitched through, sewed over, stuck in, needle in, needle through, pierced, burning myself"},
	{Concept: blood, Words: "bleeding, blood"},
	{Concept: byHand, Words: "by hand, by eye, second hand, hand sewn, hand quilted, hand dyed"},
	{Concept: dyeRuns, Words: "dye, bleeding dye, dye bleeding, bleeding fabric, fabric bleeding, bleeding colour, bleeding color, colour run, colours run, bleeding red dye, catcher"},
	{Concept: myself, Words: "myself, herself, himself"},
}

// firstAid is what somebody who is hurt is told: no sums, no medical advice.
// Source: common first aid practice, no source; it defers to medical help.
const firstAid = "Leave the quilt and turn off what is hot or running. " +
	"A cut: press a clean cloth on it and hold it up. A burn: hold it under cool running water for twenty minutes. " +
	"If it is deep, gapes, will not stop, or is near the eye, get medical help now or call your emergency number. I am only good for sums."

// hurt answers somebody who says that they, or somebody else, are hurt. It
// comes before everything else.
func (c *conversation) hurt() (Reply, bool) {
	person := c.has(bodyPart, myself)
	if !person && !(c.has(blood) && !c.has(fabric, colour, unitPc, dyeRuns) && (c.has(cutVerb, injuring) || len(c.text.Tokens) < 9)) {
		return Reply{}, false
	}
	if !c.has(injuring, blood) && !(c.has(cutVerb) && person && c.cutsBody()) {
		return Reply{}, false
	}
	r := answerReply("reminder", firstAid)
	for _, q := range quantities(c.text) {
		for _, n := range q.numbers {
			r.Understood = append(r.Understood, Understood{"left_aside", n.Number.Float(), unitName(n.Unit), safe(q.text)})
		}
	}
	return r, true
}

// cutsBody tells whether the text says that a part of the body was cut: the
// part comes within a few words of the cut.
func (c *conversation) cutsBody() bool {
	at := -1
	for i, t := range c.text.Tokens {
		if t.Is(cutVerb) {
			at = i
		}
		if (t.Is(bodyPart) || t.Is(myself)) && at >= 0 && i-at <= 4 {
			return true
		}
	}
	return false
}
