package commands

import "counterhand/commands/words"

// The concepts that several topics use. A topic that needs a term of its own
// declares it in its own file.
const (
	// what is made
	quilt      words.Concept = "quilt"
	block      words.Concept = "block"
	blade      words.Concept = "blade"
	ring       words.Concept = "ring"
	circle     words.Concept = "circle"
	halfRing   words.Concept = "half ring"
	quarterOf  words.Concept = "quarter ring"
	strip      words.Concept = "strip"
	squarePc   words.Concept = "square"
	rectangle  words.Concept = "rectangle"
	triangle   words.Concept = "triangle"
	piece      words.Concept = "piece"
	border     words.Concept = "border"
	perRow     words.Concept = "in each row"
	row        words.Concept = "row"
	hexagon    words.Concept = "hexagon"
	diamond    words.Concept = "diamond"
	unitPc     words.Concept = "unit"
	centre     words.Concept = "centre"
	stripSet   words.Concept = "strip set"
	packOf     words.Concept = "pack"
	stripPack  words.Concept = "strip pack"
	squarePack words.Concept = "square pack"

	// cloth
	fabric       words.Concept = "fabric"
	usable       words.Concept = "usable width"
	wideFabric   words.Concept = "wide backing fabric"
	fatQuarter   words.Concept = "fat quarter"
	fatEighth    words.Concept = "fat eighth"
	longQuarter  words.Concept = "long quarter"
	precut       words.Concept = "precut"
	colour       words.Concept = "colour"
	yardageWord  words.Concept = "yardage"
	oneWay       words.Concept = "one-way print"
	seam         words.Concept = "seam"
	join         words.Concept = "join"
	straightJoin words.Concept = "straight join"

	// sizes
	long        words.Concept = "long"
	wide        words.Concept = "wide"
	high        words.Concept = "high"
	across      words.Concept = "across"
	downward    words.Concept = "down"
	sideOfIt    words.Concept = "side"
	eachSide    words.Concept = "each side"
	allRound    words.Concept = "all round"
	around      words.Concept = "around"
	sizeWord    words.Concept = "size"
	finished    words.Concept = "finished"
	unfinished  words.Concept = "unfinished"
	cutVerb     words.Concept = "cut"
	angleWord   words.Concept = "angle"
	corner      words.Concept = "corner"
	edge        words.Concept = "edge"
	onPoint     words.Concept = "on point"
	straightSet words.Concept = "straight set"
	atATime     words.Concept = "at a time"
	oneAtATime  words.Concept = "one at a time"
	overage     words.Concept = "overage"
	extra       words.Concept = "extra"
	perimeter   words.Concept = "perimeter"
	template    words.Concept = "template"
	narrowEnd   words.Concept = "narrow end"
	wideEnd     words.Concept = "wide end"
	opening     words.Concept = "opening"
	along       words.Concept = "along"
	horizontal  words.Concept = "across the fabric"
	vertical    words.Concept = "along the fabric"

	// asking
	howMany  words.Concept = "how many"
	howMuch  words.Concept = "how much"
	howLong  words.Concept = "how long"
	howWide  words.Concept = "how wide"
	howBig   words.Concept = "how big"
	howFar   words.Concept = "how far"
	longest  words.Concept = "longest"
	largest  words.Concept = "largest"
	buyWord  words.Concept = "buy"
	have     words.Concept = "have"
	enough   words.Concept = "enough"
	need     words.Concept = "need"
	fromWord words.Concept = "from"
	upTo     words.Concept = "to"
	atPrice  words.Concept = "at"
	eachWord words.Concept = "each"
	makeIt   words.Concept = "make"
	divide   words.Concept = "divide"
	plan     words.Concept = "plan"

	// units and numbers
	percentWord words.Concept = "percent"
	moneyWord   words.Concept = "money"
	inMetric    words.Concept = "metric"
	inInches    words.Concept = "inches"
	hearsay     words.Concept = "told"
	otherThing  words.Concept = "something else"
	clothAmount words.Concept = "an amount of fabric" // of numbers, see meaning
	ofThem      words.Concept = "of them"
	canGet      words.Concept = "can I get"
	scrap       words.Concept = "scrap"
)

