### The window: every job of the folder.

## All jobs
stage-jobs = All jobs
jobs-empty = This batch lies in no folder yet.
rail-jobs = found and cast again
jobs-looking = The folder is looked through.
jobs-failed = The folder could not be looked through. { $why }
jobs-search = Client, design, alloy, defect, flask, size, lot, job
jobs-from = From the day
jobs-to = To the day
jobs-count = { $jobs ->
    [one] One job in this folder.
   *[other] { $jobs } jobs in this folder.
} { $all ->
    [0] Nothing is found.
    [one] One line is found.
   *[other] { $all } lines are found, { $shown } of them listed.
}
jobs-day = When
jobs-design = Pieces
jobs-client = Client
jobs-alloy = Alloy
jobs-why = Found in
jobs-job = Job
jobs-look = Look at { $what } of { $job }
jobs-begun = begun { $on }
jobs-ordered = ordered { $on }
jobs-planned = planned { $on }
jobs-poured = cast { $on }
jobs-why-defect = rejected for { $what }
jobs-why-size = size { $what }
jobs-why-flask = flask { $what }
jobs-why-tree = tree { $what }
jobs-why-job = { $what }
jobs-why-powder = powder { $what }
jobs-why-kiln = kiln { $what }
jobs-why-lot = lot { $what }
jobs-open = Open this batch
jobs-again = Cast it again
jobs-again-failed = The batch could not be begun again. { $why }
jobs-again-done = A new batch beside the other: { $file }. Dates, lots, weights and everything that happened stayed behind.
jobs-close = Put away
jobs-beside = Beside { $flask } of this batch
jobs-no-flask = There is no flask on both sides to hold against each other.
jobs-differ = { $count ->
    [0] Nothing differs by more than usual.
    [one] One thing differs.
   *[other] { $count } things differ.
}
jobs-what = What
jobs-segments = { $count } segments of its own
jobs-then = then
jobs-now = now
jobs-rejected = { $count ->
    [0] No piece of that flask was rejected.
    [one] One piece of that flask was rejected for { $defects }.
   *[other] { $count } pieces of that flask were rejected for { $defects }.
}
differ-alloy = Alloy
differ-pieces = Pieces on the tree
differ-vessel = Flask
differ-powder = Powder
differ-powder-lot = Lot of the powder
differ-scale = Scale
differ-kiln = Kiln
differ-programme = Burnout
differ-metal-lots = Lots of metal
jobs-last = Same as last time
jobs-last-none = No line of this batch says both its design and its alloy.
jobs-never = { $line } was never cast in this alloy, as far as the folder tells.
jobs-last-cast = { $line } was cast last { $on }, in flask { $flask } of { $job }; { $count ->
    [0] nothing was rejected.
    [one] one piece was rejected for { $defects }.
   *[other] { $count } pieces were rejected for { $defects }.
}
jobs-before = { $count ->
    [one] Once before that.
   *[other] { $count } times before that.
}
jobs-some-day = some day
jobs-what-differed = What differs?
jobs-what-differed-of = What differs, { $line }
jobs-weeks = The weeks ahead
jobs-ahead = { $overdue } pieces are overdue. { $undated } open pieces have no date.
jobs-ahead-none = Nothing else is due, and no pour is planned.
jobs-week = Week from
jobs-due = Pieces due
jobs-uncast = Not cast yet
jobs-flasks = Flasks to pour
jobs-finishing = Finishing
jobs-troubles = What is wrong in the folder
jobs-taken-twice = Piece { $piece } of { $from } was taken on by { $by }. Only one of them can have it: cancel it in the others.
jobs-dangling = Piece { $piece } of { $by } was taken on from a job where it is not.
jobs-twins = { $files } say they are the same job. The first of them counts; save the others under a new batch or move them away.

## Somebody else has the batch
lock-somebody = Somebody
lock-theirs = { $who } has this batch open. What both of you save is kept, but side by side, for one of you to put together.
lock-silent = { $who } had this batch open and has not been heard of for minutes. It was left behind, or its computer is off.
lock-read = Only read
lock-only-read = It is only read here: saving asks for another name.
lock-too = Work on it too
lock-take = Take it over

## After the pour: pieces weighed, measured, repaired; a client's own metal; pictures; tables

pieces-weigh = Weigh it
pieces-weigh-after = weighed after
pieces-weighs = it weighs
edit-pieces-weigh = a piece weighed
pieces-measure = Measure it
pieces-measure-what = what is measured
pieces-measure-model = in the file
pieces-measure-pattern = on the pattern
pieces-measure-cast = on the casting
pieces-measure-finished = on the finished piece
pieces-measure-do = Note what it measures
edit-pieces-measure = a piece measured
pieces-rework = Repaired or sized
pieces-rework-by = how it was done
pieces-rework-taken = metal taken out
pieces-rework-added = metal added
pieces-rework-fineness = fineness of that
pieces-rework-size = its size now
pieces-rework-do = It was repaired
edit-pieces-rework = a repair
rework-laser = welded by laser
rework-solder = soldered
rework-stretch = stretched or compressed
finish-step-cut = cutting off
finish-step-filed = filing
finish-step-tumbled = tumbling
finish-step-polished = polishing
event-piece-filed = Filed and weighed, { $piece }, { $grams }
event-piece-tumbled = Tumbled and weighed, { $piece }, { $grams }
event-measured = Measured, { $piece }, { $what }: { $sizes }
event-measure = { $size } { $where }
event-reworked = Repaired, { $piece }, { $how }
event-taken = { $grams } taken out
event-added = { $grams } added
event-sized = now size { $size }
event-handed-back = { $grams } handed back to { $client }
orders-agreed-loss = Loss agreed
edit-orders-loss = a loss agreed
studio-marking = marks by the law of
edit-studio-marking = the country of the marks
shelf-kind-marking = marking laws
own-metal = Clients' own metal
own-metal-says = What came in, less good castings, less what was handed back, less the loss agreed, in fine grams. Other batches are not in it.
own-metal-of = { $client }, { $metal }
own-metal-deposit = fine metal that came in
own-metal-cast = in good castings
own-metal-returned = handed back
own-metal-loss = loss agreed
own-metal-balance = still held
own-metal-back = Hand metal back
own-metal-client = to client
own-metal-from = metal from
own-metal-grams = handed back, weight
own-metal-do = It was handed back
own-metal-sprues = sprues of { $melt }
own-metal-lot = lot { $lot }, as it came
edit-own-metal = metal handed back
do-account = Metal accounts on paper
do-parcel = Parcel slips on paper
record-picture = picture, by its path
record-picture-open = Show a picture
record-picture-show = Show { $path }
record-picture-none = { $path } is no picture and was not opened.
record-picture-gone = { $path } is not there.
record-pictures = { $count ->
    [one] one picture
   *[other] { $count } pictures
}
paper-tables = Tables for a spreadsheet
paper-tables-says = The whole batch, for the studio alone: clients stand side by side in it.
table-pieces = Pieces as CSV
table-record = Record as CSV
table-programme = Programmes as CSV
table-figures = Figures as CSV
bench-key-meanwhile = ↓ meanwhile
bench-other = { $step }: { $runs }
bench-other-over = Time is over: { $step }
taught-finish-step = Taken by { $step }, { $of }
taught-shrinkage = Shrinkage of { $of }
taught-pattern-shrink = Shrinkage of patterns in { $of }
taught-effect-shrink = The shelf says { $now }, the record { $learned }. With it, castings that weigh 100 g by their files now weigh { $effect } g.
taught-effect-none = The shelf says { $now }, the record { $learned }.
record-undone = taken back
