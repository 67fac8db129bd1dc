## The window's pages of orders, waxes and prints.

orders-empty = Here stands what clients ordered: how many of what, in which metal, by when. Everything else begins with it.
orders-first = Take on the first order, or look at the sample. A tree that is on the scale already needs no order.
orders-add = New order
orders-order = Order
orders-client = Client
orders-taken = Taken on
orders-due = Due
orders-due-on = due { $on }
orders-no-due = no date
orders-no-client = no client
orders-no-design = no design
orders-no-alloy = no alloy
orders-more = Notes, and taking the order out
orders-notes = Notes
orders-order-notes = Notes on the order
orders-line-notes = Notes on the line
orders-remove = Take this order out
orders-pieces = { $count ->
        [one] one piece
       *[other] { $count } pieces
    }
orders-lines = Lines of this order
orders-add-line = New line
orders-like-line = Another like this
orders-line = Line
orders-design = Design
orders-quantity = Pieces
orders-alloy = Alloy
orders-scale = Ring scale
orders-size = Size
orders-pattern = Pattern
orders-metal = Metal
orders-metal-each = Metal each
orders-rough = Rough each
orders-rough-all = Rough in all
orders-per-gram = Price of a gram
orders-cost = Metal of the line
orders-bore = Bore
orders-line-more = More about this line
orders-line-due = Due, if by itself
orders-mark = Mark
orders-finishing = Finishing each
orders-finish = Finish
orders-set = Set or pair
orders-remove-line = Take this line out
edit-orders-add = take on an order
edit-orders-client = name the client
edit-orders-taken = date the order
edit-orders-due = set when it is due
edit-orders-notes = write a note
edit-orders-remove = take an order out
edit-orders-add-line = add a line
edit-orders-design = name the design
edit-orders-quantity = change how many
edit-orders-alloy = choose the alloy of a line
edit-orders-size = change a size
edit-orders-pattern = choose a pattern
edit-orders-mark = set the mark
edit-orders-finishing = set the finishing time
edit-orders-finish = say how it is finished
edit-orders-set = join a set
edit-orders-remove-line = take a line out

patterns-empty = Here stand the waxes and prints that pieces are cast from. One on the scale, or its file, says how much metal fills its mould.
patterns-first = Make the first one, or drop files on the window: STL, OBJ, PLY or 3MF.
patterns-add = New pattern
patterns-pattern = Pattern
patterns-name = Name
patterns-material = Material
patterns-on-scale = On the scale
patterns-tare = What stands under it
patterns-sides-wait = The size counts once all three sides are there.
patterns-way = What was on the scale
patterns-alone = the pattern alone
patterns-with-under = with what it stands on
patterns-path = File
patterns-unit = Drawn in
patterns-set-unit = It is drawn in { $unit }
patterns-scale = Scale of the print
patterns-figures = What that comes to
patterns-weight = Weight of one
patterns-charge-volume = Volume, for the charge
patterns-quote-volume = Volume, for the quote
patterns-density = Density
patterns-area = Surface
patterns-modulus = Volume over surface
patterns-along = Along the sprue
patterns-across = Across it
patterns-deep = The third way
patterns-more = More about this pattern
patterns-section = Section
patterns-thinnest = Thinnest wall
patterns-along-typed = Along, as it hangs
patterns-across-typed = Across
patterns-deep-typed = Third way
patterns-irreplaceable = It cannot be made again
patterns-stones = Stones are set in it and cast in place
patterns-drained = Its hollow is drained and its core held
patterns-drained-do = Its drain holes are open and its core is held
patterns-labour = Making one
patterns-waste = Supports and waste
patterns-mould = Mould
patterns-pair = Makes a pair with
patterns-pair-like = The two are
patterns-pair-mirror = left and right
patterns-pair-alike = alike
patterns-pair-title = Pair
patterns-pair-mirror-of = Left and right with { $other }
patterns-pair-alike-of = Alike with { $other }
patterns-pair-fits = Their files fit: nowhere more than { $apart } apart.
patterns-pair-apart = Laid on each other, their files are up to { $apart } apart.
patterns-pair-apart-mirrored = One of them mirrored, their files are up to { $apart } apart.
patterns-pair-waits = Their files are being compared.
patterns-pair-no-files = Their shapes are compared once both have a file that can be read.
patterns-pair-weights = Difference in weight
patterns-inner = The solid inside is
patterns-inner-not-said = not said yet
patterns-inner-solid = solid
patterns-inner-hollow = a hollow
patterns-inner-is-solid = The solid inside is solid
patterns-inner-is-hollow = A hollow was meant
edit-patterns-pair = make a pair
edit-patterns-inner = say what the solid inside is
patterns-notes = Notes
patterns-remove = Take this pattern out
patterns-waits = being read
patterns-both = weighed, and from its file
patterns-weighed = weighed
patterns-file = from its file
patterns-neither = neither weight nor file
edit-patterns-add = add a pattern
edit-patterns-name = name a pattern
edit-patterns-material = choose a pattern's material
edit-patterns-weight = weigh a pattern
edit-patterns-path = choose a pattern's file
edit-patterns-unit = say the file's unit
edit-patterns-scale = scale the print
edit-patterns-section = choose a section
edit-patterns-thinnest = measure the thinnest wall
edit-patterns-extents = measure a pattern
edit-patterns-making = time the making
edit-patterns-mould = name the mould
edit-patterns-notes = write a note on a pattern
edit-patterns-remove = take a pattern out

