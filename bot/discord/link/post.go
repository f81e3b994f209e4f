package link

import (
	"bytes"
	"crypto/sha256"
	"encoding/base32"
	"encoding/json"
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/bwmarrin/discordgo"
)

// Limits of the platform, in code points where they are about text.
const (
	MaxText    = 2000
	MaxCarried = 100 // what a button carries
	MaxFile    = 10 << 20
	maxFiles   = 10
	maxAlt     = 1024
	maxLabel   = 80
	maxButtons = 25
	perRow     = 5

	maxTitle     = 256
	maxLines     = 25
	maxLineName  = 256
	maxLineValue = 1024
	maxCard      = 6000
)

// Post is something to send. Whatever stands in it, it pings nobody.
type Post struct {
	Text    string
	Card    *Card
	Files   []File
	Buttons []Button
	Answers MessageID // the message replied to, if any
	Private bool      // for the eyes of the person who acted; interactions only
}

// Card is a frame with a few figures and perhaps a picture. It may only add to
// the text: some people see no cards.
type Card struct {
	Title   string
	Lines   []Line
	Picture string // name of one of the post's files, if any
}

// Line is one figure of a card.
type Line struct{ Name, Value string }

// File is an attachment.
type File struct {
	Name string
	Type string // media type
	Alt  string // what it shows, in words
	Data []byte
}

// Button is a next step to offer.
type Button struct {
	Label   string
	Carries string // comes back when it is pressed; at most MaxCarried long
}

// ErrEmpty is a post with nothing in it.
var ErrEmpty = errors.New("nothing to send")

// ErrTooLong is a post whose text is over the platform's limit; it is for the
// caller to decide what is left out.
var ErrTooLong = errors.New("text is too long to send")

// body is everything that is ever sent as a message: new, edited, or as the
// answer to an interaction. There is one type, so that nothing can leave without
// its allowed_mentions.
type body struct {
	Content     string                           `json:"content"`
	Embeds      []*discordgo.MessageEmbed        `json:"embeds"`
	Components  []discordgo.MessageComponent     `json:"components"`
	Attachments []attachment                     `json:"attachments"`
	Mentions    discordgo.MessageAllowedMentions `json:"allowed_mentions"`
	Reference   *discordgo.MessageReference      `json:"message_reference,omitempty"`
	Flags       discordgo.MessageFlags           `json:"flags,omitempty"`
	Nonce       string                           `json:"nonce,omitempty"`
	Once        bool                             `json:"enforce_nonce,omitempty"`
}

type attachment struct {
	ID          string `json:"id"` // number of the part with the file
	Filename    string `json:"filename"`
	Description string `json:"description,omitempty"`
}

// body turns the post into what is sent. Parts over a limit that are only
// additions (card, files, buttons) are left out; the text never is.
func (p Post) body() (body, []File, error) {
	if utf8.RuneCountInString(p.Text) > MaxText {
		return body{}, nil, ErrTooLong
	}
	files := p.attachable()
	b := body{
		Content:     p.Text,
		Embeds:      []*discordgo.MessageEmbed{},
		Components:  rows(p.Buttons),
		Attachments: []attachment{},
		Mentions:    discordgo.MessageAllowedMentions{Parse: []discordgo.AllowedMentionType{}},
	}
	for n, f := range files {
		b.Attachments = append(b.Attachments, attachment{ID: strconv.Itoa(n), Filename: f.Name, Description: cut(f.Alt, maxAlt)})
	}
	if p.Card.fits() {
		b.Embeds = append(b.Embeds, p.Card.embed(files))
	}
	if strings.TrimSpace(b.Content) == "" && len(b.Embeds) == 0 && len(files) == 0 {
		return body{}, nil, ErrEmpty
	}
	if p.Private {
		b.Flags = discordgo.MessageFlagsEphemeral
	}
	return b, files, nil
}

func (p Post) attachable() []File {
	var files []File
	for _, f := range p.Files {
		if len(f.Data) > 0 && len(f.Data) <= MaxFile && len(files) < maxFiles {
			files = append(files, f)
		}
	}
	return files
}

func (c *Card) fits() bool {
	if c == nil || len(c.Lines) > maxLines || len(c.Lines) == 0 && c.Picture == "" {
		return false
	}
	sum := utf8.RuneCountInString(c.Title)
	if sum > maxTitle {
		return false
	}
	for _, l := range c.Lines {
		name, value := utf8.RuneCountInString(l.Name), utf8.RuneCountInString(l.Value)
		if name == 0 || value == 0 || name > maxLineName || value > maxLineValue {
			return false
		}
		sum += name + value
	}
	return sum <= maxCard
}

func (c *Card) embed(files []File) *discordgo.MessageEmbed {
	e := &discordgo.MessageEmbed{Title: c.Title}
	for _, l := range c.Lines {
		e.Fields = append(e.Fields, &discordgo.MessageEmbedField{Name: l.Name, Value: l.Value, Inline: true})
	}
	for _, f := range files {
		if f.Name == c.Picture {
			e.Image = &discordgo.MessageEmbedImage{URL: "attachment://" + f.Name}
		}
	}
	return e
}

func rows(buttons []Button) []discordgo.MessageComponent {
	list := []discordgo.MessageComponent{}
	var row discordgo.ActionsRow
	for n, b := range buttons[:min(len(buttons), maxButtons)] {
		row.Components = append(row.Components, discordgo.Button{
			Label:    cut(b.Label, maxLabel),
			Style:    discordgo.SecondaryButton,
			CustomID: b.Carries,
		})
		if len(row.Components) == perRow || n == len(buttons)-1 {
			list, row = append(list, row), discordgo.ActionsRow{}
		}
	}
	return list
}

// encode gives the request body of v and its content type. Files go beside it
// as parts of their own.
func encode(v any, files []File) (contentType string, data []byte, err error) {
	if len(files) == 0 {
		data, err = json.Marshal(v)
		return "application/json", data, err
	}
	parts := make([]*discordgo.File, len(files))
	for n, f := range files {
		parts[n] = &discordgo.File{Name: f.Name, ContentType: f.Type, Reader: bytes.NewReader(f.Data)}
	}
	return discordgo.MultipartBodyWithJSON(v, parts)
}

// nonce makes the mark by which the platform knows a repeated send: equal keys
// give equal marks.
func nonce(key string) string {
	sum := sha256.Sum256([]byte(key))
	return base32.HexEncoding.WithPadding(base32.NoPadding).EncodeToString(sum[:15]) // 24 of the 25 characters allowed
}

func cut(s string, max int) string {
	if utf8.RuneCountInString(s) <= max {
		return s
	}
	return string([]rune(s)[:max])
}
