### What prints beside the bench sheet's and the quote's own words: sorts of paper, the kiln sheet, slips, receipts, drawings.

sort-bench = Bench sheet
sort-kiln = Kiln sheet
sort-quote = Quote
sort-slip = Order slip
sort-receipt = Metal receipt
paper-title = { $sort }, { $batch }
paper-title-client = { $sort } for { $client }
paper-title-both = { $sort } for { $client }, { $batch }
sheet-none = No flask and no order, so nothing stands on the bench.

## Drawings

sheet-drawing = Tree in the flask
drawing-caption = In section, to scale
drawing-size = Ø { $diameter } × { $height }
drawing-collar = collar { $what }
drawing-no-flask = In no flask yet
drawing-far-end = far end
drawing-button-end = button end
drawing-numbers = Numbers
drawing-key = { $place } order { $order } of { $client }
drawing-says = Section of the flask { $size } with its tree, { $count ->
        [one] one piece
       *[other] { $count } pieces
    } drawn. Room to the wall { $wall }, room above the tree { $above }.

## The bench sheet

mix-in-all = All mixes
mix-in-all-of = { $powder } of powder, { $water } of liquid

## The kiln sheet

kiln-title = Kiln load { $load }, { $kiln }
kiln-flasks = Flasks in the kiln, in the order of pouring
kiln-no-flasks = No flask is in this load yet.
kiln-readings = What the kiln showed
kiln-curve-says = The programme over the clock, from { $start } to the pour { $pour }.
kiln-none = No kiln load, so no kiln sheet.
column-in = In
column-scratched = Face
column-flask = Flask
column-position = Position
column-invested-by = Invested by
column-mould = Mould at pour
column-turn = Turn
column-poured-at = Poured at
column-clock = Clock
column-display = Display
column-probe = Second probe
column-remark = Air, smoke, remarks

## The order slip

slip-title = Order { $order } for { $client }
slip-taken = Taken
slip-due = Due
slip-lines = What is ordered
slip-pieces = Piece by piece
slip-made = Made
slip-cleaned = Clean
slip-on-tree = On tree
slip-cast = Cast
slip-cut = Cut off
slip-weight = Weight
slip-finished = Finished
slip-delivered = Out
slip-remark = Line { $line }. { $words }
slip-code-why = A code is the line and the number of the piece in it. It stays with the piece from the print to the client.
slip-more = { $count ->
        [one] One more piece has
       *[other] { $count } more pieces have
    } no row here.
slip-foot = Stays with the pieces. It names one client and holds no price.
slip-none = No order, so no slip.
column-line = Line
column-mark = Mark
column-set = Set
column-finish = Finish
column-code = Code
column-tree-flask = Tree, flask
tree-in-flask = { $tree }, in { $flask }

## The receipt for metal

receipt-title = Receipt for metal of { $client }
receipt-metal = What came in
receipt-fine = Fine metal in it
receipt-fine-why = Fine metal is weight times fineness. What was not assayed stands by the papers it came with, or by what was said of it.
receipt-terms = What becomes of it
receipt-yours = This metal stays yours. It is kept under its own label and accounted for in grams of fine metal.
receipt-apart = It is melted with other metal only with your consent in writing.
receipt-weighed = Weights are those of the studio's balance when it came in. Stones, solder and dirt that are found later are told and weighed apart.
receipt-brought = brought by the client
receipt-not-assayed = its papers, not assayed
receipt-foot = Metal is received by weight. Keep this receipt.
receipt-none = No metal of a client's is in the house, so no receipt.
column-on = On
column-lot = Label
column-metal = Metal
column-paper = Paper
column-in-all = In all
column-fineness = Fineness
column-by = By
column-fine = Fine metal
sign-studio = For the studio
sign-client = Client

## A batch plan

plan-pieces = { $count } × { $design } for { $client } ({ $numbers })
plan-flask-of-job = { $size }, flask { $name } of this batch
plan-column-flask = Flask
plan-column-alloy = Alloy
plan-column-count = Pieces
plan-column-pieces = Which
plan-column-metal = Metal
plan-column-crucible = Crucible
plan-nothing = Every piece hangs on a tree: nothing is open.
plan-total = { $pieces ->
        [one] One piece
       *[other] { $pieces } pieces
    } in { $flasks ->
        [one] one flask
       *[other] { $flasks } flasks
    }, { $volume } to fill with investment, trees and domes not taken off.
plan-proven = Proven, by the places each piece was found to take: no plan has fewer flasks, and none with so few takes less investment.
plan-proven-flasks = Proven, by the places each piece was found to take: no plan has fewer flasks. One with so few that takes less investment was not found; less than { $volume } is impossible.
plan-bound = Proven, by the places each piece was found to take: no plan has fewer than { $flasks ->
        [one] one flask
       *[other] { $flasks } flasks
    }. Whether one has fewer than this one was not settled.
