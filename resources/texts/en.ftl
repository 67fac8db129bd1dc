### Every sentence a person reads, in English. Calm, plain, short: what happened, what is safe, what to do.

## Findings: the consequence, then what to do.

finding-tree-too-wide = The tree is { $tree } wide and the flask { $flask } inside, which leaves { $clearance } to the wall. It touches or does not go in, and metal would run out there. Take a wider flask or trim the tree.
finding-wall-clearance = Only { $clearance } of investment to the wall, where these patterns need { $needed }. The mould may crack there and metal run out. Take a wider flask or move the pieces in.
finding-tree-too-high = The tree is { $tree } high and the flask { $flask }, which leaves { $clearance } above it. It stands out of the mould. Take a higher flask, a collar or a shorter tree.
finding-top-clearance = Only { $clearance } of investment over the far end of the tree, where { $needed } holds the metal. It may blow out when the metal arrives. Take a higher flask, a collar or a shorter tree.
finding-base-does-not-fit = { $base } does not close a flask of Ø{ $flask } mm. Slurry will leak. Take the base made for this flask.
finding-ratio-outside = The ratio { $ratio } is outside what this powder bears, { $low } to { $high }. Too thin and the mould is weak and flashes, too thick and bubbles stay. Mix within the range.
finding-several-mixes = The slurry rises under vacuum and does not go into a bowl of { $bowl } at once. Mix { $mixes } times, and pour on only while the last mix is still liquid.
finding-mix-outruns = Mixing to the end of the last vacuum takes { $clock }, and the flask must stand still by { $finish }. Moved later, the setting mould cracks and flashes. Shorten a step.
finding-powder-old = Powder lot { $lot } was good until { $until }. Old powder sets fast and weak. Open a fresh lot, or try a small mix first.
finding-crucible-full = { $molten } of molten metal is too much for { $crucible }, which holds { $usable }. It would spill. Take a larger crucible or split the melt.
finding-crucible-wrong = { $crucible } is not for { $alloy }. It does not stand the heat, or it serves another family of metal. It may fail while full, or spoil the alloy. Take another crucible.
finding-crucible-low = { $molten } is little metal for { $crucible }, which holds { $usable }. A spin may leave part of it behind. Take a smaller crucible.
finding-button-over-funnel = The button of { $button } is more than the funnel holds, { $funnel }. Metal would stand over the rim and run down the flask. Ask for a smaller button or take a base with a larger funnel.
finding-over-ceiling = The hottest place in the kiln reaches { $top }, and { $powder } must never see more than { $ceiling }. The mould breaks down, and gypsum gives off sulphur gas. Lower the programme.
finding-over-planned = The programme goes to { $top }. Plan no more than { $ceiling } for { $powder }: hotter moulds give dark, rough castings. Lower the highest stage.
finding-stones-too-hot = Stones are in this mould and the kiln reaches { $top }, where they bear { $ceiling }. They cloud or crack. Lower the programme. Nobody can sign for this.
finding-stones-powder = Stones are cast in place in { $powder }, which is not made for them. They would burn. Take a powder for stones. Nobody can sign for this.
finding-stones-no-quench = Stones are cast in place. Quenched, they crack. Let this flask cool in air until it is hand warm.
finding-mould-refuses = { $alloy } must not be poured into { $powder }: the mould breaks down under the metal. Take a powder that stands its heat. Nobody can sign for this.
finding-kiln-cannot-follow = The programme asks for this ramp in { $asked }, and the kiln needs { $needed }. The times here are the kiln's own. Start as early as they say.
finding-kiln-ceiling = The programme goes to { $target } and { $kiln } goes to { $ceiling }. It would never get there, or fail. Lower the stage or take another kiln.
finding-kiln-segments = The programme has { $segments } stages and the controller takes { $most }. The last ones would not run. Join stages, or set them by hand and stay.
finding-kiln-full = { $flasks ->
        [one] One flask is
       *[other] { $flasks } flasks are
    } in this load and the kiln has { $places ->
        [one] one place
       *[other] { $places } places
    }. Crowded flasks burn out unevenly. Move some to another load.
finding-ramps-unsaid = The table does not say whether its hours include the ramps. If they do, the programme takes { $with }; if not, { $without }. The longer one is planned. Look at the data sheet and say which.
finding-stage-too-short = The kiln needs { $ramp } to get there and the stage has { $stage }. Nothing is left to hold, so the stage is made longer here. Check the table's hours.
finding-table-too-small = { $table } has no row for a flask as large as Ø{ $flask } mm. Its last row is used and may be too short. Take a programme made for this size.
finding-table-not-meant = { $table } is not meant for { $for }. Carbon may stay, or the mould crack. Take a table made for it.
finding-carbon-left = { $time } at 700 °C and above, and { $material } needs { $needed }. Carbon left in the mould gives pits and gas. Hold the highest stage longer, with fresh air.
finding-mould-wet = By the heat of its mould, the core of this flask still holds water at the pour ({ $core }). Water under liquid metal throws it out. Hold longer, and do not pour before the core was dry.
finding-mould-wet-perhaps = Where the mould conducts as badly as it may, its core still holds water at the pour ({ $core }). Hold longer before it is hot, or measure.
finding-core-carbon-left = The kiln is hot for long enough, the core is not: { $time } at 700 °C and above, and { $material } needs { $needed }. Hold the highest stage longer, with fresh air.
finding-core-carbon-perhaps = Where the mould conducts as badly as it may, its core has { $time } at 700 °C and above, and { $material } needs { $needed }. A longer hold is on the safe side.
finding-core-not-held = The core is at { $core } at the pour, and the mould is wanted at { $wanted }. Hold longer at the last stage.
finding-core-not-held-perhaps = Where the mould conducts as badly as it may, its core is at { $core } at the pour, and the mould is wanted at { $wanted }.
finding-starts-in-past = To pour as planned, this load should have begun on { $start }. Shortened, the mould cracks or keeps carbon. Pour later.
finding-late = { $design } for { $client } is due on { $due }, before its flask is poured. Pour sooner, or tell the client now.
finding-pieces-on-no-tree = { $pieces ->
        [one] One piece of { $design } for { $client } hangs on no tree and would not be cast. Hang it, or move it to another batch.
       *[other] { $pieces } pieces of { $design } for { $client } hang on no tree and would not be cast. Hang them, or move them to another batch.
    }
finding-piece-twice = { $design } hangs on more than one tree, { $pieces } too many. Metal is planned for it twice. Take it off one tree.
finding-tree-in-no-flask = Tree { $tree } stands in no flask and would not be cast. Give it a flask, or keep it for another batch.
finding-two-alloys = { $first } and { $second } hang on one tree, and only one can be poured. Give each alloy a tree of its own. Nobody can sign for this.
finding-melt-two-alloys = This melt feeds flasks of { $first } and of { $second }. Give each alloy a melt of its own. Nobody can sign for this.
finding-mould-ranges-apart = The flasks of this load share no mould temperature. One wants { $hottest } or more, another { $coolest } or less. Pour the hottest first and let the kiln fall for the others.
finding-metal-outside = The metal is to be poured at { $metal }, outside { $low } to { $high } for this alloy and section. Too cold and it does not fill, too hot and it takes up gas. Choose within the range, or write down why not.
finding-mould-outside = The mould is to be poured at { $mould }, outside { $low } to { $high } for this alloy and section. Too cold and it does not fill, too hot and the metal turns porous. Choose within the range, or write down why not.
finding-pattern-unknown = { $pattern } has neither a weight nor a file, so its metal is not known. Weigh one, or add its file.
finding-line-without-pattern = { $design } for { $client } has no pattern, so its metal is not known. Choose one.
finding-line-without-alloy = { $design } for { $client } has no alloy, so its metal is not known. Choose one.
finding-file-missing = { $kept ->
        [0] { $file } is not there, so it says nothing about its pattern. Put it back, choose it again, or weigh the pattern.
       *[other] { $file } is not there. What was measured of it before still counts. Put it back, or choose it again.
    }
