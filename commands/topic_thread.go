package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	threadWord   words.Concept = "thread"
	piecingWord  words.Concept = "piecing"
	quiltingWord words.Concept = "quilting"
)

// threadTopic: thread for a quilt, as a range.
func threadTopic() Topic {
	return Topic{
		Name: "thread", Group: BuyIt, Title: "thread and bobbins, as a rule of thumb",
		Terms: []words.Term{
			{Concept: threadWord, Words: "thread, spool, bobbin, cotton reel, reel, spool of thread, reel of thread, cone"},
			{Concept: piecingWord, Words: "piecing, to piece, sewing it together"},
			{Concept: quiltingWord, Words: "quilting, quilted, machine quilting, longarm, longarming, to quilt it, edge to edge, free motion, quilt it, hand quilting"},
		},
		Says: says(named, threadWord),
		Inputs: []input{
			quiltSize(),
			{name: "seam_length", kind: aLength, usual: [2]float64{20, 5000}, after: of(seam), before: of(seam), when: of(seam), label: "the length of seam"},
			{name: "spool", kind: aLength, anyUnit: true, usual: [2]float64{2000, 250000}, after: of(threadWord), before: of(threadWord), label: "what is on a spool"},
			{name: "use", kind: aWord, words: map[words.Concept]string{piecingWord: "piecing", quiltingWord: "quilting"}},
		},
		Needs:    [][]string{{"quilt", "seam_length"}},
		Examples: []string{"thread for quilting 60 x 72", "thread for piecing a 50 x 60 quilt"},
		Source:   "a rule of thumb: common practice, no source; a lockstitch takes 2½ to 3 times its seam, from memory.",
		Work:     workThread,
	}
}

func workThread(w *work) error {
	r := calc.ThreadRequest{Conventions: w.conventions(), Spool: max(w.length("spool"), 0), Bobbin: calc.DefaultBobbin, Use: calc.QuiltingThread, Seam: w.length("seam_length")}
	if r.Spool == 0 {
		r.Spool = calc.DefaultSpool
		w.assume("spool", r.Spool)
	}
	if v, ok := w.value("quilt"); ok {
		r.Quilt, w.size = v.Size, v.Size
	}
	if w.word("use") == "piecing" {
		r.Use = calc.PiecingThread
	}
	t, err := calc.Thread(r)
	if err != nil {
		return err
	}
	metres := func(l measure.Length) float64 { return l.RoundUp(measure.Metre).In(measure.Metre) }
	w.assume("use", string(r.Use))
	w.reply.Figures = append(w.reply.Figures,
		Figure{"metres", metres(t.High), "m", trimmed(metres(t.High), 0) + " m"},
		Figure{"metres_low", metres(t.Low), "m", trimmed(metres(t.Low), 0) + " m"})
	w.figure("spools", t.Spools)
	w.figure("bobbins", t.BobbinsHigh)
	w.say("%s to %s m for %s, top and bobbin together: %v of %s m.", trimmed(metres(t.Low), 0), trimmed(metres(t.High), 0), string(r.Use), counted(t.Spools, "spool"), trimmed(metres(r.Spool), 0))
	w.say("Half of it goes into bobbins: wind %v to be safe.", counted(t.BobbinsHigh, "bobbin"))
	w.say("This is a rule of thumb; dense quilting takes more, and nothing published is dependable.")
	w.show(t.Working)
	return nil
}