orders-take-on = Take on pieces from another job
orders-take-on-says = Pieces that wait in an order book come over with their size, pattern and date, and know where they came from.
orders-take-on-path = Its file
orders-take-on-no-folder = Save this batch first, so that the other job can be found beside it.
orders-take-on-itself = That is this batch itself.
orders-take-on-how-many = How many of
orders-take-on-of = of { $count }
orders-take-on-do = Take on
orders-take-on-none = No piece there is left to take on.
edit-orders-take-on = take on pieces

orders-single-pieces = Single pieces
orders-pieces-says = Type a piece’s number to say what differs for it. The others stay as the line says.
orders-piece = Number of the piece
orders-piece-name = Piece { $number }
orders-piece-cancelled = No longer wanted
orders-piece-irreplaceable = Cannot be made again
orders-piece-from = taken on from another job
orders-piece-remake = made again after a reject
orders-piece-like-others = Make it like the others
edit-orders-piece-size = give a piece its own size
edit-orders-piece-pattern = give a piece its own pattern
edit-orders-piece-cancelled = cancel a piece
edit-orders-piece-irreplaceable = say a piece cannot be made again
edit-orders-piece-notes = notes on a piece
edit-orders-piece-like-others = make a piece like the others

# The batch itself.
batch-about = This batch
batch-name = Name of the batch
batch-made = Made on
batch-notes = Remarks
edit-batch-name = name the batch
edit-batch-made = say when the batch was made
edit-batch-notes = write a remark on the batch

# What a pattern's file looks like
patterns-walls = Walls, by its file
patterns-walls-thinnest = Thinnest
patterns-walls-typical = Typical
patterns-walls-heaviest = Heaviest
patterns-walls-close = Its walls are { $thinnest } at the thinnest, { $typical } mostly, { $heaviest } at the heaviest, by a close look. With so many triangles they are not among the figures.
patterns-walls-says = Surface by the thickness of the wall under it
patterns-walls-under = { $share } of the surface stands over walls under { $least }.
patterns-walls-none-under = No wall is under { $least }.
patterns-pin-thinnest = thinnest { $wall }
patterns-pin-typical = typical { $wall }
patterns-pin-heaviest = heaviest { $wall }
patterns-pin-sprue = sprue
patterns-heavy-pins = The numbers stand on the form. The one chosen is filled.
patterns-walls-take = Take the thinnest wall for its section ({ $section })
mend-title = What could be mended
mend-repeats = { $count ->
        [one] One triangle stands in the file again and would be left out.
       *[other] { $count } triangles stand in the file again and would be left out.
    }
mend-no-area = { $count ->
        [one] One triangle without area would be left out.
       *[other] { $count } triangles without area would be left out.
    }
mend-seams = { $count ->
        [one] One corner would be brought to its neighbour, at most { $gap } away.
       *[other] { $count } corners would be brought to their neighbours, at most { $gap } away.
    }
mend-turned = { $count ->
        [one] One triangle would be turned to agree with its neighbours.
       *[other] { $count } triangles would be turned to agree with their neighbours.
    }
mend-inside-out = { $count ->
        [one] One triangle would be turned to face outward.
       *[other] { $count } triangles would be turned to face outward.
    }
mend-closed = { $count ->
        [one] One hole would be closed with { $triangles } triangles, { $area } in all. Was it meant as an opening? Then it must stay.
       *[other] { $count } holes would be closed with { $triangles } triangles, { $area } in all. Was one meant as an opening? Then it must stay.
    }
