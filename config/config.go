// Package config holds everything that a shop may set, with the default, the
// range and the unit of each.
//
// Values come from a file in YAML, from the environment and from the command
// line, each stronger than the one before. A value that [Load] gives is
// complete and valid; where it cannot be, the error is [Faults] and names every
// fault at once, each with its key, its value and what is allowed. Keys that
// are not in the table are refused, so that a slip of the pen is never taken
// for the default.
//
// The package only reads. What a setting means is decided by the package that
// it is handed to, as a plain value.
package config

import (
	"log/slog"
	"time"

	"counterhand/calc/measure"
)

// Config is a whole configuration.
type Config struct {
	Shop         Shop
	Work         Work
	Fabric       Fabric
	Seams        Seams
	Rounding     Rounding
	Binding      Binding
	Backing      Backing
	Borders      Borders
	Blades       Blades
	Rings        Rings
	Hexagons     Hexagons
	Sashing      Sashing
	Geese        Geese
	Layout       Layout
	Conversation Conversation
	Terminal     Terminal
	Storage      Storage
	Chat         Chat
	Web          Web
	Log          Log
}

// Shop is what people may ask about the shop itself. Empty fields are not known.
type Shop struct {
	Name     string
	Address  string
	Contact  string
	Classes  string
	TimeZone *time.Location
	Open     [7]Hours // by time.Weekday
}

// Work is how people work where nothing else is said.
type Work struct {
	System  measure.System
	Country string // decides mattress sizes and words: one of US, UK, EU, AU
	Letter  bool   // paper is US Letter instead of A4
}

// Fabric is what a shop's cloth and precuts measure, as they can be used; width
// across the fabric first. A size that is zero follows the usable width.
type Fabric struct {
	UsableWidth      measure.Length
	WideBacking      measure.Length
	FatQuarter       measure.Size
	FatQuarterMetric measure.Size // for people who work in metric
	LongQuarter      measure.Size
	FatEighth        measure.Size
	PrecutStrip      measure.Length
}

// Seams are what sewing takes.
type Seams struct {
	Allowance    measure.Length // on each edge
	StraightJoin measure.Length // the whole length that one straight join of strips costs
}

// Rounding holds the steps that results are rounded to in each system.
type Rounding struct{ Inches, Metric Steps }

// Steps are what results are rounded to; the direction is the calculation's.
type Steps struct {
	Cut      measure.Length // cut sizes
	Slack    measure.Length // an overhang below this is dropped from a cut size
	Limit    measure.Length // what a strip, a block or a bed limits
	Buy      measure.Length // cloth
	Template measure.Length // templates and diameters
	Cover    measure.Length // cover circles
	Ground   measure.Length // background squares
}

// Binding is how a quilt's edge is bound.
type Binding struct {
	Strip    measure.Length
	Extra    measure.Length // for corners and the closing tail
	Straight bool           // strips joined straight instead of on the diagonal
}

// Backing is how a quilt's back and filling are reckoned.
type Backing struct {
	Overage   measure.Length // on each side, of the batting too
	PanelSeam measure.Length // on each edge where panels are joined
}

// Borders is how borders are cut.
type Borders struct {
	Mitred     bool           // instead of butted
	MitreSpare measure.Length // at each end of a mitred border
}

// Blades is how wedge blades are cut.
type Blades struct {
	Folded    bool           // a pointed, folded tip instead of a plain end
	NarrowEnd measure.Length // of the template
}

// Rings is how a ring of blades is finished.
type Rings struct {
	CoverOverlap measure.Length // of the cover circle on the blades, all round
	CoverTurning measure.Length // turned under, all round
	Margin       measure.Length // of the background around the ring
}

// Hexagons is how hexagons are pieced over paper.
type Hexagons struct{ Allowance measure.Length } // of fabric beyond the paper

// Sashing is how strips between blocks are laid.
type Sashing struct {
	Framed       bool // around the outside too
	Cornerstones bool
}

// Geese is how flying geese are made: 4 at a time or 1.
type Geese struct{ AtATime int }

// Layout is how blocks are laid where they do not divide the wanted size.
type Layout struct{ Within bool } // stay below the size instead of covering it

// Conversation bounds what is remembered of what was just said.
type Conversation struct {
	Age time.Duration // after this long a follow-up starts anew
}

// Terminal is the conversation in a terminal.
type Terminal struct{ History int } // lines kept; 0 keeps none

// Storage is where settings and conversations are kept, and for how long.
type Storage struct {
	SQLite            string // file; used where Postgres is empty
	Postgres          Secret // address of the database, with its password
	Timeout           time.Duration
	KeepConversations time.Duration
	KeepMessageIDs    time.Duration
	KeepSettings      time.Duration // of a person who was not heard of since
}

// Chat is the account in the group chat. Without a token there is none.
type Chat struct {
	Token      Secret
	Listen     bool   // read messages that begin with a channel's sign; the platform must have granted it
	Shards     int    // over all processes; 0: as many as the platform advises
	ShardsHere int    // that this process takes at most; 0: all
	PublicKey  string // of the application, in hexadecimal: interactions arrive by HTTP; empty: over the connection
}

// Web is what is served by HTTP. Without an address nothing is.
type Web struct{ Address string }

// Log is what the operator reads.
type Log struct {
	Level slog.Level
	JSON  bool
}
