package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	flatSides   words.Concept = "flat to flat"
	pointSides  words.Concept = "point to point"
	rosetteWord words.Concept = "rosette"
	paperWord   words.Concept = "paper"
)

// hexagonsTopic: hexagons by the side of their paper.
func hexagonsTopic() Topic {
	return Topic{
		Name: "hexagons", Group: SizeIt, Title: "hexagons: their sizes, the patches to cut, and how many fill a quilt",
		Terms: []words.Term{
			{Concept: flatSides, Words: "flat to flat, flat side to flat side, across the flats, between flat sides, between the flat sides, edge to edge of a hexagon, flats, between flats"},
			{Concept: pointSides, Words: "point to point, tip to tip, corner to corner, across the points, between the points"},
			{Concept: rosetteWord, Words: "rosette, flower, grandmother's flower garden, ring of hexagons, hexagon flower"},
			{Concept: paperWord, Words: "paper, papers, epp, english paper piecing, paper piecing, paper pieced, hand pieced"},
		},
		Says: append(says(12, hexagon), says(4, rosetteWord, flatSides, pointSides)...),
		Inputs: []input{
			{name: "side", kind: aLength, usual: [2]float64{0.25, 6}, prior: 5, after: of(hexagon, sideOfIt, paperWord, eachSide), before: of(hexagon, sideOfIt, paperWord), not: of(flatSides, pointSides, allowanceWd), label: "the side of the hexagon",
				ask: "How long is one side of the hexagon, as its paper is sold?", offer: []string{"1 in", "¾ in"}},
			{name: "flat_to_flat", kind: aLength, usual: [2]float64{0.5, 12}, after: of(flatSides), before: of(flatSides), label: "flat side to flat side"},
			{name: "point_to_point", kind: aLength, usual: [2]float64{0.5, 12}, after: of(pointSides), before: of(pointSides), label: "point to point"},
			quiltSize(),
			{name: "rings", kind: aCount, usual: [2]float64{1, 12}, after: of(ring, roundOf, row, rosetteWord, circle), when: of(rosetteWord, ring, circle), label: "the rings round the middle"},
			{name: "hexagons", kind: aCount, usual: [2]float64{5, 5000}, after: of(hexagon), before: of(need), label: "how many hexagons"},
			{name: "allowance", kind: aLength, usual: [2]float64{0.2, 0.6}, after: of(seam, allowanceWd), before: of(seam), label: "the allowance"},
			usableWidth(),
		},
		Needs:    [][]string{{"side", "flat_to_flat", "point_to_point", "rings"}},
		Examples: []string{"1 in hexagons for 40 x 50", "hexagon rosette of 3 rings, how many"},
		Source:   "a hexagon of side a is √3·a from flat to flat and 2a from point to point (geometry; scissortailquilting.com for the name of its size).",
		Work:     workHexagons,
	}
}

const allowanceWd words.Concept = "fabric beyond the paper"

func workHexagons(w *work) error {
	r := calc.HexagonRequest{
		Side: w.length("side"), FlatToFlat: w.length("flat_to_flat"), PointToPoint: w.length("point_to_point"),
		Rings: w.count("rings"), Hexagons: w.count("hexagons"),
	}
	if r.Side == 0 && r.FlatToFlat == 0 && r.PointToPoint == 0 {
		n := calc.RosetteCount(min(r.Rings, 1000))
		w.figure("count", n)
		w.say("%v hexagons: one in the middle and %v round it.", n, counted(r.Rings, "ring"))
		return nil
	}
	parts := []string(nil)
	if v, ok := w.value("quilt"); ok {
		r.Quilt, w.size = v.Size, v.Size
		parts = append(parts, "usable_width")
	}
	r.Conventions = w.conventions(parts...)
	r.Allowance = w.lengthOr("allowance", "hexagon_allowance")
	h, err := calc.Hexagons(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Hexagon(h, r.System) })
	w.prints(func() scene.Templates { return scene.HexagonTemplates(h, r.System) })
	if h.Cover != nil {
		w.draws(func() scene.Scene { return scene.HexagonQuilt(h, r.System) })
	}
	w.figure("side", h.Exact.Side)
	w.figure("flat_to_flat", h.Exact.FlatToFlat)
	w.figure("point_to_point", h.Exact.PointToPoint)
	w.figure("patch_width", h.PatchWidth)
	w.figure("patch_height", h.PatchHeight)
	if h.Count > 0 {
		w.figure("count", h.Count)
		if h.Cloth.Buy > 0 {
			w.figure("buy", h.Cloth.Buy)
		}
	}
	if c := h.Cover; c != nil {
		way := "side by side"
		if c.PointsUp {
			way = "standing on their points"
		}
		w.say("%v hexagons: %v rows of %v, %s, fill %v.", h.Count, c.Rows, c.PerRow, way, r.Quilt)
		w.say("If all four edges are trimmed straight it takes %v to cover it.", c.ToTrim)
	} else if h.Count > 0 {
		w.say("%v hexagons.", h.Count)
	}
	w.say("Each is %v a side, %v from flat side to flat side and %v from point to point.", h.Exact.Side, h.Exact.FlatToFlat, h.Exact.PointToPoint)
	w.say("Cut the fabric %v by %v; a square of %v does as well.", h.PatchWidth, h.PatchHeight, max(h.PatchWidth, h.PatchHeight))
	if r.Side > 0 {
		w.say("I took %v as the side, which is how papers are sold.", r.Side)
	}
	if h.Count > 0 && h.Cloth.Buy > 0 {
		w.say("From strips of %v it takes %v.", h.StripWidth, h.Cloth.Buy)
	}
	w.show(h.Working)
	w.does(cutting, handSewing)
	return nil
}