finding-file-unreadable = { $kept ->
        [0] { $file } cannot be read ({ $reason }). Save it again where it was drawn, or weigh the pattern.
       *[other] { $file } cannot be read ({ $reason }). What was measured of it before still counts. Save it again where it was drawn.
    }
finding-file-apart = { $kept ->
        [0] { $file } lies outside the batch's folder and is not read before you allow it, so it says nothing about its pattern. Allow its folder, or copy it beside the batch.
       *[other] { $file } lies outside the batch's folder and is not read before you allow it. What was measured of it before still counts. Allow its folder, or copy it beside the batch.
    }
finding-file-changed = { $kept ->
        [0] { $file } is not the file that was looked at before, and what that one measured was not kept. This one fills { $now }. Look at it again before you quote.
       *[other] { $file } is not the file that was measured. That one filled { $before } and still counts; this one fills { $now }. Look at it, then take it as it is now, or put the old one back.
    }
finding-file-open = { $file } is open at { $edges ->
        [one] one edge
       *[other] { $edges } edges
    } and has no volume. Close it where it was drawn, or weigh the pattern.
finding-file-mixed = The faces of { $file } point both ways, so it has no volume. Mend it where it was drawn, or weigh the pattern.
finding-sealed-void = { $file } holds a sealed void of { $void }. No investment gets in, so it pours solid. The scale cannot show it: a hollow print weighs what a hollow file says. For a hollow casting, open drain holes and hold the core.
finding-drained-void = { $file } has a void of { $void } that is said to be drained and held. If a hole closes or the core moves, it pours solid and the metal runs short. Look into every piece.
finding-shells-united = Shells of { $file } overlap. Together they fill { $union }, and that is what is charged; added up shell by shell they would make { $sum }, which is { $over } too much. A program that only adds up will say so.
finding-shells-overlap = Shells of { $file } overlap. The overlap may be counted twice, so the charge is rather too high and so is a quote. Join the shells where it was drawn, or weigh the pattern.
finding-file-unit = { $file } would be { $size } long. It was probably drawn in another unit ({ $unit }). Say which before anything is charged.
no-volume = no volume
unit-millimetres = millimetres
unit-centimetres = centimetres
unit-inches = inches
unit-metres = metres
unit-mils = thousandths of an inch
unit-micrometres = thousandths of a millimetre
finding-wall-too-thin = { $pattern } has walls of { $thinnest }, under the { $least } this studio casts without fear. Thin walls may not fill. Thicken them where it was drawn, or plan a hotter mould and a feed close by.
finding-file-remark = About { $file }, { $remark }
finding-weight-against-file = { $pattern } weighs { $weighed } and its file says { $computed }. It may be uncured, wrongly scaled or still on its supports. Check one before it goes on a tree.
finding-walls-not-measured = { $file } has so many triangles that its walls are not among the figures. Choose the pattern on its page to have them measured there.
finding-pair-same-side = { $one } and { $other } should be left and right, and their files have the same shape: both would be for one side. Mirror one of them where it was drawn.
finding-pair-mirrored = { $one } and { $other } should be alike, and their files are mirror images of each other. Print one file twice, or say that they are left and right.
finding-pair-differs = The files of { $one } and { $other } are up to { $apart } apart, laid on each other as well as they go, where a pair may differ by { $tolerance }. One may be another version, another size or drawn in another unit.
finding-pair-weights = { $one } weighs { $weight } and { $other }, its pair, { $other-weight }. A client feels that, and one of the two may be uncured, hollow or still on its supports. Check both.
finding-size-off-scale = Size { $size } is not on { $scale } ({ $range }), so no bore is known. Correct the size or the scale.
finding-price-stale = The price of { $metal } is { $days ->
        [2147483647] undated ({ $on })
        [one] a day old, of { $on }
       *[other] { $days } days old, of { $on }
    }. Quotes by it may lose money. Enter today's price.
finding-price-missing = No price of { $metal } is written down, so nothing made of it is priced. Enter one with its date.
finding-gross-without-tare = { $weight } was weighed with something under it whose tare nobody wrote down, so that weight is of no use. Weigh the base alone and enter its tare.
finding-not-on-shelf = { $entry } is not on the shelf, so nothing that needs it is known. Choose another, or put it on your own shelf.
finding-entry-other-kind = { $entry } is chosen where another kind of thing belongs, so nothing that needs it is known. Choose again.
finding-shelf-differs = { $entry } has changed on the shelf since this batch took it. The batch keeps its own copy. Compare them, then keep or adopt.
finding-overlay-problem = Your own shelf entry { $entry } needs a look. { $problem }
finding-charge-short = { $drawn } is drawn and the charge is { $charge }. The flask would not fill. Draw more metal.
finding-under-mark = The charge comes to { $fineness }, under the mark of { $mark }. The pieces could not be marked. Add finer metal. Nobody can sign for this.
finding-lot-unknown = The studio has no metal lot { $lot }, so what it adds is not known. Correct its label, or enter the lot.
finding-client-metal = Lot { $lot } belongs to { $client }, and no written consent to blend it is noted. Get it in writing, or draw another lot.
finding-lot-other-metal = Lot { $lot } is { $alloy }, not the alloy of this melt. Colour, heat and mark would change. Draw another lot, or make sure it is meant.
finding-irreplaceable = { $pattern } cannot be made again and shares this flask with others. One bad neighbour loses it. Give it a flask of its own.
finding-defaults = { $count ->
        [one] One default on { $page } that nobody has confirmed is
       *[other] { $count } defaults on { $page } that nobody has confirmed are
    } in use ({ $which }). Look { $count ->
        [one] it
       *[other] them
    } over once.