mend-gives = Mended, it fills { $after }; as it is, it has no volume.
mend-moves = Mended, it fills { $after } instead of { $before }, which is { $by } more or less.
mend-do = Write a mended file and use it
edit-mend = mended file used
mend-failed = The mended file could not be written ({ $why }). Nothing was changed.
mend-done = The mended file is { $file }. The one it was made from lies where it was.
patterns-form-name = Form of { $pattern }
patterns-looking = Being looked at closely
patterns-colouring = Coloured
patterns-key-under = under { $least }
patterns-key-says = Colours: under { $least } as too thin, then from { $from } to { $to }
patterns-key-places = Places painted
patterns-key-texture = texture
patterns-key-seat = seat
patterns-key-mark = mark
patterns-colour-plain = plain
patterns-colour-walls = by its walls
patterns-no-sprue-texture = no sprue, texture
patterns-no-sprue-seat = no sprue, seat
patterns-no-sprue-mark = no sprue, mark
patterns-no-sprue-how = A click paints a place where no sprue may stand; a click on a painted place wipes it off. With keys, Space paints the middle of the picture.
patterns-brush = Radius of a click
patterns-facts = { $size }, { $triangles ->
        [one] one triangle
       *[other] { $triangles } triangles
    } in { $shells ->
        [one] one piece
       *[other] { $shells } pieces
    }
edit-patterns-no-sprue = place without a sprue
patterns-heavy = Where it is heaviest
patterns-heavy-place = { $number }. A ball of { $ball } fits there; volume over surface around it is { $modulus }.
patterns-heavy-unknown = not known
patterns-heavy-take = Sprue at place { $number }
patterns-heavy-here = The sprue is to stand here.
patterns-heavy-none = No sprue may stand near it.
edit-patterns-sprue = where the sprue stands

# From the finished measure back to the slicer.
orders-back = Size, back to the slicer
orders-back-bore = The ring’s bore
orders-back-along = Along { $axis }
orders-back-needs = With a pattern and an alloy the way back to the slicer is worked out here.
orders-band = Band width
orders-comfort = Comfort fit, the inside rounded
orders-comfort-larger = It wears larger by
orders-opens = Finishing opens it by
orders-finished-says = For pieces that are no rings: the outer size they are to have when finished, along the axes of the pattern’s file.
orders-finished-x = Finished along x
orders-finished-y = Finished along y
orders-finished-z = Finished along z
orders-takes = Finishing takes off
orders-finished = Finished
orders-finished-bore = Finished bore
orders-within = Charts differ by ±
orders-within-sizes = ± of one size
orders-as-cast = As cast
orders-on-pattern = On the pattern
orders-on-print = On print or master
orders-typed = For the slicer
orders-typed-within = ± of it, by charts
orders-file-scale = Scale of the file
edit-orders-fit = say how it is to fit
patterns-file-bore = Bore in the file
patterns-implied-density = Density by its file
patterns-pieces = Pieces wanted
patterns-shots = Shots
patterns-shrink = Shrinkage to the wax
patterns-wax = Wax for the shots
patterns-wax-at = Wax when it is shot
patterns-pressure = Injection pressure
edit-patterns-file-bore = say the file’s bore

## The board
stage-pieces = Pieces
rail-board = where each one is
pieces-empty = Nothing is ordered yet.
pieces-first = Every piece that is ordered is followed here, from the print to the client.
pieces-search = Client, design, stage, flask, alloy
pieces-late = late, or going to be
pieces-settled = delivered and remade ones too
pieces-everywhere = all jobs of this folder
pieces-count = { $all } pieces, { $shown } shown. { $late } late or going to be, { $done } settled.
pieces-none = No piece answers that.
pieces-piece = piece
pieces-client = client
pieces-due = due
pieces-stage = how far
pieces-where = where
pieces-tick-all = tick all that are shown
pieces-tick-none = tick none
pieces-tick = Tick pieces to move them on, send them out or see what happened to one.
pieces-chosen = { $count } pieces
pieces-late-by = { $days ->
    [one] a day late
   *[other] { $days } days late
}
pieces-cast-late = cast too late
pieces-remade = rejected, remade
pieces-rejected = rejected, { $defect }
pieces-ordered = ordered
pieces-somebody = somebody
pieces-out-to = with { $to }
pieces-promised = promised for { $on }
pieces-failed-at = failed at { $purpose }
pieces-remake-of = in place of { $number }
pieces-reached = Now
pieces-reached-do = Write it down
pieces-defect = Rejected for
pieces-reject-do = Reject
pieces-remake-do = Make it again
pieces-remake-says = Another piece of the line takes its place. The client pays for the first alone.
pieces-irreplaceable = This piece cannot be made again. Tell the client.
pieces-history = What happened to it
pieces-no-history = The record tells nothing of it yet.
pieces-send = Send out of the house
pieces-out-for = For
pieces-out-whom = To whom
pieces-carrier = Carrier and parcel
pieces-promised-on = Promised back
pieces-weight = Weight together
pieces-send-do = They are out
pieces-back = { $count ->
    [one] Take it back
   *[other] Take { $count } back
}
pieces-weight-back = Weight together
pieces-failed = failed there, { $piece }
pieces-back-do = They are back
pieces-others = Other jobs of the folder
pieces-no-folder = Save this batch first: its folder is where the other jobs lie.
pieces-others-count = { $open } open pieces in { $jobs } jobs. { $settled } jobs are settled.
pieces-broken = { $file } could not be read and is left out. { $why }
pieces-look-again = Look again
pieces-open-job = Open { $job }
edit-pieces-reached = a stage of pieces
edit-pieces-remake = a remake
edit-pieces-send = pieces sent out
edit-pieces-back = pieces back
event-pieces = { $count } pieces
event-kiln-in = { $load } went into the kiln
event-kiln-out = { $load } came out of the kiln
event-sent-out = { $what } went out to { $to }, for { $purpose }
event-came-back = { $failed ->
    [0] { $what } came back
    [one] { $what } came back, one of them failed
   *[other] { $what } came back, { $failed } of them failed
}
event-timed = { $step }, { $of }: took { $took }
bench-over = TIME
edit-bench-timed = a step that was timed

