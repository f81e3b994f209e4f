package commands

import "counterhand/commands/scene"

// draws offers a picture with the answer. It is built only when somebody wants
// to see it, so it must not change what the topic works with.
func (w *work) draws(s scene.Source) { w.reply.Scenes = append(w.reply.Scenes, s) }

// prints offers templates in true size, likewise.
func (w *work) prints(t scene.TemplateSource) { w.reply.Templates = append(w.reply.Templates, t) }