plan-stopped = The search was stopped. This is the best plan found until then.
plan-arranged = Every tree was arranged with its pieces, and everything hangs. Building the plan writes the places down.
plan-not-arranged = its tree was not arranged: how everything hangs is still to be found.
plan-short = room was found for { $most } of { $of }. Part them, or give their sprues another length.
plan-straighter = { $what }: sprues at { $angle }, so that they keep clear of the main sprue.
plan-left-over = In no flask:
plan-left-no-alloy = { $what }: the order says no alloy.
plan-left-alloy-gone = { $what }: the alloy { $alloy } is not on the shelf.
plan-left-no-pattern = { $what }: no pattern is chosen.
plan-left-being-read = { $what }: the pattern’s file is still being read.
plan-left-no-volume = { $what }: the pattern has neither a weight with its material nor a file with a volume.
plan-left-no-size = { $what }: nothing says how long, wide and high the pattern is.
plan-left-crucible = { $what }: { $crucible } must not melt { $alloy }. Choose another crucible, or none.
plan-left-too-large = { $what }: with room around it takes a flask of Ø { $wide } × { $high } inside. The largest there is has { $largest }.
plan-left-no-place = { $what }: finds no place on the usual tree, not even in the largest flask, { $largest }. A longer sprue or a thinner main sprue may help.
plan-left-none-free = { $what }: every flask that is large enough is in use, or the studio has none.
plan-left-metal = { $what }: takes { $metal } of metal with feeds. A charge of { $crucible } leaves { $most } for pieces in the best flask.
plan-left-too-many = { $what }: these { $count } are to stay together and would take { $share } of the tree in the flask { $size }, the roomiest for them.
plan-left-moulds = { $what }: they are to stay together, but some want the mould at { $least } or hotter, others at { $most } or cooler.
plan-left-kept = { $what }: the flask they were kept in no longer takes them. Let it go and plan again.
plan-left-kiln = { $what }: the kiln has { $places ->
        [one] one place
       *[other] { $places } places
    } left, and what is due earlier takes them.
plan-left-no-room = { $what }: beside the { $flasks ->
        [one] one flask
       *[other] { $flasks } flasks
    } of this plan no flask that takes them is free.
plan-with = Reckoned with
plan-with-crucible = { $alloy } from { $crucible }: at most { $heaviest } for a tree with its feeds and main sprue.
plan-with-no-crucible = { $alloy }: no crucible of the shelf may melt it, so its metal is no limit.
plan-with-tree = Main sprue Ø { $main }, feeds Ø { $width } × { $feed } at { $angle }, pieces { $gap } apart.
plan-with-own-flasks = The flasks in the studio’s register, less those in use.
plan-with-shelf = Every flask of the shelf, as many as are needed: the studio’s register names none.
plan-with-kiln = { $kiln } has { $places ->
        [one] one place
       *[other] { $places } places
    }, of which { $free } are free.
plan-with-no-kiln = No limit by the kiln.

# What a flask with holes or a collar asks for.
mix-wrap = The wall of this flask has holes: wrap it before it is filled, and take the wrap off before the kiln. Lay a whole gasket under its flange when it is poured.
mix-collar = The collar of { $collar } stays on until the mould is set. Then cut the mould level with the rim.
mix-top-up = Top up to the rim while the slurry still flows.
cut-log = { $count } readings over { $time }, from { $least } to { $most }.
cut-log-from = The first at { $at }.
cut-drop = Fell from { $high } to { $low } between { $from } and { $to } after the first reading, and did not rise again.
cut-drop-recovers = Fell from { $high } to { $low } between { $from } and { $to } after the first reading, then rose again.
cut-band = { $least } to { $most }
cut-says = Flask { $flask }: { $answer }. { $why }
cut-not-fired = GO ON
cut-not-fired-why = Its coldest corner was never fired; the core is at { $core } at the end. Heat it again no faster than from cold.
cut-reheat = REHEAT
cut-reheat-why = Its coldest corner stayed at { $corner } or hotter after it was fired; the core is at { $core } at the end. Heat it again slowly and hold the last stages in full.
cut-marginal = MARGINAL
cut-marginal-why = Its coldest corner came down to { $corner }, into the change of cristobalite or close to it; the core is at { $core } at the end. Only what can be lost is poured into it, nothing that cannot be made again, with nobody near and the vacuum off at the first sign of a leak.
cut-scrap = SCRAP
cut-scrap-why = Its coldest corner came down to { $corner } after it was fired: cristobalite has changed back, and the mould is likely cracked. Do not pour. Let it cool, break it out wet with a respirator, and begin again.
work-printing = Print
work-washing = Wash and cure
work-tree = Trees
work-investing = Invest
work-setting = Set
work-dewax = Steam
work-loading = Load the kiln
work-burnout = Burn out
work-pour = Pour
work-why-hours = nobody is there for all of it.
work-why-overlaps = it is not over when the next begins.
work-why-short = what follows begins too soon after it.
work-why-long = what it made waits longer than it should.
work-why-taken = another load of this batch has the kiln then.
work-why-past = it would have to begin before today.
work-why-none = no time for it was found in the weeks before.
work-title = The work before the pour
work-says = Backwards from the pour at { $pour }; what stands still between is meant to.
column-waits = Then waits
column-dry = Core dry at
column-hot = Core at 700 °C and up
column-core = Core at the pour
column-cavity = Outermost cavity then
column-out = May stand out
moulds-title = In the moulds
moulds-computed = Computed, from low to high conductivity: measure one flask of yours to know where it lies. Wax and steam are left out.
moulds-by-log = Computed from the kiln’s log, from low to high conductivity. Wax and steam are left out.
moulds-never = never
moulds-longer = over 20 min
kiln-curve-core = Broken: the core of flask { $flask }, as is likely.
keyed-title = Into the controller
keyed-set = key in
keyed-ramp = ramp
keyed-hold = hold
keyed-true = at the probe
keyed-hottest = hottest place
keyed-coldest = coldest place
keyed-full = full speed
keyed-hours = { $hours } h { $minutes }
keyed-lowered = Stage { $stage } is over the ceiling and was lowered to it.
keyed-no-full = The controller has no word for as fast as it can: stage { $stage } takes its fastest ramp.
keyed-too-fast = The ramp of stage { $stage } is faster than the controller takes; its fastest stands here.
keyed-too-slow = The ramp of stage { $stage } is slower than the controller takes, and goes up in steps.
keyed-same = Stage { $stage } and the next share one temperature, and are one row.
keyed-long-hold = The hold of stage { $stage } is longer than the controller takes, and stands in several rows.
keyed-too-many = { $by ->
    [one] One row more than the controller takes.
   *[other] { $by } rows more than the controller takes.
    } Least would change if these became one:
keyed-merge = stages { $first } and { $second }, then up to { $off } off the programme.
third-front-left = front left
third-front-middle = front, in the middle
third-front-right = front right
third-middle-left = left, half way in
third-middle = in the middle
third-middle-right = right, half way in
third-back-left = back left
third-back-middle = back, in the middle
third-back-right = back right

## The account of a client's own metal

sort-account = Metal account
account-title = Account of the metal of { $client }
account-metal = Account in { $metal }
account-castings = Castings
account-back = Handed back
account-deposit = Fine metal that came in
account-cast = In good castings
account-returned = Handed back
account-loss = Loss agreed
account-balance = Still held, fine
account-owed = A balance below nought is metal of the studio's that was cast beyond what came in. It is owed in fine grams or in money, as agreed.
account-why = Fine metal is weight times fineness. Castings and sprues carry the fineness of their melt, by the papers of the lots in it; nothing was assayed unless an assay is named.
account-batch = This account is of one batch. What other batches cast of the same lots stands in theirs.
account-flask = Castings of flask { $flask } together
account-sprues = Sprues and button
account-lot = Lot { $lot }, as it came
account-foot = Weights are those of the studio's balance.
account-none = No metal of a client's is in the house, so no account.

## What lies in a parcel

sort-parcel = Parcel slip
parcel-of = Parcel slip, { $to }
parcel-title = To { $to }: { $purpose }
parcel-pieces = What lies in it
parcel-trees = Trees
parcel-not-weighed = not weighed
parcel-sent = Sent on
parcel-carrier = Carrier
parcel-promised = Promised back
parcel-weight = Weight together
parcel-law = By law
parcel-law-heading = What the law asks
parcel-no-law = No country is chosen in the settings, so nothing is said of what the law asks.
parcel-law-source = { $country }. { $notes }Source: { $source }. Laws change, and this is no advice: the assay office knows.
parcel-exempt = No mark needed
parcel-legal = Finenesses that may be sold
parcel-none-exempt = every piece needs one
parcel-up-to = up to { $weight }
parcel-below = below { $weight }
parcel-order = Order of the work (common practice, no source)
parcel-step-shape = Cut off, solder and file to shape first: an assay scrapes the surface, and what is joined later was not assayed.
parcel-step-weigh = Weigh every piece as it goes, and write its weight on this slip.
parcel-step-mark = Let it be marked before stones, plating and the last polish: a punch bruises what lies around it.
parcel-step-set = Dress the mark from behind, then set, plate and polish.
parcel-step-later = Metal added after the mark, by sizing or repair, may have to be assayed again. Ask the office.
parcel-back = What came back
parcel-back-on = Back on
parcel-failed = Failed there
parcel-none-failed = none
parcel-photos = Pictures: { $photos }
parcel-handed-over = Handed over
parcel-received = Received
parcel-foot = Count and weigh before signing.
parcel-none = Nothing was sent out of the house, so no parcel slip.
mark-needed = needed
mark-exempt = exempt
mark-not-weighed = weigh it first
mark-nothing = –
out-hallmark = hallmark
out-setting = setting
out-sizing = sizing
out-repair = repair
out-plating = plating
out-casting = casting elsewhere
out-other = something else
