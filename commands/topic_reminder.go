package commands

import "counterhand/commands/words"

const (
	safeWord    words.Concept = "safe"
	disposeWord words.Concept = "dispose"
	storeWord   words.Concept = "store"
	cutterWord  words.Concept = "rotary cutter"
	bladesWord  words.Concept = "cutter blade"
	ironWord    words.Concept = "iron"
	needleWord  words.Concept = "needle"
	sprayWord   words.Concept = "spray"
	glueWord    words.Concept = "glue"
	sewMachine  words.Concept = "machine"
	scissorsWd  words.Concept = "scissors"
	postureWord words.Concept = "posture"
	layersWord  words.Concept = "layers"
)

// guidance is what is told about one tool, on request.
// Sources: as in reminders; layers: hqstitch.com and quiltcrazie.blogspot.com
// (December 2013); posture: US OSHA, sewing station design.
var guidance = map[string][]string{
	"cutter": {
		"Close or lock the cutter every time you put it down, even for a moment.",
		"Cut on a mat, away from you, standing and looking straight down, with your fingers well back from the ruler's edge and no pins on the mat. Four layers are usual, six with a sharp large blade at the most.",
		"Keep it closed, dry and out of reach of children and pets. Change a dull blade: pressing harder makes it jump the ruler.",
	},
	"blades": {
		"Never loose in the bin: put old blades into the case that the new one came in, or a lidded tin, tape it shut and write on it what is inside.",
		"Where a full tin goes is for your local rules on sharps to say.",
		"Change the blade with the cutter flat on the table, and hold the new one by its middle.",
	},
	"iron": {
		"Stand the iron on its heel on something steady, with the cord where nobody can pull it, and keep hands and face out of the steam.",
		"Turn it off and unplug it when you leave the room; it can stay hot enough to burn for up to 90 minutes, a small one for up to 40.",
		"Fill it unplugged. Let starch dry before you press, air the room, and wipe up overspray, which makes floors slippery.",
	},
	"needles": {
		"Bent, blunt and broken needles and pins go into a lidded tin or jar that is marked, never loose into the bin; where the full tin goes, your local rules say.",
		"Count needles and pins back into the cushion. When one breaks, stop and find all the pieces.",
		"Never hold pins in your mouth, and take them out before the machine's foot reaches them.",
	},
	"spray": {
		"Use sprays, starch as well as basting glue, in the open or with the window open, in short bursts, away from eyes and children.",
		"No flame, pilot light, cigarette or hot iron near: many are flammable. Let everything dry before you press it.",
		"Do not pierce, burn or heat the can, and read its label first.",
	},
	"machine": {
		"Keep your fingers beside the foot, never in front of it, and let the machine feed the cloth.",
		"Turn it off or unplug it to thread, clean or change the needle. Take pins out before the foot reaches them.",
	},
	"scissors": {
		"Pass scissors and rippers handle first, rip away from your hand, and let falling scissors fall: step back, do not catch them.",
		"Put them away closed, out of reach of children.",
	},
	"posture": {
		"Work with the surface at elbow height, feet flat, your back supported and good light, on a chair that does not roll.",
		"Change what you do and stretch often; tape cords down and keep the floor clear.",
	},
}

// reminderTopic: full guidance on working safely, on request.
func reminderTopic() Topic {
	return Topic{
		Name: "reminder", Group: AroundIt, Title: "working safely with cutters, irons, needles and sprays", Alone: true,
		Terms: []words.Term{
			{Concept: safeWord, Words: "safe, safety, safely, danger, dangerous, careful, watch out, watch out for, look out for, precaution, hazard, hurt myself with, risk, risky, anything to watch, is it ok to, is it okay to, sew over pins, sewing over pins, over pins, harmful, poisonous, flammable, cut resistant glove, glove"},
			{Concept: disposeWord, Words: "dispose, dispose of, get rid of, throw away, throw out, bin, bin them, bin it, discard, chuck, trash, garbage, rubbish, recycle"},
			{Concept: storeWord, Words: "store, keep away, put away, storing, storage, leave it on, leave on, kids around, children around"},
			{Concept: cutterWord, Words: "rotary cutter, cutter, rotary, rotary blade"},
			{Concept: bladesWord, Words: "cutter blade, old blade, used blade, old cutter blade, blunt blade from my cutter, old blade from my cutter, rotary cutter blade, dull blade, blunt blade, change the blade, changing the blade, new blade, used rotary blade"},
			{Concept: ironWord, Words: "iron, ironing, press with steam, steam, hot iron, mini iron, steam iron, ironing board, pressing, press"},
			{Concept: needleWord, Words: "needle, pin, bent needle, broken needle, broken and bent needle, bent pin"},
			{Concept: sprayWord, Words: "spray, starch, spray starch, basting spray, spray baste, adhesive spray, aerosol, spray glue"},
			{Concept: glueWord, Words: "glue, basting glue, glue stick, adhesive"},
			{Concept: sewMachine, Words: "machine, sewing machine"},
			{Concept: scissorsWd, Words: "scissors, seam ripper, ripper, unpicker, snips, shears"},
			{Concept: postureWord, Words: "posture, my back hurts, back hurts, back aches, my back aches, back ache, backache, back pain, sore back, sore neck, sitting, neck ache, table height, chair"},
			{Concept: layersWord, Words: "how many layers, layers at once, layers can i cut, layers of fabric, stack of layers, cut layers"},
		},
		Says: append(append(says(6, safeWord, disposeWord, layersWord), says(5, storeWord, cutterWord, bladesWord, sprayWord, needleWord, postureWord)...), says(3, ironWord, glueWord, scissorsWd)...),
		Inputs: []input{
			{name: "about", kind: aWord, words: map[words.Concept]string{bladesWord: "blades", cutterWord: "cutter", layersWord: "cutter", needleWord: "needles", sprayWord: "spray", glueWord: "spray", ironWord: "iron", scissorsWd: "scissors", sewMachine: "machine", postureWord: "posture", blade: "blades"}},
			{name: "wish", kind: aWord, words: map[words.Concept]string{disposeWord: "dispose"}},
		},
		Examples: []string{"how do I store the cutter", "how do I get rid of old blades"},
		Source:   "official and handbook guidance, each named with its line in the program; the maker's manual, local rules and a qualified teacher come first.",
		Work:     workReminder,
	}
}

func workReminder(w *work) error {
	about := w.word("about")
	if about == "cutter" && w.word("wish") == "dispose" {
		about = "blades"
	}
	if about == "" {
		about = "cutter"
	}
	for _, line := range guidance[about] {
		w.say("%s", line)
		w.reply.Reminders = append(w.reply.Reminders, line)
	}
	w.say("The maker's manual, your local rules and a qualified teacher come before anything I say.")
	return nil
}
