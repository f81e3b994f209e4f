// Package scene describes pictures as values: shapes in real lengths, labels,
// and the words for those who cannot see them. Nothing is drawn here; a scene
// is the same whatever it is later written to.
package scene

// Scene is one picture.
type Scene struct {
	Title string // short, also the file's name
	Alt   string // what matters in it, in words
}
