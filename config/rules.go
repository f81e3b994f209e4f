package config

import (
	"fmt"
	"strconv"

	"counterhand/calc/measure"
)

// rule is what must hold between two settings.
type rule struct {
	broken bool
	fault  error
}

// rules are checked once every single value is allowed.
func (c *Config) rules() []rule {
	seams := 2 * c.Seams.Allowance
	rules := []rule{
		mustExceed("binding.strip", c.Binding.Strip, seams, "twice seams.allowance"),
		mustExceed("fabric.usable_width", c.Fabric.UsableWidth, c.Binding.Strip, "binding.strip"),
		mustExceed("fabric.wide_backing", c.Fabric.WideBacking, c.Fabric.UsableWidth, "fabric.usable_width"),
		mustExceed("rounding.inches.cut", c.Rounding.Inches.Cut, c.Rounding.Inches.Slack, "rounding.inches.slack"),
		mustExceed("rounding.metric.cut", c.Rounding.Metric.Cut, c.Rounding.Metric.Slack, "rounding.metric.slack"),
		mustExceed("fabric.precut_strip", c.Fabric.PrecutStrip, seams, "twice seams.allowance"),
	}
	rules = append(rules, rule{c.Chat.PublicKey != "" && c.Web.Address == "", Fault{
		Key: "web.address", Value: c.Web.Address, Source: "compared with another setting",
		Allowed: "set where chat.public_key is, since interactions then arrive by HTTP",
	}}, rule{c.Chat.Shards > 0 && c.Chat.ShardsHere > c.Chat.Shards, Fault{
		Key: "chat.shards_here", Value: strconv.Itoa(c.Chat.ShardsHere), Source: "compared with another setting",
		Allowed: fmt.Sprintf("at most chat.shards, which is %d", c.Chat.Shards),
	}})
	return rules
}

// mustExceed makes the rule that one length is longer than another.
func mustExceed(key string, l, least measure.Length, name string) rule {
	return rule{l <= least, Fault{
		Key: key, Value: l.Show(measure.Imperial), Source: "compared with another setting",
		Allowed: fmt.Sprintf("more than %s, which is %s", name, least.Show(measure.Imperial)),
	}}
}