// baseTerms are the words for the shared concepts.
var baseTerms = []words.Term{
	{Concept: quilt, Words: "quilt, quilt top, top, topper, table topper, table runner, runner, wall hanging, throw, blanket, coverlet, bedspread, comforter, placemat, mat, cushion, pillow, cushion cover, tablecloth, table cloth, mini, project, flimsy"},
	{Concept: block, Words: "block, quilt block, pieced block"},
	{Concept: blade, Words: "blade, wedge, petal, spoke, dresden blade, dresden wedge, dresden petal, wedge blade, fan blade, wedge piece"},
	{Concept: ring, Words: "ring, plate, dresden, dresden plate, wheel, full ring, whole ring, full plate, whole plate"},
	{Concept: circle, Words: "circle, round, circular, disc, disk, round one, full circle, whole circle, complete circle"},
	{Concept: halfRing, Words: "half ring, half circle, half a circle, half a ring, half plate, half a plate, semicircle, semi circle, half round, half fan, half the circle, half of the circle, half of a circle, half the ring, half of a ring, half of the ring, halfway round, half way round, half the plate, only half"},
	{Concept: quarterOf, Words: "quarter ring, quarter plate, quarter of a ring, quarter of a circle, quarter fan, quarter of a plate"},
	{Concept: strip, Words: "strip, strips of fabric, fabric strip, stripe"},
	{Concept: squarePc, Words: "square, patch, charm, charm square, sq, sqs, mini square, plain square, cut square"},
	{Concept: rectangle, Words: "rectangle, oblong, brick"},
	{Concept: triangle, Words: "triangle"},
	{Concept: piece, Words: "piece"},
	{Concept: border, Words: "border, framing border"},
	{Concept: row, Words: "row"},
	{Concept: perRow, Words: "in each row, per row, to a row, in a row, in every row, each row, blocks in each row, blocks in each, blocks per row, blocks to a row, blocks in a row, in each, blocks across"},
	{Concept: hexagon, Words: "hexagon, hexie, hexy, hex, hexagonal"},
	{Concept: diamond, Words: "diamond"},
	{Concept: unitPc, Words: "unit"},
	{Concept: centre, Words: "centre, center, middle"},
	{Concept: stripPack, Words: "strip pack, strip roll, roll of strips, pack of strips, precut strip pack, strip bundle, roll of precut strips"},
	{Concept: squarePack, Words: "square pack, charm pack, pack of squares"},
	{Concept: packOf, Words: "pack, packet, bundle"},

	{Concept: fabric, Words: "fabric, cloth, material, cotton, quilting cotton, flannel, calico, linen, homespun, batik, muslin, lawn, solid"},
	{Concept: usable, Words: "usable, useable, usable width, usable fabric, usable inches, width of fabric, wof, fabric width, width of the fabric, between the selvages, selvage to selvage, selvedge to selvedge, between selvedges, fabric gives, fabric only gives, only gives, fabric is, fabric measures, fabric that is"},
	{Concept: wideFabric, Words: "wide backing, wide back, extra wide, extra wide backing, widebacking, wideback, wide for the back, quilt backing width, wide width"},
	{Concept: fatQuarter, Words: "fat quarter, fq, fat qtr, f q, fats quarter, quarter fat"},
	{Concept: fatEighth, Words: "fat eighth, fat 8th, f8, fe"},
	{Concept: longQuarter, Words: "long quarter, skinny quarter, thin quarter, quarter yard cut"},
	{Concept: precut, Words: "precut, pre cut"},
	{Concept: colour, Words: "colour, color, print, different fabric, shade, different print, different colour, different color"},
	{Concept: yardageWord, Words: "yardage, meterage, metreage, metrage"},
	{Concept: oneWay, Words: "one way, one way print, directional, directional print, directional fabric, one direction, stay upright, right way up, upright, same way up, same direction, all one way, all facing the same way, with nap, not turn, no turning"},
	{Concept: seam, Words: "seam, seam allowance, seam allowances, allowance, presser foot, sa"},
	{Concept: join, Words: "join, joined"},
	{Concept: straightJoin, Words: "straight join, joined straight, straight seam, butt join, butted join"},
	{Concept: atPrice, Words: "at, @"},

	{Concept: long, Words: "long, length, in length, lengthwise long"},
	{Concept: wide, Words: "wide, width, in width, broad"},
	{Concept: high, Words: "high, tall, height, in height"},
	{Concept: across, Words: "across, diameter, in diameter, wide across, columns, column"},
	{Concept: downward, Words: "down"},
	{Concept: sideOfIt, Words: "side"},
	{Concept: eachSide, Words: "each side, per side, every side, on each side, either side, each edge, on every side, all sides, on all sides, both sides, all four sides"},
	{Concept: allRound, Words: "all round, all around, all the way round, all the way around, right round, round the outside, the whole way round"},
	{Concept: around, Words: "how far round, round the edge, round it, way round, circumference, around it"},
	{Concept: sizeWord, Words: "size, dimension, measurement"},
	{Concept: finished, Words: "finished, finish, finishes, finishing, fin, finished size, when finished, once finished, finish at, finishes at, finishing at, once sewn, when sewn, sewn size"},
	{Concept: unfinished, Words: "unfinished, raw, unf, cut size, cut width, cut at, as cut, before sewing, with seam allowance, with seam allowances, including seam allowance, including seam allowances, including seams, unsewn, raw edge to raw edge, cut to, cut them at, cutting at, cut measurement"},
	{Concept: cutVerb, Words: "cut, cutting, cuts"},
	{Concept: angleWord, Words: "angle, degree, deg"},
	{Concept: corner, Words: "corner"},
	{Concept: edge, Words: "edge, edging"},
	{Concept: onPoint, Words: "on point, onpoint, on the point, set on point, diagonal set, diagonally set, set diagonally, diagonally, on the diagonal, diagonal setting"},
	{Concept: straightSet, Words: "straight set, straight setting, set straight, straight rows"},
	{Concept: atATime, Words: "at a time, at once, at one go, in one go, from one pair, per pair"},
	{Concept: oneAtATime, Words: "singly, 1 at a time, one by one, on its own, each on its own, on their own, individually, stitch and flip, flip corners, flippy corners, one each"},
	{Concept: overage, Words: "overage, overlap on each side, over each side, extra each side, extra on each side, extra all round, over all round, bigger each side, larger each side, beyond each side"},
	{Concept: extra, Words: "extra, spare, allowance for joining, tail"},
	{Concept: perimeter, Words: "perimeter, round the outside edge, outside edge, total edge, running inches, distance round"},
	{Concept: template, Words: "template, ruler, wedge ruler, tool, acrylic"},
	{Concept: narrowEnd, Words: "narrow end, narrow, skinny end, small end, thin end, little end, inner end, bottom end, bottom, narrow edge, starts at, begins at, starts from, begins with, starting at, beginning at, narrow tip, waist, at the tip, skinny, narrow bit, small edge, inside end, centre end, center end"},
	{Concept: wideEnd, Words: "wide end, big end, fat end, outer end, top end, broad end, wide edge, outside end"},
	{Concept: opening, Words: "opening, hole, gap in the middle, centre hole, center hole, hole in the middle, middle hole, open middle"},
	{Concept: along, Words: "along, lengthwise, lengthways, along the strip, end to end, lie along, laid along, lying along"},

	{Concept: howMany, Words: "how many, number of, # of, count of, no of, nr of, how mny, howmany, count, total number of, quantity of, what number of, total"},
	{Concept: howMuch, Words: "how much, howmuch, what amount, what yardage, amount of fabric, how much fabric, how much material, how much cloth, how much do i buy, what do i buy, what to buy, how much do i need"},
	{Concept: howLong, Words: "how long, what length"},
	{Concept: howWide, Words: "how wide, what width"},
	{Concept: howBig, Words: "how big, what size, how large, which size, what dimensions, what measurement, what measurements, what are the dimensions, dimensions of, how big across, size of, what is the size"},
	{Concept: howFar, Words: "how far, what distance"},
	{Concept: longest, Words: "longest, maximum length, max length, how long can, how long at most, longest possible, at most"},
	{Concept: largest, Words: "largest, biggest, maximum size, max size, how big a quilt, how large a quilt, how big can"},
	{Concept: buyWord, Words: "buy, purchase, order, get from the shop"},
	{Concept: have, Words: "have, bought, we bought, i bought, purchased, i have, i've got, i got, got, ive got, have got, i own, in hand, in my stash, from my stash, stash, on hand, we have, only have, there's, i've, leftover, left over from"},
	{Concept: enough, Words: "enough, suffice, sufficient, will it do, be enough, does that do, will that do, is that plenty, plenty, get away with, will do, do it, would do, make do, cover it, manage with"},
	{Concept: need, Words: "need, required, requires, require"},
	{Concept: fromWord, Words: "from, out of, using"},
	{Concept: vertical, Words: "vertical, vertically, top to bottom, running down, seams running down, seam running down, lengthwise seam, down the back, running up and down"},
	{Concept: horizontal, Words: "horizontal, horizontally, side to side, running across, runs across, ran across, crossways, crosswise seam, seams across, seam across, going across"},
	{Concept: upTo, Words: "to, until, till, into"},
	{Concept: ofWord, Words: "of"},
	{Concept: canGet, Words: "can i get, could i get, will i get, do i get, can i cut, can you get, would i get, could i cut, can i squeeze, get out of"},
	{Concept: scrap, Words: "scrap, remnant, offcut, piece of fabric, left over piece, leftover piece"},
	{Concept: ofThem, Words: "of them, of these, of those, of it, of each kind, of the, of my, of our"},
	{Concept: eachWord, Words: "each, per, every"},

	{Concept: percentWord, Words: "percent, per cent, pct"},
	{Concept: moneyWord, Words: "dollar, euro, quid, bucks, usd, aud, gbp, eur, pound sterling"},
	{Concept: hearsay, Words: "told me, told us, program told, she said, he said, they said, says it takes, somebody said, someone said, calculator says, calculator said, friend said, friend says, app said, website says, website said, pattern said, sister says, sister said"},
	{Concept: otherThing, Words: "kid, child, children, friend, sister, brother, grandchild, grandchildren, grandkid, cat, dog, day, week, month, year, hour, minute, people, person, am, pm, o'clock, time, student, lady, ladies, cup, coffee, page, video, mile, degrees outside, daughter, son, niece, nephew, guest, baby, babies, twins, hours left, weeks left, years old, year old, days left, neighbour, neighbor, granddaughter, grandson, cousin, aunt, cats, meeting, cutting mat, cutting table, sewing table, birthday, st birthday, th birthday, th anniversary, percent sure, candle, percent off"},
}