finding-unfinished = Still to be chosen here, { $what }. Every figure that needs it stays open until then.
finding-melt-feeds-nothing = No flask is poured from this melt. Choose it for a flask, or leave it out.
finding-load-empty = No flask stands in this kiln load. Put one in, or leave the load out.
finding-scratch-twice = Two flasks carry { $scratch } on their faces. Out of the kiln nobody can tell them apart. Give one another number.
finding-part-not-weighed = { $material } hangs on this tree and was not weighed, so its metal is missing from the charge. Weigh it too, each material by itself.
finding-ramp-said-twice = This ramp is to take { $minutes }, and by its rate it would take { $by-rate }. The minutes are used. Keep one of the two.
finding-pour-skipped = The clocks go forward over the time of the pour, so no clock will show it. { $taken } is used. Choose a time the clock shows.
finding-pour-shown-twice = The clocks go back over the time of the pour, so it comes twice. The first, { $taken }, is used. Choose a time that comes once.
finding-file-outside = { $file } lies outside the batch's folder and does not travel with it. Copy it beside the batch and choose it there.
finding-acceptance-unknown = Somebody answers here for “{ $finding }”, and there is no such finding. Correct its name, or take it out.
want-vessel = the steel of the flask
want-tree = a tree
want-base = a base under the tree
want-powder = a powder
want-load = a kiln load
want-kiln = a kiln
want-programme = a programme
want-pour-time = the time of the pour
want-crucible = a crucible
finding-lot-fineness-unknown = Nobody knows how fine lot { $lot } is, so the melt cannot be known to reach its mark. Enter its metal and fineness from its papers, or draw another lot. Nobody can sign for this.
finding-mark-over-alloy = A mark of { $mark } is asked for, and { $alloy } holds less. The piece could not carry it. Choose a finer alloy or a lower mark. Nobody can sign for this.
finding-lot-refining = Lot { $lot } is meant for the refiner. Filings and sweeps carry dirt, steel and solder into the casting. Draw a clean lot.
finding-returns-over = { $share } of this charge are returns, and the alloy bears { $limit }. Remelted metal takes up gas and loses what keeps it sound. Add new metal.
finding-lot-short = This job draws { $drawn } from lot { $lot }, and { $received } ever came in. Weigh the lot, and correct the draw or the receipt.
rule-melt-mark-title = Fineness the melt must reach
rule-melt-mark-why = The highest mark asked for rules; there is no minus tolerance.
rule-melt-returns-title = Returns drawn
rule-melt-returns-why = Own sprues and buttons have been melted before.
rule-melt-returns-share-title = Share of returns
rule-melt-returns-share-why = Too many returns make porous and brittle castings.
rule-lot-drawn-title = Drawn from a lot in this job
rule-lot-drawn-why = A lot gives no more than came in.
rule-lot-fine-title = Fine metal that came into a lot
rule-lot-fine-why = What a client gets back is counted in grams of fine metal, by the papers the metal came with.
rule-lot-received-title = Came into a lot
rule-lot-received-why = Other jobs may have drawn on it too.
input-lot-receipt = metal that came in
input-alloy-returns-limit = most returns the alloy bears
finding-parts-touch = { $one } and { $other }, or their sprues, touch each other where they hang, and would be cast together. { $more ->
    [0] Turn them, or hang one elsewhere.
    [one] One more place is too near. Turn them, or hang one elsewhere.
   *[other] { $more } more places are too near. Turn them, or hang one elsewhere.
}
finding-parts-near = Only { $room } between { $one } and { $other }, or their sprues, where { $needed } is usual. The mould between them may break and the metal join them. { $more ->
    [0] Hang them farther apart.
    [one] One more place is too near. Hang them farther apart.
   *[other] { $more } more places are too near. Hang them farther apart.
}
finding-piece-near-trunk = Only { $room } between { $piece } and the main sprue, where { $needed } is usual. It may be cast onto the main sprue. { $more ->
    [0] Take a longer sprue, or turn the piece.
    [one] One more piece is too near. Take a longer sprue, or turn the piece.
   *[other] { $more } more pieces are too near. Take a longer sprue, or turn the piece.
}
finding-tree-against-parts = The tree on the scale comes to { $weighed }, its patterns, sprues and welds to { $computed }: { $share } apart. Is the base's tare taken off, is every piece on the list, and are the materials right?
finding-tree-in-two-flasks = Tree { $tree } stands in two flasks, so its metal and its mix are planned twice. Take it out of one.
finding-copy-altered = The copy of { $entry } in this job was altered since it was taken from the shelf. Its figures are not those of the source they name. Take the shelf's again, or put your own entry on your shelf.
finding-shells-nested = A solid of { $inner } lies wholly inside another in { $file }, and is counted once. Is it material within material, or was a hollow meant whose surface faces the wrong way? Say which with the pattern’s file; until then it counts as solid.
finding-powder-lot-unknown = Powder lot { $lot } is not in the register as this powder, so its own gloss-off is not known and the shelf's is used. Enter the lot, or correct its label.
rule-line-rough-all-title = Rough weight of all pieces, by pattern
rule-line-rough-all-why = Some pieces have a pattern of their own.
quote-metal-only = These sums are for the metal alone. Patterns, casting, finishing and setting are not in them.
page-quote = quotes
quote-finishing = finishing
quote-making = making the patterns
rule-quote-minutes-all-title = Minutes on all pieces
rule-quote-minutes-all-why = Each piece takes its own time.
rule-quote-work-title = Work, with the margin
rule-quote-work-why = Time at the price of an hour, and what is asked for beside it.
rule-quote-line-other-title = Work on the line
rule-quote-line-other-why = Everything on a line that is not its metal.
rule-quote-line-sum-title = Sum of the line
rule-quote-line-sum-why = The metal is priced openly, the work beside it.
rule-quote-besides-title = Beside the lines
rule-quote-besides-why = What belongs to no line.
rule-quote-net-title = Before tax
rule-quote-net-why = The lines sum to the total to the cent.
rule-quote-tax-title = Tax
rule-quote-tax-why = Rounded once, on the whole quote.
rule-quote-total-title = Total
rule-quote-total-why = What the client pays.
rule-quote-rest-title = Left to pay
rule-quote-rest-why = The deposit is taken off.
input-quote-minutes = minutes charged
input-quote-hour = price of an hour
input-quote-amount = fixed sum
input-quote-margin = margin
input-quote-tax-share = tax
input-quote-deposit = deposit
input-quote-sent-total = total as it was sent
finding-tree-over-flask = The tree takes up { $tree } and the inside of the flask only { $flask }, so there is no room for a mould. Check the weights and sizes, or take a larger flask. Nobody can sign for this.
finding-solidus-uncertain = Where { $alloy } begins to melt is known only to within { $by }. Pour a trial flask and write down what worked.
finding-own-limit = The studio raised its own limit for { $entry } above the shipped one. Findings here go by the studio's.

overlay-base-changed = The shipped entry it was made from has changed. Yours is used. Compare them, then keep yours or adopt the new one.
overlay-id-taken = Another entry already has its name, so it is not used. Give it another name.
overlay-unknown-id = It changes an entry that is not there, so it is not used. Remove it or correct its name.
overlay-other-kind = It would replace an entry of another kind, so it is not used. Correct its name.
overlay-faulty = It contradicts itself, so it is not used. Look its numbers over.

## Weights, trust, causes, kinds and other words of the figures.

weight-stop = Stop
weight-caution = Caution
weight-note = Note
mark-stop = STOP
mark-caution = CAUTION
mark-note = NOTE

trust-standard = fixed by a standard or by definition
trust-published = printed in a handbook, a paper or a data page
trust-article = printed in a trade article or told by casters
trust-computed = computed from what is stated
trust-common-practice = common practice, no source
trust-from-memory = from memory, not looked up
trust-studio = measured or decided by the studio

cause-not-said = not said yet
cause-not-chosen = not chosen yet
cause-not-on-shelf = not on the shelf
cause-no-file = no file
cause-no-such-number = the file has no such number
cause-too-few = too few rows, three are needed
cause-pending = not known yet
cause-not-finite = cannot be worked out
cause-does-not-apply = does not apply
cause-term = waits for what is missing

page-site = the place
page-pattern = waxes and prints
page-size = ring sizes
page-price = prices
page-tree = trees
page-feed = feeding
page-fill = how the metal gets in
page-spin = spinning
page-flask = flasks
page-studio = the studio
page-mix = investment
page-base = bases
page-other = other pages

drive-gravity = by its own weight
drive-vacuum = vacuum
drive-centrifugal = centrifugal

section-filigree = filigree
section-thin = thin
section-medium = medium
section-heavy = heavy

lot-new-metal = new metal
lot-fine-metal = fine metal
lot-master-alloy = master alloy
lot-scrap = scrap
lot-refining = for the refiner

metal-au = fine gold
metal-ag = fine silver
metal-pt = fine platinum
metal-pd = fine palladium

day-1 = Mon
day-2 = Tue
day-3 = Wed
day-4 = Thu
day-5 = Fri
day-6 = Sat
day-7 = Sun
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
moment = { $weekday } { $day } { $month } { $time }
date = { $day } { $month } { $year }
figure-unknown = (not known yet)
undated = no date
unnamed = (unnamed)

## Rules: what a figure is called, and why it is worked out so.

rule-vacuum-barometer-title = Air pressure
rule-vacuum-barometer-why = The higher the studio lies, the less air presses on it and the less vacuum a gauge can show.
rule-vacuum-saturation-title = Pressure at which the water boils
rule-vacuum-saturation-why = Water boils where the pressure falls to its vapour's own, and that depends on its temperature.
rule-vacuum-gauge-to-boil-title = Gauge reading that boils the water
rule-vacuum-gauge-to-boil-why = A gauge reads the difference from the air around it. A pump that never gets there leaves bubbles on the patterns.

