package words

import (
	_ "embed" // the list of common words
	"maps"
	"slices"
	"strings"
)

// english is a list of common English words, one a line, sorted: words that
// are never taken for a slip of the trade's own. Its source and licence stand
// in ENGLISH-LICENSE.txt.
//
//go:embed english.txt
var english string

func commonEnglish() []string { return strings.Split(strings.TrimSpace(english), "\n") }

// Shortest words that are mended: in shorter ones a slip changes too much.
const (
	mendFrom      = 4 // one slip
	mendTwiceFrom = 8 // two slips
)

// loosest is the fewest letters of a common English word that may be taken for
// a slip, see [Vocabulary.ReadLoosely].
const loosest = 6

// mend corrects the spelling of a word towards the vocabulary, and marks what
// is known. Words that are common English are not changed, unless the reading
// is a loose one.
func (v *Vocabulary) mend(t *Token, loosely bool) {
	if t.Kind != Word || t.Word[0] <= '9' {
		return
	}
	if v.plain[t.Word] || v.isEnglish(t.Word) && !(loosely && len(t.Word) >= loosest) {
		t.Known = true
		return
	}
	if w, ok := v.nearest(t.Word); ok {
		t.Word, t.Mended, t.Known = w, true, true
	}
}

func (v *Vocabulary) isEnglish(w string) bool {
	_, ok := slices.BinarySearch(v.english, w)
	return ok
}

// deletions maps every form of a word with one letter dropped, and the word
// itself, to the words it may stand for, so that a slip is found by a look-up
// (deleting a letter on both sides meets at insertions, drops, swaps and wrong
// letters alike).
func deletions(plain map[string]bool) map[string][]string {
	m := make(map[string][]string, 8*len(plain))
	for _, w := range slices.Sorted(maps.Keys(plain)) { // in order, so that the same slip is always mended alike
		if len(w) < mendFrom {
			continue
		}
		m[w] = append(m[w], w)
		for i := range w {
			if i > 0 && w[i] == w[i-1] {
				continue // the same as without the one before
			}
			short := w[:i] + w[i+1:]
			m[short] = append(m[short], w)
		}
	}
	return m
}

// nearest gives the word of the vocabulary that w is most likely a slip of:
// one slip in words of four letters and more, two in those of eight and more if
// one letter left out of each makes them alike.
// Of equally near words the one that shares more of its beginning and end is
// taken, and neither where that is equal too.
func (v *Vocabulary) nearest(w string) (string, bool) {
	if len(w) < mendFrom || len(w) > 24 {
		return "", false
	}
	best, bestAt, bestShared, tie := "", 3, 0, false
	consider := func(candidate string) {
		if candidate == best {
			return
		}
		d := slips(w, candidate)
		allowed := 1
		if min(len(w), len(candidate)) >= mendTwiceFrom {
			allowed = 2
		}
		// The first letter is rarely the wrong one, save by a swap.
		if d > allowed || w[0] != candidate[0] && (len(w) < 2 || w[1] != candidate[0]) {
			return
		}
		shared := ends(w, candidate)
		switch {
		case d < bestAt, d == bestAt && shared > bestShared:
			best, bestAt, bestShared, tie = candidate, d, shared, false
		case d == bestAt && shared == bestShared && !v.sameWord(candidate, best):
			tie = true
		}
	}
	for _, c := range v.nearby()[w] {
		consider(c)
	}
	for i := range w {
		short := w[:i] + w[i+1:]
		for _, c := range v.nearby()[short] {
			consider(c)
		}
	}
	return best, best != "" && !tie
}

// swapped is how much likelier a word is whose letters are only in another
// order: swapping two is the commonest slip of all.
const swapped = 4

// sameLetters tells whether two words are written with the same letters.
func sameLetters(a, b string) bool {
	var count [26]int
	for i := range len(a) {
		if c := a[i] | 0x20; c >= 'a' && c <= 'z' {
			count[c-'a']++
		}
	}
	for i := range len(b) {
		if c := b[i] | 0x20; c >= 'a' && c <= 'z' {
			count[c-'a']--
		}
	}
	return len(a) == len(b) && count == [26]int{}
}

// ends counts the letters that two words share at their beginning and end; more
// where they are made of the same letters.
func ends(a, b string) int {
	n := min(len(a), len(b))
	front := 0
	for front < n && a[front] == b[front] {
		front++
	}
	back := 0
	for back < n-front && a[len(a)-1-back] == b[len(b)-1-back] {
		back++
	}
	if sameLetters(a, b) {
		return 2*front + back + swapped
	}
	return 2*front + back
}

// sameWord tells whether two words are forms of one, or mean the same.
func (v *Vocabulary) sameWord(a, b string) bool {
	if stem(a) == stem(b) {
		return true
	}
	x, y := v.root.next[a], v.root.next[b]
	return x != nil && y != nil && x.concept != "" && x.concept == y.concept
}

// stem takes the plural off, so that two forms of one word do not tie.
func stem(w string) string { return strings.TrimSuffix(strings.TrimSuffix(w, "s"), "'") }

// slips counts the letters dropped, added, changed or swapped with their
// neighbour between a and b (the optimal string alignment distance), up to 3.
func slips(a, b string) int {
	if d := len(a) - len(b); d > 2 || d < -2 {
		return 3
	}
	var rows [3][26]int
	if len(b) >= len(rows[0]) {
		return 3
	}
	before, last, now := &rows[0], &rows[1], &rows[2]
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return min(last[len(b)], 3)
}
