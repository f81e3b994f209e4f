package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
)

// widestCotton is the widest that quilting cotton is sold, usable: a width
// beyond it is no help to mention. Source: formulas, 40 to 44 in.
const widestCotton = 44 * measure.Inch

// enoughCloth says first whether the fabric in hand is enough, where some was
// named: yes or no, and what is spare or short.
func (w *work) enoughCloth(c calc.ClothCheck) {
	if !c.Given {
		return
	}
	w.figure("have", measure.Cloth(c.Have))
	if c.Enough {
		w.figure("enough", "yes")
		w.figure("spare", c.Spare)
		w.say("Yes, %v is enough, with %v to spare.", measure.Cloth(c.Have), c.Spare)
		return
	}
	w.figure("enough", "no")
	w.figure("short", c.Short)
	w.say("No, %v is %v short.", measure.Cloth(c.Have), c.Short)
}

// enoughCount says first whether a number of things in hand is enough.
func (w *work) enoughCount(c calc.CountCheck, noun string) {
	if !c.Given {
		return
	}
	w.figure("have", c.Have)
	if c.Enough {
		w.figure("enough", "yes")
		w.figure("spare", c.Spare)
		if c.Spare == 0 {
			w.say("Yes, %v are exactly enough.", counted(c.Have, noun))
			return
		}
		w.say("Yes, %v will do, with %v to spare.", counted(c.Have, noun), c.Spare)
		return
	}
	w.figure("enough", "no")
	w.figure("short", c.Short)
	w.say("No, %v will not do: %v short.", counted(c.Have, noun), counted(c.Short, noun))
}

// enoughStrips says whether strips in hand are enough, and by what length they
// miss where they are not.
func (w *work) enoughStrips(c calc.CountCheck, lacking measure.Length) {
	if c.Given && !c.Enough && lacking > 0 {
		w.figure("have", c.Have)
		w.figure("enough", "no")
		w.figure("short", c.Short)
		w.say("No, %v will not do: %v short.", counted(c.Have, "strip"), lacking)
		return
	}
	w.enoughCount(c, "strip")
}
