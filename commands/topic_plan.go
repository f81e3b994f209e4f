package commands

import "counterhand/commands/words"

// planTopic: the finishing of a whole quilt, each part answered as its own topic.
func planTopic() Topic {
	return Topic{
		Name: "plan", Group: FinishIt, Title: "a quilt's backing, batting and binding in one go",
		Terms: []words.Term{
			{Concept: plan, Words: "plan, plan my quilt, plan a quilt, plan the quilt, whole quilt, whole project, everything for, all i need for, finish it, finish a, finish my quilt, finish the quilt, everything to finish, what do i need to finish, shopping list"},
		},
		Says:     says(10, plan),
		Inputs:   append([]input{planSize()}, overEachSide(), usableWidth(), wideWidth()),
		Needs:    [][]string{{"quilt"}},
		Examples: []string{"plan a 60 x 72 quilt", "backing, batting and binding for 56 x 70"},
		Source:   "each part by its own rule; ask for backing, batting or binding to see it.",
		Parts:    []string{"backing", "batting", "binding"},
		Work:     func(w *work) error { return w.needs("quilt") },
	}
}

func planSize() input {
	in := quiltSize()
	in.ask = "What size is the quilt, width by length? I then reckon backing, batting and binding together."
	return in
}
