package discord

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterhand/bot/discord/link"
	"counterhand/commands"
)

// cardFrom is the number of figures from which a card is easier to read at the
// cutting table than a sentence.
const cardFrom = 3

// maxPictures is how many pictures an answer carries: more would push the
// words off a phone's screen.
const maxPictures = 2

const restInFile = "\n… The whole of it is in the file."

// compose turns a reply into a post for the person who asked.
func (s *Surface) compose(reply commands.Reply, person link.UserID) link.Post {
	text := escape(reply.Text)
	p := link.Post{Buttons: s.buttons(reply, person)}
	if utf8.RuneCountInString(text) > link.MaxText {
		p.Files = append(p.Files, link.File{Name: "answer.txt", Type: "text/plain; charset=utf-8", Alt: "The whole answer as text", Data: []byte(reply.Text)})
		text = shorten(text, link.MaxText-utf8.RuneCountInString(restInFile)) + restInFile
	}
	p.Text = text
	for _, f := range reply.Files {
		p.Files = append(p.Files, link.File{Name: fileName(f.Name), Type: f.Type, Data: f.Data})
	}
	pictures := s.pictures(reply)
	p.Files = append(p.Files, pictures...)
	if reply.ToPrint {
		p.Files = append(p.Files, s.sheets(reply)...)
	}
	p.Card = card(reply, pictures)
	return p
}

// pictures draws what goes with the answer. An answer without its picture is
// still an answer.
func (s *Surface) pictures(reply commands.Reply) []link.File {
	if s.cfg.Draw == nil {
		return nil
	}
	var files []link.File
	for _, source := range reply.Scenes[:min(len(reply.Scenes), maxPictures)] {
		scene := source()
		data, err := s.cfg.Draw(scene)
		if err != nil {
			s.log.Warn("picture cannot be drawn", "topic", reply.Topic, "error", err)
			continue
		}
		files = append(files, link.File{Name: fileName(scene.Name + ".png"), Type: "image/png", Alt: scene.Alt, Data: data})
	}
	return files
}

// sheets makes what there is to print: the cutting sheet and templates in true
// size. What cannot be made is left out.
func (s *Surface) sheets(reply commands.Reply) []link.File {
	if s.cfg.Print == nil {
		return nil
	}
	made, err := s.cfg.Print(reply)
	if err != nil {
		s.log.Warn("not everything can be printed", "topic", reply.Topic, "error", err)
	}
	files := make([]link.File, len(made))
	for i, f := range made {
		files[i] = link.File{Name: fileName(f.Name), Type: f.Type, Alt: f.Alt, Data: f.Data}
	}
	return files
}

// card shows the figures in a frame, with the first picture. It repeats what the
// text says: some people see no cards.
func card(reply commands.Reply, pictures []link.File) *link.Card {
	if reply.Outcome != commands.Answer || len(reply.Figures) < cardFrom && len(pictures) == 0 {
		return nil
	}
	c := &link.Card{Title: capital(strings.ReplaceAll(reply.Topic, "-", " "))}
	if len(reply.Figures) >= cardFrom {
		for _, f := range reply.Figures {
			if f.Shown != "" {
				c.Lines = append(c.Lines, link.Line{Name: figureName(f.Name), Value: escape(f.Shown)})
			}
		}
	}
	if len(pictures) > 0 {
		c.Picture = pictures[0].Name
	}
	return c
}

// figureName turns "border1.side_cut" into "border 1, side cut".
func figureName(name string) string {
	name = strings.NewReplacer("_", " ", ".", ", ").Replace(name)
	var b strings.Builder
	last := ' '
	for _, r := range name {
		if unicode.IsDigit(r) && unicode.IsLetter(last) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		last = r
	}
	return escape(b.String())
}

// fileName keeps to letters that every platform and embed address takes.
func fileName(name string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '.', r == '-':
			return r
		case r >= 'A' && r <= 'Z':
			return unicode.ToLower(r)
		}
		return '-'
	}, name)
	clean = strings.Trim(clean, "-.")
	if clean == "" {
		return "file"
	}
	return clean
}

// escape makes a text show as it is: nothing in it is taken for formatting, a
// mention, a link with other words, or a time. Addresses stay whole, as an
// escape inside one would break it.
func escape(text string) string {
	var b bytes.Buffer
	lineStart := true
	for len(text) > 0 {
		if n := addressLength(text); n > 0 {
			b.WriteString(text[:n])
			text, lineStart = text[n:], false
			continue
		}
		r, size := utf8.DecodeRuneInString(text)
		if strings.ContainsRune(`\*_~|<[`+"`", r) || lineStart && strings.ContainsRune(">#-", r) {
			b.WriteByte('\\')
		}
		b.WriteString(text[:size])
		text = text[size:]
		lineStart = r == '\n' || lineStart && unicode.IsSpace(r)
	}
	return b.String()
}

// addressLength gives the length of the web address with which the text begins.
func addressLength(text string) int {
	if !strings.HasPrefix(text, "https://") && !strings.HasPrefix(text, "http://") {
		return 0
	}
	if n := strings.IndexFunc(text, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("<>|*`\\()[]", r) }); n >= 0 {
		return n
	}
	return len(text)
}

// shorten cuts a text to at most max code points: after a line if possible,
// else after a word, and never inside a letter that is made of several.
func shorten(text string, max int) string {
	if utf8.RuneCountInString(text) <= max {
		return text
	}
	runes := []rune(text)[:max]
	head := string(runes)
	for _, mark := range []string{"\n", " "} {
		if n := strings.LastIndex(head, mark); n > len(head)/2 {
			return strings.TrimRightFunc(head[:n], unicode.IsSpace)
		}
	}
	next := []rune(text)[max]
	for len(runes) > 0 && (joins(next) || joins(runes[len(runes)-1]) || runes[len(runes)-1] == '\\') {
		next = runes[len(runes)-1]
		runes = runes[:len(runes)-1]
	}
	return string(runes)
}

// joins reports whether a code point belongs to the letter before it.
func joins(r rune) bool {
	const joiner, lastVariation, firstVariation = '\u200d', '\ufe0f', '\ufe00'
	return unicode.Is(unicode.M, r) || r == joiner || r >= firstVariation && r <= lastVariation ||
		r >= 0x1F3FB && r <= 0x1F3FF || r >= 0x1F1E6 && r <= 0x1F1FF
}
