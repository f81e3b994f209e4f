package main

import (
	"counterhand/calc"
	"counterhand/commands"
	"counterhand/config"
)

// defaults hands the shop's habits to the assistant, each under the name that
// an answer gives it.
func defaults(c config.Config) commands.Defaults {
	d := commands.ShopDefaults()
	d.System = c.Work.System
	d.Inches = steps(d.Inches, c.Rounding.Inches)
	d.Inches.Cuts = calc.ReadyCuts{FatQuarter: c.Fabric.FatQuarter, LongQuarter: c.Fabric.LongQuarter, FatEighth: c.Fabric.FatEighth}
	d.Metric = steps(d.Metric, c.Rounding.Metric)
	d.Metric.Cuts = calc.ReadyCuts{FatQuarter: c.Fabric.FatQuarterMetric, LongQuarter: c.Fabric.LongQuarter, FatEighth: c.Fabric.FatEighth}
	d.Lengths["usable_width"] = c.Fabric.UsableWidth
	d.Lengths["wide_backing"] = c.Fabric.WideBacking
	d.Lengths["precut_strip"] = c.Fabric.PrecutStrip
	d.Lengths["seam"] = c.Seams.Allowance
	d.Lengths["straight_join"] = c.Seams.StraightJoin
	d.Lengths["panel_seam"] = c.Backing.PanelSeam
	d.Lengths["binding_strip"] = c.Binding.Strip
	d.Lengths["binding_extra"] = c.Binding.Extra
	d.Lengths["overage"] = c.Backing.Overage
	d.Lengths["mitre_spare"] = c.Borders.MitreSpare
	d.Lengths["narrow_end"] = c.Blades.NarrowEnd
	d.Lengths["cover_overlap"] = c.Rings.CoverOverlap
	d.Lengths["turn_under"] = c.Rings.CoverTurning
	d.Lengths["margin"] = c.Rings.Margin
	d.Lengths["hexagon_allowance"] = c.Hexagons.Allowance
	d.Words["country"] = c.Work.Country
	d.Words["joins"] = chosen(c.Binding.Straight, "straight", "diagonal")
	d.Words["corners"] = chosen(c.Borders.Mitred, "mitred", "butted")
	d.Words["stones"] = chosen(c.Sashing.Cornerstones, "cornerstones", "plain")
	d.Words["outside"] = chosen(c.Sashing.Framed, "framed", "inner")
	d.Words["geese"] = chosen(c.Geese.AtATime == 1, "singly", "four")
	d.Words["blocks_that"] = chosen(c.Layout.Within, "within", "cover")
	d.Words["ends"] = chosen(c.Blades.Folded, "folded", "plain")
	d.Facts["name"] = c.Shop.Name
	d.Facts["hours"] = c.Shop.Week()
	d.Facts["address"] = c.Shop.Address
	d.Facts["contact"] = c.Shop.Contact
	d.Facts["classes"] = c.Shop.Classes
	return d
}

// steps sets what results are rounded to.
func steps(c calc.Conventions, s config.Steps) calc.Conventions {
	c.CutStep, c.CutSlack, c.LimitStep, c.BuyStep = s.Cut, s.Slack, s.Limit, s.Buy
	c.TemplateStep, c.CoverStep, c.GroundStep = s.Template, s.Cover, s.Ground
	return c
}

// chosen gives one of two words.
func chosen(first bool, yes, no string) string {
	if first {
		return yes
	}
	return no
}