rule-weigh-net-title = Net weight
rule-weigh-net-why = What stands under it on the scale is no pattern and becomes no metal.
rule-pattern-volume-of-file-title = Volume of the file as printed
rule-pattern-volume-of-file-why = Twice as long is eight times the metal: unit and scale count to the third power.
rule-pattern-area-title = Surface of the pattern
rule-pattern-area-why = The surface loses the heat, so it says how soon a piece freezes.
rule-pattern-wall-title = Wall of the file as printed
rule-pattern-wall-why = How far it is from the surface straight through to the other side. The thinnest is passed under by two parts in a hundred of the surface, so that one odd triangle does not speak for the whole.
rule-pattern-size-title = Outer size as printed
rule-pattern-size-why = The file's length times its unit and the scale of the print.
rule-pattern-volume-from-weight-title = Volume from the scale
rule-pattern-volume-from-weight-why = Metal fills the room the pattern leaves, so the pattern's volume is what counts.
rule-pattern-weight-from-volume-title = Weight of the pattern by its volume
rule-pattern-weight-from-volume-why = What a clean, cured pattern should show on the scale.
rule-pattern-modulus-title = Volume over surface
rule-pattern-modulus-why = A part with much volume behind little surface freezes last. Feed it there.
rule-pattern-volume-with-void-title = Volume with its sealed void
rule-pattern-volume-with-void-why = The scale shows the pattern’s own material. Once it is burned out, metal fills the void as well.
rule-pair-weight-difference-title = Difference in weight of a pair
rule-pair-weight-difference-why = A pair is worn together: a difference is felt, and may mean that one was made wrongly.
input-pair-apart = largest distance of the two surfaces
input-pair-tolerance = distance up to which two surfaces are the same
rule-pattern-weight-difference-title = Difference between scale and file
rule-pattern-weight-difference-why = A print far off its file is uncured, wrongly scaled or still on its supports.

rule-piece-metal-title = Metal of one piece
rule-piece-metal-why = The metal fills exactly the room the pattern left.
rule-piece-rough-weight-title = Rough weight of one piece
rule-piece-rough-weight-why = Metal shrinks as it cools, so the piece is a little lighter than its mould was full.
rule-line-rough-weight-title = Rough weight of all pieces
rule-line-rough-weight-why = Rounded before it is multiplied, so that a client can follow it.
rule-line-metal-cost-title = Metal cost of the line
rule-line-metal-cost-why = Grams times the price of a gram, to the cent.
rule-size-circumference-title = Inner circumference
rule-size-circumference-why = The ring size of the standard is the inner circumference in millimetres.

rule-price-per-gram-title = Price of a gram
rule-price-per-gram-why = Metal is quoted by the troy ounce and weighed in grams.
rule-price-alloy-per-gram-title = Price of a gram of the alloy
rule-price-alloy-per-gram-why = Only the fine metal in it is paid for, and the premium for having it made.
rule-price-own-per-gram-title = Price of a gram, by the alloy's own price
rule-price-own-per-gram-why = Where the alloy itself has a price, that price and the premium rule.

rule-tree-part-volume-title = Volume of one material on the tree
rule-tree-part-volume-why = Wax and resin weigh differently for the same room, so each is weighed apart.
rule-tree-pieces-volume-title = Volume of the pieces of one line
rule-tree-pieces-volume-why = One pattern, as often as it hangs there.
rule-tree-sprue-volume-title = Volume of the sprues of one run
rule-tree-sprue-volume-why = Round rods of one diameter and length.
rule-tree-welded-volume-title = Volume with welds and fillets
rule-tree-welded-volume-why = Wax run into the joints is no sprue and no piece, but it becomes metal all the same.
rule-tree-difference-title = Scale against parts
rule-tree-difference-why = A tree that weighs otherwise than its parts holds something that is not on the list, or lacks something that is.
rule-tree-volume-title = Volume of the tree
rule-tree-volume-why = All its parts together are the room that metal fills.
rule-tree-reach-title = Reach of a piece from the axis
rule-tree-reach-why = The far corner of the piece decides how near it comes to the wall.
rule-tree-rise-title = Rise of a piece over its joint
rule-tree-rise-why = The far corner of the piece decides how high the tree is.
rule-tree-widest-reach-title = Widest reach
rule-tree-widest-reach-why = The widest piece decides about the flask.
rule-tree-piece-top-title = Far end of a piece over the base's rim
rule-tree-piece-top-why = Dome, joint and piece stand on each other. Where nobody said the tier, the piece is taken to join at the main sprue's end.
rule-tree-trunk-top-title = Far end of the main sprue over the base's rim
rule-tree-trunk-top-why = A main sprue may stand higher than its pieces.
rule-tree-diameter-title = Diameter of the tree
rule-tree-diameter-why = Twice the widest reach, as if a piece could stand on every side.
rule-tree-height-title = Height of the tree over the base's rim
rule-tree-height-why = Its highest part decides about the flask.

rule-flask-metal-from-weight-title = Metal in place of one weighed material
rule-flask-metal-from-weight-why = The volume stays, so the weight grows as the density does.
rule-flask-metal-from-volume-title = Metal in place of a part
rule-flask-metal-from-volume-why = The room it leaves, filled with this alloy.
rule-flask-tree-metal-title = Metal of the tree
rule-flask-tree-metal-why = Pieces and sprues are one casting until the saw.
rule-flask-button-title = Button
rule-flask-button-why = It presses the metal in and feeds the tree while that freezes. One a flask, never one a piece.
rule-flask-charge-title = Charge
rule-flask-charge-why = What the melt loses is put in beforehand.
rule-flask-charge-on-balance-title = Charge on the balance
rule-flask-charge-on-balance-why = Rounded up to what the balance can show: too little metal loses the flask.
rule-flask-button-volume-title = Volume of the button
rule-flask-button-volume-why = It has to find room in the funnel.
rule-flask-wall-clearance-title = Room to the wall
rule-flask-wall-clearance-why = Investment must be thick enough there to hold the metal.
rule-flask-top-clearance-title = Room above the tree
rule-flask-top-clearance-why = The metal arrives there with all its force, so the mould needs something behind it.
rule-flask-volume-title = Inside of the flask
rule-flask-volume-why = A cylinder, with its collar.
rule-flask-invested-by-title = Invested by
rule-flask-invested-by-why = The mould must have set before it is heated, or it cracks.
rule-flask-mix-by-title = Start mixing by
rule-flask-mix-by-why = Backwards from the moment the flask is left alone.

rule-mix-slurry-title = Slurry
rule-mix-slurry-why = What the flask holds beside tree and dome, and something for bowl and spoon.
rule-mix-powder-in-slurry-title = Powder in a volume of slurry
rule-mix-powder-in-slurry-why = Powder and liquid each take up their own room.
rule-mix-slurry-density-title = Density of the slurry
rule-mix-slurry-density-why = A cup of slurry on the scale shows at once whether the ratio is right.
rule-mix-powder-title = Powder, worked out
rule-mix-powder-why = The slurry, and the powder in each part of it.
rule-mix-powder-weighed-title = Powder to weigh out
rule-mix-powder-weighed-why = Rounded up: a flask filled short is lost.
rule-mix-water-title = Water to weigh out
rule-mix-water-why = By weight, from the powder as it is weighed, because the ratio makes the mould.
rule-mix-mixes-title = Mixes
rule-mix-mixes-why = Slurry rises under vacuum and must not reach the rim.
rule-mix-powder-of-mix-title = Powder of one mix
rule-mix-powder-of-mix-why = Equal mixes set alike.
rule-mix-water-of-mix-title = Water of one mix
rule-mix-water-of-mix-why = Equal mixes set alike.
rule-mix-bowl-over-title = Clock when the bowl comes out
rule-mix-bowl-over-why = The bowl's vacuum follows the mixing.
rule-mix-pour-over-title = Clock when the flask is full
rule-mix-pour-over-why = What is poured then goes under vacuum once more.
rule-mix-clock-title = Time from first powder to rest
rule-mix-clock-why = The clock runs from the first powder in the water until nobody touches the flask any more.
rule-mix-finish-by-title = Flask at rest by
rule-mix-finish-by-why = Moved once it has begun to set, the mould cracks. Left too early, water gathers on the patterns.

