package config

// setting is one row of the table: a key, its default as a person would write
// it, what is allowed, and how a written value gets into the [Config].
type setting struct {
	key      string
	fallback string
	allowed  string // the end of "it must be ..."
	secret   bool
	read     func(written string) error // any error means: not allowed
}

// settings is the table of everything that can be set; reading a row fills c.
// The defaults are those of the trade, as README lists them.
func (c *Config) settings() []setting {
	rows := []setting{
		text("shop.name", "", &c.Shop.Name),
		text("shop.address", "", &c.Shop.Address),
		text("shop.contact", "", &c.Shop.Contact),
		text("shop.classes", "", &c.Shop.Classes),
		timeZone("shop.time_zone", "Local", &c.Shop.TimeZone),
	}
	for day := range c.Shop.Open {
		rows = append(rows, hours("shop.open."+weekday(day), "", &c.Shop.Open[day]))
	}
	rows = append(rows,
		choice("work.system", "inches", &c.Work.System, systems),
		choice("work.country", "US", &c.Work.Country, countries),
		choice("work.paper", "A4", &c.Work.Letter, yesNo("letter", "A4")),

		length("fabric.usable_width", "40 in", "10 in", "130 in", &c.Fabric.UsableWidth),
		length("fabric.wide_backing", "106 in", "60 in", "130 in", &c.Fabric.WideBacking),
		ownSize("fabric.fat_quarter", "18 x 21 in", "6 in", "130 in", &c.Fabric.FatQuarter),
		ownSize("fabric.fat_quarter_metric", "50 x 52 cm", "15 cm", "330 cm", &c.Fabric.FatQuarterMetric),
		ownSize("fabric.long_quarter", "9 x 42 in", "3 in", "130 in", &c.Fabric.LongQuarter),
		ownSize("fabric.fat_eighth", "9 x 21 in", "3 in", "130 in", &c.Fabric.FatEighth),
		length("fabric.precut_strip", "2½ in", "½ in", "12 in", &c.Fabric.PrecutStrip),

		length("seams.allowance", "¼ in", "1/16 in", "1 in", &c.Seams.Allowance),
		length("seams.straight_join", "½ in", "0 in", "4 in", &c.Seams.StraightJoin),

		length("rounding.inches.cut", "⅛ in", "1/64 in", "1 in", &c.Rounding.Inches.Cut),
		length("rounding.inches.slack", "1/64 in", "0 in", "1/32 in", &c.Rounding.Inches.Slack),
		length("rounding.inches.limit", "⅛ in", "1/64 in", "1 in", &c.Rounding.Inches.Limit),
		length("rounding.inches.buy", "⅛ yd", "1 in", "1 yd", &c.Rounding.Inches.Buy),
		length("rounding.inches.template", "1/16 in", "1/64 in", "½ in", &c.Rounding.Inches.Template),
		length("rounding.inches.cover", "¼ in", "1/16 in", "1 in", &c.Rounding.Inches.Cover),
		length("rounding.inches.ground", "½ in", "⅛ in", "2 in", &c.Rounding.Inches.Ground),
		length("rounding.metric.cut", "1 mm", "0.1 mm", "2 cm", &c.Rounding.Metric.Cut),
		length("rounding.metric.slack", "0 mm", "0 mm", "1 mm", &c.Rounding.Metric.Slack),
		length("rounding.metric.limit", "1 mm", "0.1 mm", "2 cm", &c.Rounding.Metric.Limit),
		length("rounding.metric.buy", "10 cm", "1 cm", "1 m", &c.Rounding.Metric.Buy),
		length("rounding.metric.template", "1 mm", "0.1 mm", "1 cm", &c.Rounding.Metric.Template),
		length("rounding.metric.cover", "5 mm", "1 mm", "2 cm", &c.Rounding.Metric.Cover),
		length("rounding.metric.ground", "1 cm", "1 mm", "5 cm", &c.Rounding.Metric.Ground),

		length("binding.strip", "2½ in", "¾ in", "6 in", &c.Binding.Strip),
		length("binding.extra", "10 in", "0 in", "40 in", &c.Binding.Extra),
		choice("binding.joined", "diagonal", &c.Binding.Straight, yesNo("straight", "diagonal")),
		length("backing.overage", "4 in", "0 in", "20 in", &c.Backing.Overage),
		length("backing.panel_seam", "½ in", "0 in", "2 in", &c.Backing.PanelSeam),
		choice("borders.corners", "butted", &c.Borders.Mitred, yesNo("mitred", "butted")),
		length("borders.mitre_spare", "2 in", "0 in", "12 in", &c.Borders.MitreSpare),
		choice("blades.end", "plain", &c.Blades.Folded, yesNo("folded", "plain")),
		length("blades.narrow_end", "⅞ in", "½ in", "6 in", &c.Blades.NarrowEnd),
		length("rings.cover_overlap", "¼ in", "0 in", "2 in", &c.Rings.CoverOverlap),
		length("rings.cover_turning", "¼ in", "0 in", "1 in", &c.Rings.CoverTurning),
		length("rings.margin", "2 in", "0 in", "40 in", &c.Rings.Margin),
		length("hexagons.allowance", "¼ in", "⅛ in", "1 in", &c.Hexagons.Allowance),
		choice("sashing.laid", "between", &c.Sashing.Framed, yesNo("framed", "between")),
		choice("sashing.cornerstones", "no", &c.Sashing.Cornerstones, yesNo("yes", "no")),
		choice("geese.at_a_time", "4", &c.Geese.AtATime, []option[int]{{"4", 4}, {"1", 1}}),
		choice("layout.size", "cover", &c.Layout.Within, yesNo("within", "cover")),

		span("conversation.age", "12 hours", "1 minute", "30 days", &c.Conversation.Age),
		count("terminal.history", "500", 0, 10_000, &c.Terminal.History),

		path("storage.sqlite", "counterhand/counterhand.db", &c.Storage.SQLite),
		secret("storage.postgres", &c.Storage.Postgres),
		span("storage.timeout", "1 second", "100 milliseconds", "1 minute", &c.Storage.Timeout),
		span("storage.keep_conversations", "30 days", "1 hour", "3650 days", &c.Storage.KeepConversations),
		span("storage.keep_message_ids", "7 days", "1 hour", "365 days", &c.Storage.KeepMessageIDs),
		span("storage.keep_settings", "730 days", "1 day", "3650 days", &c.Storage.KeepSettings),

		secret("chat.token", &c.Chat.Token),
		choice("chat.listen", "no", &c.Chat.Listen, yesNo("yes", "no")),
		count("chat.shards", "0", 0, 10_000, &c.Chat.Shards),
		count("chat.shards_here", "0", 0, 10_000, &c.Chat.ShardsHere),
		publicKey("chat.public_key", "", &c.Chat.PublicKey),
		address("web.address", "", &c.Web.Address),
		choice("log.level", "info", &c.Log.Level, levels),
		choice("log.format", "text", &c.Log.JSON, yesNo("json", "text")),
	)
	return rows
}