## What was really done
done-what = measured
done-planned = planned then
done-done = done
done-unusual = unusual
done-powder = Powder
done-water = Water
done-ratio = Water to powder
done-water-c = Water at
done-room = Room at
done-vacuum = Vacuum
done-gloss-off = Gloss-off after
done-metal = Metal at
done-mould = Mould at
done-charge = Charge
done-quench = Quenched after
done-lot = Powder of lot { $said }.
done-scale = Weighed on { $said }.
invest-record = What was really mixed
invest-really-lot = Powder lot
invest-really-scale = Scale
invest-really-powder = Powder weighed
invest-really-water = Water weighed
invest-really-water-c = Water really at
invest-really-room = Room really at
invest-really-gloss-off = Gloss-off after
invest-really-vacuum = Gauge read
invest-mark = It is invested
invest-record-says = The plan as it stands now goes into the record with it, and its pieces move on.
invest-done = Invested, { $at }.
edit-invest-mark = a flask invested
heat-record = In and out of the kiln
heat-went-in = It is in the kiln
heat-came-out = It is out, burnt out
heat-is-in = In the kiln since { $at }.
heat-is-out = Out since { $at }.
edit-heat-kiln = a load in or out

## Orders from a table
orders-from-table = Take orders in from a table
from-table-says = A table as a spreadsheet writes it: one row a line of an order. Nothing is taken in before it was looked at.
from-table-path = Table, by path
from-table-column = Column { $number }
from-table-is = { $column } is
from-table-client = Client of them all
from-table-one-each = No column says how many: each row is one piece.
from-table-asks = What the table does not say
from-table-day-first = the day stands first
from-table-month-first = the month stands first
from-table-point = a point before the decimals
from-table-comma = a comma before the decimals
from-table-line = line { $line }
from-table-count = { $ready } rows can be taken in, { $bad } cannot.
from-table-without-bad = { $count ->
    [one] Leave out the row that cannot be read
   *[other] Leave out the { $count } rows that cannot be read
}
from-table-with-repeats = { $count ->
    [one] Take the repeated row too
   *[other] Take the { $count } repeated rows too
}
from-table-take = { $lines ->
    [one] Take one line in
   *[other] Take { $lines } lines in, { $orders ->
        [one] one order
       *[other] { $orders } orders
    }
}
edit-orders-from-table = orders from a table
table-role-client = client
table-role-design = design
table-role-quantity = how many
table-role-alloy = alloy
table-role-size = size
table-role-due = due
table-role-taken = ordered on
table-role-reference = order number
table-role-price = price
table-role-notes = remarks
table-role-file = file of the pattern
table-role-ignored = nothing of use
table-row-no-client = Nobody is named.
table-row-no-design = No design is named.
table-row-no-quantity = It does not say how many.
table-row-no-number = “{ $cell }” is no number.
table-row-two-numbers = “{ $cell }” may be { $one } or { $other }.
table-row-not-whole = “{ $cell }” pieces are no whole number.
table-row-zero = It asks for no piece.
table-row-negative = “{ $cell }” pieces are fewer than none.
table-row-too-many = “{ $cell }” pieces are more than { $most }.
table-row-no-alloy = No alloy is called “{ $cell }”.
table-row-several-alloys = “{ $cell }” may be { $alloys }.
table-row-no-date = “{ $cell }” is no date.
table-row-two-dates = “{ $cell }” may be { $one } or { $other }.
table-row-due-before = Due { $due }, before it was ordered on { $taken }.
table-row-price = “{ $cell }” is less than nothing.
table-row-size = “{ $cell }” is no size; spreadsheets turn some into dates.
table-row-cells = { $cells } cells, where the table has { $columns } columns: a separator within a cell wants quotes.
table-row-fault = The spreadsheet could not work out “{ $cell }”.
table-row-long = “{ $cell }” is longer than { $most } signs.
table-row-repeat = The same stands on line { $line }.
table-row-due-past = Was due before today.
table-row-due-far = Due in more than two years.
table-row-taken-later = Ordered after today.