rule-stage-ramp-part-title = Ramp in one band of the kiln
rule-stage-ramp-part-why = A kiln rises slower the hotter it is, so each band has its own rate.
rule-stage-ramp-title = Ramp of the kiln
rule-stage-ramp-why = All its bands one after the other.
rule-stage-ramp-at-rate-title = Ramp at the rate asked for
rule-stage-ramp-at-rate-why = The way to go, over the rate.
rule-stage-ramp-taken-title = Ramp as it will be
rule-stage-ramp-taken-why = A kiln goes no faster than it can, whatever the programme says.
rule-stage-minutes-including-title = Stage, ramp in its hours
rule-stage-minutes-including-why = The table's hours hold both the way there and the hold.
rule-stage-minutes-besides-title = Stage, ramp besides its hours
rule-stage-minutes-besides-why = The way there first, then the table's hours.
rule-stage-hold-title = Hold
rule-stage-hold-why = What the way there leaves of the table's hours.
rule-stage-end-title = End of the stage
rule-stage-end-why = One stage begins when the other is over.
rule-burnout-total-including-title = Programme, ramps in the hours
rule-burnout-total-including-why = All stages, read the short way.
rule-burnout-total-besides-title = Programme, ramps besides the hours
rule-burnout-total-besides-why = All stages, read the long way.
rule-burnout-total-title = Length of the programme
rule-burnout-total-why = All ramps and holds as they will be run.
rule-burnout-kiln-start-title = Start the kiln
rule-burnout-kiln-start-why = Backwards from the pour.
rule-burnout-dewax-start-title = Start the steam
rule-burnout-dewax-start-why = From the steam the flask goes straight into the warm kiln, and never cools between.
rule-burnout-top-title = Highest stage
rule-burnout-top-why = What powder and stones have to bear.
rule-burnout-soak-target-title = Mould temperature the load ends at
rule-burnout-soak-target-why = The hottest mould is poured first, and the kiln falls for the others.
rule-burnout-time-above-700-title = Held at 700 °C and above
rule-burnout-time-above-700-why = The last carbon burns only there, and only with air.
rule-heat-dry-at-title = When the core is dry
rule-heat-dry-at-why = The core stands near 100 °C until its water has boiled off; only then does it go on.
rule-heat-burnt-at-title = When the core passes 230 °C
rule-heat-burnt-at-why = Wax ignites about there, and what still runs out has run out.
rule-heat-load-title = Heat in the moulds
rule-heat-load-why = What the moulds take in, their water and the steel with them, without what the kiln itself loses.
input-heat-dry-after = from the kiln’s start until the core is dry
input-heat-burnt-after = from the kiln’s start until the core passes 230 °C
input-heat-carbon-time = the core’s time at 700 °C and above
input-heat-core-top = hottest core
input-heat-core-at-pour = core at the pour
input-heat-cavity-at-pour = outermost cavity at the pour
input-heat-apart-cristobalite = wall and core apart between 220 °C and 270 °C
input-heat-apart-quartz = wall and core apart around 573 °C
input-heat-out-for = time out of the kiln until the outermost cavity leaves its range
input-heat-heat = heat taken in by the mould
rule-burnout-true-top-title = Hottest place in the kiln
rule-burnout-true-top-why = The probe may read wrong, and it does not sit in the hottest corner.

rule-melt-charge-title = Charge of the melt
rule-melt-charge-why = All flasks poured from one crucible.
rule-melt-molten-volume-title = Charge when molten
rule-melt-molten-volume-why = Liquid metal takes up more room than solid.
rule-melt-crucible-fill-title = How full the crucible is
rule-melt-crucible-fill-why = Too full spills, too empty leaves metal behind.
rule-melt-drawn-title = Metal drawn
rule-melt-drawn-why = All lots together.
rule-melt-fine-in-draw-title = Fine metal in one draw
rule-melt-fine-in-draw-why = By the lot's papers. Nobody has assayed it unless the lot says so.
rule-melt-fine-title = Fine metal in the melt
rule-melt-fine-why = All draws together.
rule-melt-fineness-title = Fineness of the melt
rule-melt-fineness-why = The mark promises a share of fine metal. By the lots' figures, not assayed.

rule-pour-metal-title = Metal when poured
rule-pour-metal-why = The middle of the range for this alloy and section. The studio's own record is better.
rule-pour-mould-title = Mould when poured
rule-pour-mould-why = The middle of the range for this alloy and section. Thin pieces want it hotter.
rule-pour-superheat-title = Over the liquidus
rule-pour-superheat-why = Heat in hand before the metal starts to freeze on its way.

## Inputs and defaults: what they are called.

input-alloy-density = density of the alloy
input-alloy-shrink = shrinkage from pattern to casting
input-alloy-melt-loss = loss in the melt
input-alloy-liquid-density = density of the liquid metal
input-alloy-liquidus = liquidus
input-alloy-solidus-uncertain = how far the solidus may be off
input-base-dome = dome of the base
input-base-dome-height = height of the base's dome
input-base-funnel = funnel of the base
input-burnout-dewax = steam dewaxing
input-burnout-kiln = kiln and programme
input-burnout-pour-at = time of the pour
input-burnout-start = kiln when it is loaded
input-crucible-least-fill = least the crucible throws out cleanly
input-crucible-usable = what the crucible holds
input-flask-alloy-density = alloy of the flask
input-flask-button-least = least button
input-flask-button-share = button as a share of the tree
input-flask-collar = collar
input-flask-height = height of the flask
input-flask-inner-diameter = inner diameter of the flask
input-flask-melt-loss = loss in the melt
input-flask-reserve = metal in reserve
input-flask-top-needed = room needed above the tree
input-flask-tree-volume = tree of the flask
input-flask-vessel = steel of the flask
input-flask-wall-needed = room needed to the wall
input-kiln-band = where the kiln slows down
input-kiln-ceiling = highest the kiln goes
input-kiln-hot-zone = how much hotter the kiln's hottest place is
input-kiln-offset = true temperature less the kiln's reading
input-kiln-rate = fastest the kiln goes
input-line-alloy-density = alloy of the line
input-line-pattern-volume = pattern of the line
input-line-pieces = pieces ordered
input-lot-fineness = fineness of the lot
input-material-above-700 = time the material needs at 700 °C and above
input-melt-draw = metal drawn from a lot
input-melt-target = mark to be reached
input-mix-bowl = mixing bowl
input-mix-powder-step = step the powder is weighed in
input-mix-ratio = liquid to powder
input-mix-spill = mixed for spill
input-pattern-file-area = surface of the file
input-pattern-file-length = length in the file
input-pattern-file-scale = scale of the print
input-pattern-least-wall = thinnest wall that is cast without fear
input-pattern-file-unit = millimetres in the file's unit
input-pattern-file-volume = volume of the pattern
input-pattern-length = length of the pattern
input-pattern-material-density = material of the pattern
input-pattern-shrink = shrinkage of the pattern material
input-pour-metal-chosen = metal when poured, as chosen
input-pour-metal-high = metal at most
input-pour-metal-low = metal at least
input-pour-mould-chosen = mould when poured, as chosen
input-pour-mould-high = mould at most
input-pour-mould-low = mould at least
input-pour-quench-from = earliest quench
input-pour-quench-until = latest quench
input-powder-bowl-vacuum = bowl under vacuum
input-powder-density = powder
input-powder-finish-before = rest before gloss-off
input-powder-flask-vacuum = flask under vacuum
input-powder-gloss-off = gloss-off
input-powder-liquid-density = density of the mixing liquid
input-powder-mix = mixing
input-powder-planned-ceiling = highest planned for the powder
input-powder-pour = pouring the slurry
input-powder-set = setting before heat
input-powder-slurry-rise = how much the slurry rises
input-powder-stones-ceiling = highest with stones in the powder
input-powder-stop-ceiling = highest the powder ever sees
input-price-fineness = fineness paid for
input-price-for = weight the price is for
input-price-of-alloy = price of the alloy
input-price-premium = premium on the metal
input-price-read = price of the metal
input-site-altitude = height above the sea
input-site-barometer-read = air pressure read today
input-site-room = room temperature
input-site-water = water temperature
input-size-bore = bore of the ring size
input-size-finishing-opens = what finishing opens
input-stage-hold-asked = hold of the segment
input-stage-hours = hours of the stage
input-stage-ramp-asked = ramp asked for
input-stage-ramp-rate = rate asked for
input-stage-target = target of the stage
input-studio-balance-step = step of the balance
input-tree-between = room between two parts
input-tree-between-needed = room needed between two parts
input-tree-count = how many
input-tree-joint = height of the joint over the dome
input-tree-length-unsaid = sprue measures
input-tree-measured-diameter = measured diameter of the tree
input-tree-measured-height = measured height of the tree
input-tree-reach-of-shape = reach of a piece by its shape
input-tree-rise-of-shape = rise of a piece by its shape
input-tree-sprue-angle = angle of the sprues
input-tree-trunk-needed = room needed to the main sprue
input-tree-volume-unknown = tree, weighed or built up
input-tree-welds = welds and fillets
input-weigh-gross = gross weight
input-weigh-net-read = net weight
input-weigh-tare = tare

