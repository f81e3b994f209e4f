package commands_test

import "testing"

func TestReminder(t *testing.T) {
	ask(t, "reminder", []row{
		// 4-H clothing safety guide; rotary cutter handout.
		{
			is: "the cutter", say: []string{"how do I store the cutter", "is it safe to leave the rotary cutter open"},
			understood: "about cutter",
			text: `
Close or lock the cutter every time you put it down, even for a moment.
Cut on a mat, away from you, standing and looking straight down, with your fingers well back from the ruler's edge and no pins on the mat. Four layers are usual, six with a sharp large blade at the most.
Keep it closed, dry and out of reach of children and pets. Change a dull blade: pressing harder makes it jump the ruler.
The maker's manual, your local rules and a qualified teacher come before anything I say.`,
		},
		// 4-H clothing safety guide.
		{
			is: "needles", say: []string{"what do I do with bent needles"},
			understood: "about needles",
			text: `
Bent, blunt and broken needles and pins go into a lidded tin or jar that is marked, never loose into the bin; where the full tin goes, your local rules say.
Count needles and pins back into the cushion. When one breaks, stop and find all the pieces.
Never hold pins in your mouth, and take them out before the machine's foot reaches them.
The maker's manual, your local rules and a qualified teacher come before anything I say.`,
		},
		// Using aerosols safely.
		{
			is: "sprays", say: []string{"is basting spray dangerous", "is spray starch safe"},
			understood: "about spray",
			text: `
Use sprays, starch as well as basting glue, in the open or with the window open, in short bursts, away from eyes and children.
No flame, pilot light, cigarette or hot iron near: many are flammable. Let everything dry before you press it.
Do not pierce, burn or heat the can, and read its label first.
The maker's manual, your local rules and a qualified teacher come before anything I say.`,
		},
		{
			is: "old blades", say: []string{"how do I get rid of old blades"},
			understood: "about blades",
			text: `
Never loose in the bin: put old blades into the case that the new one came in, or a lidded tin, tape it shut and write on it what is inside.
Where a full tin goes is for your local rules on sharps to say.
Change the blade with the cutter flat on the table, and hold the new one by its middle.
The maker's manual, your local rules and a qualified teacher come before anything I say.`,
		},
		{
			is: "the iron", say: []string{"is it safe to leave the iron on"},
			understood: "about iron",
			text: `
Stand the iron on its heel on something steady, with the cord where nobody can pull it, and keep hands and face out of the steam.
Turn it off and unplug it when you leave the room; it can stay hot enough to burn for up to 90 minutes, a small one for up to 40.
Fill it unplugged. Let starch dry before you press, air the room, and wipe up overspray, which makes floors slippery.
The maker's manual, your local rules and a qualified teacher come before anything I say.`,
		},
	})
}