## Sizes back to the slicer, moulds and their shots, samples weighed in water, experiments.

finding-irreplaceable-beside-trial = { $pattern } cannot be made again, and this flask is an experiment: nobody knows yet how it ends. Put it into a flask of which everything is known.
finding-mould-unknown = The studio has no mould { $mould }, so shots, wax and shrinkage of { $pattern } are not known. Correct the number, or enter the mould.
finding-shot-light = One shot weighs { $shot } and { $pattern } alone { $weight }. Shots come out short, or the wax of a batch is reckoned too small. Weigh a whole shot, its sprue with it.
finding-sample-light = The sample of { $material } is too light: { $density } ± { $within }. A charge reckoned from it may be off by as much. Weigh a block of 10 g or more, cured and dry.
finding-density-off-shelf = { $material } came to { $weighed } in water, and the shelf says { $shelf }. Every weight of metal follows it. Take the weighed density, or weigh once more.
page-mould = moulds
page-pair = pairs
page-weighing = samples weighed in water
rule-pattern-implied-density-title = Density by scale and file
rule-pattern-implied-density-why = Beside the material's density it shows a print that is uncured or wrongly scaled. A sealed void weighs nothing in the file and on the scale alike.
rule-size-within-sizes-title = Spread of the scale, in sizes
rule-size-within-sizes-why = Charts and sticks of one scale differ, and a size is no surer than they are.
rule-size-wide-bore-title = Finished bore of a wide band
rule-size-wide-bore-why = A wide band goes over the knuckle less easily, so it is made a little larger.
rule-size-comfort-bore-title = Finished bore of a comfort fit
rule-size-comfort-bore-why = A rounded inside wears larger than it measures, so it is drawn smaller.
rule-size-cast-bore-title = Bore as cast
rule-size-cast-bore-why = Finishing opens the bore, so it leaves the flask smaller.
rule-size-cast-outside-title = Outer size as cast
rule-size-cast-outside-why = Finishing takes metal off the outside, so it leaves the flask larger.
rule-size-on-pattern-title = Measure of the pattern
rule-size-on-pattern-why = The metal shrinks as it cools, so the pattern is larger.
rule-size-on-print-title = Measure of the print or master
rule-size-on-print-why = A wax is smaller than the master of its mould, and a resin may shrink as it cures.
rule-size-typed-title = Measure to type in the slicer
rule-size-typed-why = A printer prints a little too large or too small, always by the same line: solved for what must be typed.
rule-size-typed-within-title = Spread of the measure to type
rule-size-typed-within-why = What the charts of a scale leave open is still open in the slicer.
rule-size-scale-title = Scale to type in the slicer
rule-size-scale-why = What is to be printed over what the file has. A ring is scaled by its bore.
rule-mould-shots-title = Shots to make
rule-mould-shots-why = Some shots are thrown back, so more are made than are wanted.
rule-mould-wax-title = Wax for the shots
rule-mould-wax-why = So much must be in the pot, sprues of the shots with it.
rule-mould-shrink-title = Shrinkage from master to wax
rule-mould-shrink-why = The rubber gives first and the wax after it; shares of shares multiply.
rule-weighing-water-density-title = Density of the water
rule-weighing-water-density-why = Warm water is lighter.
rule-weighing-displaced-title = Water pushed aside
rule-weighing-displaced-why = What hangs in water is lighter by the water it pushes aside. The sinker's own share is in both readings and drops out.
rule-weighing-density-title = Density of the sample
rule-weighing-density-why = Its mass over its volume, and its volume is the water's it pushed aside.
rule-weighing-within-title = Uncertainty of the density
rule-weighing-within-why = A balance shows whole steps. The lighter the sample, the more a step weighs.
rule-weighing-within-share-title = Uncertainty as a share
rule-weighing-within-share-why = One per cent of density is one per cent of metal.
rule-weighing-off-shelf-title = Difference from the shelf
rule-weighing-off-shelf-why = A material that is not what its sheet says makes every charge wrong by the same share.
input-size-scale-within = spread of the scale's charts
input-size-step = growth of the bore a size
input-size-comfort = what a comfort fit wears larger by
input-size-finishing-takes = what finishing takes off the outside
input-size-finished = finished outer size
input-size-wide-band-adds = circumference added for a wide band
input-size-printer-slope = printer, measured over nominal
input-size-printer-offset = what the printer adds to every measure
input-size-file-bore = bore in the file
input-size-file-side = outer size of the file
input-mould-pieces = pieces wanted
input-mould-rejects = shots thrown back
input-mould-shot = wax of one shot
input-mould-rubber-shrink = shrinkage of the rubber
input-mould-wax-shrink = shrinkage of the mould's wax
input-mould-wax-at = wax when it is shot
input-mould-pressure = injection pressure
input-weighing-dry = sample, dry
input-weighing-sinker = sinker in water
input-weighing-both = sample and sinker in water
input-weighing-water = water the sample hung in

## The bench sheet.

mark-care = CARE
mark-look = LOOK
mark-missing = MISSING
page-of = page { $page } of { $pages }
page-continued = { $title }, continued
head-batch = Batch { $batch }
head-version = version { $version }
head-version-unsaved = version { $version }, not saved
range = { $low } to { $high }
value-range = within { $range }
flask-size = Ø{ $size } { $unit }
base-number = { $base }, number { $number }

sheet-foot = Data sheets, the equipment's manuals, local codes and licensed trades come first. Nothing printed here makes a step safe.
sheet-flask = Flask { $flask }, { $size }, { $alloy }
sheet-scratch = Scratch { $scratch } into the face of this flask. Paper burns.
sheet-batch = The batch as a whole
sheet-order-book = Order book
sheet-findings = Before you begin
sheet-findings-batch = What belongs to no flask
sheet-tree = Tree and pieces
sheet-no-tree = No tree is chosen for this flask.
sheet-tree-name = Tree
sheet-base = Base
sheet-mix = Investment
sheet-burnout = Burnout
sheet-no-burnout = This flask is in no kiln load yet.
sheet-no-programme = The load has no programme yet.
sheet-metal = Melt
sheet-pour = Pour
sheet-quench = Quench and devest
sheet-orders = Open orders
sheet-no-orders = No piece is open.
sheet-costs = For the studio only

column-client = Client
column-design = Design
column-size = Size
column-bore = Bore
column-pieces = Pieces
column-numbers = Numbers
column-rough-each = Rough each
column-rough-all = Rough in all
column-material = Material
column-weight = Weighed
column-volume = Volume
column-step = Step
column-takes = Takes
column-over-at = Clock
column-really = Really
column-tick = Done
column-stage = Stage
column-target = Target
column-ramp = Ramp
column-hold = Hold
column-start = Begins
column-end = Ends
column-due = Due
column-alloy = Alloy
column-per-gram = A gram
column-price-of = By the price of
column-price-on = Of
column-metal-cost = Metal

piece-own-size = Piece { $number } of { $design } has a size of its own, { $size }.
piece-stones = Stones are set in { $design } and cast in place.
piece-irreplaceable = { $design } cannot be made again.
not-weighed = not weighed
whole-tree = Whole tree
tree-diameter = Diameter
tree-height = Height
pieces-of = { $open } of { $all }

list-flask = Flask
list-flasks = Flasks
list-reached = Stage
list-step = Step
list-cancelled = cancelled
list-rejected = rejected
list-mixing = Mix and invest
list-dewaxing = Steam
list-stage = Stage { $number }
list-pour = Pour
list-no-pieces = No piece is ordered.
list-no-loads = No kiln load is planned.

mix-powder = POWDER
mix-water = WATER
mix-liquid = MIXING LIQUID
mix-of = { $what }, mix { $number } of { $mixes }
mix-powder-name = Powder
mix-lot = Powder lot
mix-ratio = Liquid to powder
mix-slurry = Slurry
mix-slurry-density = Slurry density
mix-water-c = Liquid at
mix-gauge = Gauge that boils it
gauge-both = { $kpa } or { $inhg }
mix-by = Start mixing by
mix-invested-by = Invested by
mix-step-mix = Mix
mix-step-bowl = Bowl under vacuum
mix-step-pour = Pour
mix-step-flask = Flask under vacuum
mix-finish-by = Flask at rest by

burnout-load = Load
burnout-kiln = Kiln
burnout-position = Position
burnout-programme = Programme
burnout-own = the studio's own segments
burnout-dewax = Start the steam
burnout-kiln-start = Start the kiln
burnout-pour = Pour
burnout-total = Takes in all
burnout-top = Highest stage
burnout-hot = Over 700 °C
burnout-both = The table does not say whether its hours include the ramps. If they do, the programme takes { $with }; if not, { $without }. The longer one is planned.

metal-charge = CHARGE ON THE BALANCE
metal-shared = Whole melt { $melt }, for flasks { $flasks }
metal-new = New metal
metal-scrap = Scrap
metal-draw = Lot { $lot }, { $kind }
metal-tree = Metal of the tree
metal-button = Button
metal-reserve = Reserve
metal-loss = Lost in the melt
metal-exact = Charge, worked out
metal-funnel = Funnel holds
metal-molten = Charge when molten
metal-crucible = Crucible
metal-smallest = Smallest that takes it
metal-fill = Crucible full to
metal-fineness = Fineness by the lots { $fineness }, not assayed.

pour-metal = Metal
pour-mould = Mould
pour-superheat = Over the liquidus
pour-section = Section
section-assumed = { $section }, assumed
pour-turn = Turn
pour-drive = Driven by
room-wall = Room to the wall
room-top = Room above the tree
room-of = { $has } of { $needs } needed

quench-never = Never quench this flask. Let it cool in air.
quench-window = Quench { $window } after the pour.
quench-unknown = No quench time is known for this alloy. Look at its data sheet.

really-gloss-off = Gloss-off
really-vacuum = Gauge
really-water-c = Liquid at
really-poured-at = Poured at
really-quench = Quenched after
really-good = Good pieces

missing-list = Not known without { $what }.
finding-accepted = { $hands } answers for this, { $on }. { $reason }

costs-why = Not for clients. Rough weight at the price of a gram, without work, loss or tax.

## Cautions, at the step they belong to. They name the hazard and the first measures, and claim no more.

caution-uncured-resin = Uncured resin sensitises the skin for good. Nitrile gloves, no bare touch, cure fully before the tree.
caution-solvent = Wash solvent burns and its vapour creeps. No flame or hot tool near it, open air or extraction.
caution-carving-dust = Carving dust. Extraction, and a damp cloth afterwards.
caution-silica-mix = Dry powder gives off breathable silica, which scars lungs. Fitted respirator, powder into water slowly, no sweeping dry.
caution-special-liquid = The mixing liquid stings skin and eyes. Gloves and goggles.
caution-powder-unknown = The powder is not chosen, so its hazards are not listed here.
caution-bell-jar = A bell jar can burst inwards. No chips or cracks, goggles on, let air in slowly.
caution-dewax-steam = Steam and running wax scald. Face shield, long gloves, nobody under it.
caution-burnout-fume = Burnout gives off fume and carbon monoxide, and overheated gypsum gives off sulphur gas. Hood to the open air before the kiln is lit.
caution-resin-fume = Resin burns with sharp, unhealthy smoke. Nobody stays beside the kiln below full heat.
caution-ammonia = This mould gives off ammonia as it is fired. Hood on, eyes and nose away.
caution-damp-charge = Damp or greasy metal throws the melt out. Warm the charge, crucible and tools, and add nothing wet.
caution-torch = Where a torch is used, check hoses, valves and flashback arrestors, and clear away what burns.
caution-alloy-unknown = The alloy is not chosen, so its hazards are not listed here.
caution-nickel = Nickel fume and dust harm lungs and skin, and worn nickel sensitises. Extraction, gloves for filings.
caution-cobalt = Cobalt fume and dust harm lungs and skin. Extraction.
caution-zinc = Zinc burns off as white fume that brings metal fume fever. Extraction, and no more heat than needed.
caution-cadmium = Cadmium fume kills, and it does not warn. Do not melt this without extraction made for it.
caution-lead = Lead fume and dust poison slowly. Extraction, no food here, wash hands and change clothes.
caution-beryllium = Beryllium fume and dust ruin lungs for good. Do not melt or grind this without extraction made for it.
caution-copper-fume = Copper fume brings metal fume fever. Extraction.
caution-manganese = Manganese fume harms the nerves. Extraction.
caution-antimony = Antimony fume is poisonous. Extraction.
caution-bright-heat = This metal is too bright for bare eyes. Shade for its heat on everybody who looks.
caution-inert-cover = This metal takes up gas. Melt it under cover gas or vacuum, and mind that such gas displaces air.
caution-water-reaction = This metal and its dross explode with water. Everything dry, no quench until it is long solid.
caution-soldered = A lot drawn has solder in it, which may give off cadmium, zinc or lead. Extraction.
caution-hot-flask = A flask this hot may not glow. Tongs, long gloves, face shield, a clear way, nobody behind you.
caution-molten-metal = Splashes burn through ordinary clothes. Face shield, leather or wool, closed boots under the trousers, dry ground.
caution-centrifuge = A spinning arm throws metal and breaks bones. Balanced, guard shut, flask seated the right way round, everybody out of its plane.
caution-vacuum-pour = Gasket whole and trap clear. A cracked mould lets the pump draw metal in.
caution-quench-steam = The flask throws steam and scalding mud in the bucket. Face shield, long tongs, arm's length.
caution-silica-quench = Quench steam carries silica out. Respirator, extraction.
caution-silica-devest = Broken mould is silica dust. Keep it wet, respirator on, nothing down the drain.
caution-acids = Pickle and investment remover are acids. Goggles, gloves, acid into water, never mixed, antidote and data sheet at hand.

## Quotes.

dash = –
cause-not-known = not known yet
column-piece = Piece
column-work = Work
column-sum = Sum
column-what = For
column-amount = Amount

quote-title = Quote for { $client }
quote-title-number = Quote { $number } for { $client }
quote-foot = Weights are estimates, metal prices are of the day they name.
quote-sent = Sent
quote-valid = Valid until
quote-accepted = Accepted
quote-fixed = Price fixed for
quote-pieces = Pieces
quote-tolerance = Rough weights are as cast and cut off clean, before finishing, and may differ by ± 3 %.
quote-metal = Metal
quote-no-price = no price yet
quote-price-of = { $alloy }, by the price of { $of }
quote-sums = Sums
quote-work = – { $what }
quote-line = { $quantity } × { $what }
quote-besides = Besides the pieces
quote-net = Before tax
quote-tax = Tax
quote-tax-share = Tax, { $share }
quote-total = Total
quote-deposit = Deposit, before work begins
quote-rest = Left after the deposit
quote-no-total = A price or weight above is not known yet, so there is no total.
quote-terms = Terms
quote-accept = Acceptance
quote-accept-words = I accept this quote with its terms.
sign-date = Date
sign-name = Signature
quote-none = No order, so nothing to quote.

# Print runs and calibrations of printers.
page-print = print runs
finding-printer-unknown = The studio's file has no printer { $printer }. Layers, time and plates are not known. Add it to the printers, or correct the name.
finding-print-no-setting = { $printer } has no setting for { $material }. Layers and time are not known. Write down its layer and its light.
finding-print-too-tall = { $pattern } is { $height } high, and the printer takes { $room }. The print would end without its top. Turn the part, cut it in two, or take another printer.
finding-print-over-plate = { $pattern } takes { $x } by { $y } and does not lie on a plate of { $plate-x } by { $plate-y }. It would be cut off at the rim. Stand it up, or take a larger printer.
finding-print-washed-long = Washed for { $washed }, and this resin bears { $most } in solvent. Thin walls such as { $pattern } swell and soften, and come out larger or bent. Let them dry long, measure them, and wash shorter next time.
finding-print-cured-short = Cured for { $cured } before the rinse, where { $least } of ultraviolet light is the least. Soft skin goes with the rinse, and what stays uncured attacks the mould. Cure again.
finding-print-not-clean = The surface is not clean after the rinse. Uncured resin on it attacks the mould and leaves rough castings. Cure and rinse again until it is clean.
finding-print-uncalibrated = No accepted calibration of { $printer } with { $material }. Prints come out as large as the printer makes them. Measure a few printed lengths and accept them.
finding-recheck-due = The calibration of { $printer } is to be measured again on { $due }.
finding-recheck-passed = The calibration of { $printer } was to be measured again on { $due }. Lamp and film age, and rings come out in another size. Print and measure the lengths again.
rule-print-highest-title = Height of the highest part
rule-print-highest-why = A plate is done when its highest part is. Lying parts print faster than standing ones.
rule-print-layers-title = Layers
rule-print-layers-why = Half the layer is twice the layers, and nearly twice the time.
rule-print-time-title = Time of one plate
rule-print-time-why = Time goes by height, not by the number of parts. A full plate takes no longer than one ring.
rule-print-time-all-title = Time of all plates
rule-print-time-all-why = When the prints can be ready to wash, at the latest.
rule-print-fits-title = Parts of this kind on one plate
rule-print-fits-why = In rows and columns, as drawn or turned by a quarter.
rule-print-ground-title = What these parts take of the plate
rule-print-ground-why = A gap all round, so that parts can be washed and taken off.
rule-print-ground-all-title = What all parts take of the plate
rule-print-ground-all-why = It is what no arrangement can save.
rule-print-plates-least-title = Plates at least
rule-print-plates-least-why = The plan beside it is as good as can be where both are the same number.
rule-print-row-volume-title = Volume of these prints
rule-print-row-volume-why = Without supports.
rule-print-parts-volume-title = Volume of all prints
rule-print-parts-volume-why = Without supports.
rule-print-resin-title = Resin used up
rule-print-resin-why = Fill the tank with more: it must never run dry under a print.
rule-print-resin-mass-title = Weight of that resin
rule-print-resin-mass-why = Bottles are sold and weighed by the gram.
rule-print-cost-title = Cost of that resin
rule-print-cost-why = Supports and washed-off resin are paid for as well.
rule-calibrate-sum-nominal-title = Sum of the drawn lengths
rule-calibrate-sum-nominal-why = A step to their mean.
rule-calibrate-sum-measured-title = Sum of the measured lengths
rule-calibrate-sum-measured-why = A step to their mean.
rule-calibrate-mean-nominal-title = Mean of the drawn lengths
rule-calibrate-mean-nominal-why = The line goes through both means.
rule-calibrate-mean-measured-title = Mean of the measured lengths
rule-calibrate-mean-measured-why = The line goes through both means.
rule-calibrate-square-title = Distance of a drawn length from the mean, squared
rule-calibrate-square-why = Lengths far apart hold the line better than lengths alike.
rule-calibrate-product-title = Distances of a drawn and its measured length from their means, multiplied
rule-calibrate-product-why = It tells how the two go together.
rule-calibrate-squares-title = Sum of those squares
rule-calibrate-squares-why = The larger, the surer the slope.
rule-calibrate-products-title = Sum of those products
rule-calibrate-products-why = Divided by the squares it is the slope.
rule-calibrate-slope-title = Measured for every millimetre drawn
rule-calibrate-slope-why = Shrinking or swelling goes with length. Under 1 the printer prints small.
rule-calibrate-offset-title = Measured more than drawn, whatever the length
rule-calibrate-offset-why = Light that spreads adds the same skin to a small part and to a large one. A scale alone never mends it.
rule-calibrate-residual-title = Distance from the line
rule-calibrate-residual-why = One far off the others is a slip of the calliper or a print that lifted. Look for a pattern, not for small numbers.
rule-calibrate-residual-square-title = The same, squared
rule-calibrate-residual-square-why = A step to the spread.
rule-calibrate-residuals-title = Sum of those squares over the rows
rule-calibrate-residuals-why = The line is the one that makes it least.
rule-calibrate-free-title = Rows beyond the two that the line takes
rule-calibrate-free-why = Two rows always lie on a line and say nothing of how true it is.
rule-calibrate-spread-title = Spread about the line
rule-calibrate-spread-why = Printer and calliper together: what one part may be off although the line is right.
rule-calibrate-slope-error-title = Uncertainty of the slope
rule-calibrate-slope-error-why = One standard error. Longer lengths and more of them make it smaller.
rule-calibrate-offset-error-title = Uncertainty of the offset
rule-calibrate-offset-error-why = One standard error. Short lengths make it smaller.
rule-calibrate-drawn-title = To be drawn for the wanted measure
rule-calibrate-drawn-why = Drawn like this, the print comes out as wanted.
rule-calibrate-drawn-error-title = Uncertainty of what is drawn
rule-calibrate-drawn-error-why = One standard error for one part. Far outside the measured lengths it grows.
input-print-count = prints of one pattern
input-print-part-x = width of the part on the plate
input-print-part-y = depth of the part on the plate
input-print-part-height = height of the part above the plate
input-print-plate-x = width of the plate
input-print-plate-y = depth of the plate
input-print-room = highest part the printer takes
input-print-gap = room between two parts
input-print-layer = thickness of a layer
input-print-base-layers = layers that are lit longer
input-print-base-exposure = light for each of those layers
input-print-exposure = light for each layer
input-print-travel = moving and waiting, each layer
input-print-supports = supports and waste, as a share of the parts
input-print-resin-price = price of the resin
input-print-plates = plates, as the parts were laid
input-print-washed = time in solvent
input-print-wash-most = most time in solvent
input-print-cured = ultraviolet light before the rinse
input-print-cure-least = least ultraviolet light before the rinse
input-calibrate-nominal = length as drawn
input-calibrate-measured = length as measured
input-calibrate-rows = lengths measured along the axis
input-calibrate-wanted = measure the part is to come out at

# The batch plan.
page-plan = the batch plan
rule-plan-trunk-length-title = Longest main sprue
rule-plan-trunk-length-why = The plan reckons with the longest one a flask takes, so that its metal is never too little.
rule-plan-trunk-metal-title = Metal of the main sprue
rule-plan-trunk-metal-why = It is poured with the pieces and stays in the crucible’s share.
rule-plan-piece-metal-title = Metal of a piece with its feed
rule-plan-piece-metal-why = A piece brings its feed along wherever it hangs.
rule-plan-pourable-title = Metal a crucible pours
rule-plan-pourable-why = The charge is rounded up on the balance, and some is lost in the melt.
rule-plan-heaviest-tree-title = Heaviest tree of a crucible
rule-plan-heaviest-tree-why = The button comes out of the same charge.
rule-plan-for-pieces-title = Metal left for pieces
rule-plan-for-pieces-why = The main sprue is there however many pieces hang.
rule-plan-tree-metal-title = Metal of a planned tree
rule-plan-tree-metal-why = Pieces, feeds and main sprue are one casting until the saw.
input-plan-main-diameter = diameter of the usual main sprue
input-plan-feed-diameter = diameter of the usual feed
input-plan-feed-length = length of the usual feed
input-plan-gap = room between two pieces
input-plan-count = how many
input-plan-hung-metal = metal of what is to hang
