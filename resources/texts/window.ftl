## The window: its frame, what can be done, and the house's widgets.

stage-start = Tree on the scale
stage-orders = Orders
stage-patterns = Waxes and prints
stage-trees = Trees
stage-flasks = Flasks
stage-investment = Investment
stage-burnout = Burnout
stage-metal = Metal
stage-pour = Pour
stage-finish = Finish
stage-quotes = Quotes
stage-paper = Paper
stage-record = Record
stage-settings = Studio and window
stage-gallery = Widgets

do-new = New batch
do-open = Open a batch…
do-open-sample = Open the sample
do-save = Save
do-save-as = Save as…
do-undo = Undo
do-undo-what = Undo { $what }
do-redo = Redo
do-redo-what = Redo { $what }
do-find = Find
do-next-page = Next page
do-page-before = Page before
do-bench = Bench view
do-what-now = What now
do-working = Working pane
do-findings = Findings
do-sheet = Bench sheets on paper
do-kiln-sheet = Kiln sheets on paper
do-quote = Quotes on paper
do-slip = Order slips on paper
do-receipt = Metal receipts on paper
do-what-now-paper = What-now cards on paper
do-theme = Day or evening
do-units = Metric or trade units
do-larger = Larger type
do-smaller = Smaller type
do-quit = Quit
do-show = show
do-answer = answer for it…
do-browse = Look for it…
do-close = Close
do-cancel = Cancel
do-save-and-close = Save and close
do-close-unsaved = Close without saving
do-recover = Take up where it stopped
do-discard = Leave it out
do-recover-apart = Take up as a batch of its own
do-recover-over = Take up in its place
do-later = Ask again next time
do-menu = Batch

top-saved = saved
top-changed = not saved yet
top-never-saved = not saved anywhere yet
top-read-only = from a newer version, read only
top-untitled = Batch without a name
top-find-hint = Find a piece, a figure, an action

rail-pieces = { $pieces ->
        [one] one piece
       *[other] { $pieces } pieces
    }, { $clients ->
        [one] one client
       *[other] { $clients } clients
    }
rail-patterns = { $count ->
        [one] one pattern
       *[other] { $count } patterns
    }
rail-trees = { $count ->
        [one] one tree
       *[other] { $count } trees
    }
rail-flasks = { $count ->
        [one] one flask
       *[other] { $count } flasks
    }
rail-quotes = { $count ->
        [one] one client
       *[other] { $count } clients
    }
rail-record = { $count ->
        [0] nothing yet
        [one] one entry
       *[other] { $count } entries
    }
rail-powder = { $what } powder
rail-pour = pour { $at }
rail-charge = { $what } to charge
rail-poured = { $poured } of { $all } poured
rail-weighed = { $weighed } of { $all } weighed
rail-nothing = nothing yet
rail-start = six entries
rail-settings = prices, hands, shelf

working-title = Working
working-none = Choose a figure to see how it comes about.
working-rule = Rule
working-numbers = In numbers
working-terms = Terms
working-source = Source
working-used-by = Used by
working-used-by-none = Nothing else rests on it.
working-fails = Missing
working-entered = Typed in this batch.
working-studio = From the studio's file.
working-measured = Measured from the pattern's file.
working-laid-out = Found by laying the parts on plates, deepest first. It is a plan, and perhaps not the fewest plates; the least there could be stands beside it.
working-run = Read off the heat of the mould, computed at this conductivity.
working-shelf = From the shelf, { $entry }.
working-default = A default nobody confirmed yet.
working-constant = A constant.
working-absent = Not there yet.
working-what-if = What if
working-what-if-hint = Other numbers here change nothing in the batch.
working-would-be = It would be
working-more = and { $count } more

findings-none = Nothing to say
findings-title = Findings
findings-stop = { $count ->
        [one] 1 Stop
       *[other] { $count } Stops
    }
findings-caution = { $count ->
        [one] 1 Caution
       *[other] { $count } Cautions
    }
findings-note = { $count ->
        [one] 1 Note
       *[other] { $count } Notes
    }
findings-faults = Left out
do-stop-reading = Stop
reading-stopped = its reading was stopped; look for pattern files again to go on
findings-reading-left = { $seconds ->
        [one] about one second left
       *[other] about { $seconds } seconds left
    }
findings-reading = Reading patterns, { $read } of { $all }
findings-unit-metric = mm g °C
findings-unit-trade = in dwt °F
findings-light = light
findings-dark = dark
finding-answered = { $hands } answers for it, { $reason }

finder-nothing = Nothing here is called that.
finder-piece = piece
finder-pattern = pattern
finder-tree = tree
finder-flask = flask
finder-figure = figure
finder-action = action
finder-page = page
finder-card = card

choice-none = choose
choice-nothing = none
choice-unknown = not here any more
choice-typed = Looking for “{ $typed }”
choice-no-such = None is called so.
entry-day-form = Write the day as 2026-12-20.

close-title = This batch is not saved
close-says = What you changed since { $since } would be lost. The file on the disk is as it was.
close-since-open = it was opened
sign-title = Answer for a finding
sign-hands = Who
sign-reason = Why
sign-master = Only a master signs for a Stop. Add a master to the studio's hands first.
sign-says = The reason prints on the bench sheet. If it gets worse than now, the finding comes back.
sign-do = Sign
sign-no-reason = Write down why.
edit-sign = sign for a finding
open-title = Open a batch
open-path = File
open-recent = Opened lately
open-failed = It could not be opened. { $why }
save-title = Save as
save-failed = { $why }
save-hint = A path such as /home/studio/jobs/tide-pool.ron
sheet-written = Written to { $path }
recover-title = Work that was not saved
recover-says = When Pourbook last stopped, “{ $name }” had changes that were not saved, of { $at }. The file itself is whole.
recover-says-studio = When Pourbook last stopped, the studio “{ $name }” had changes that were not saved, of { $at }. The file itself is whole.
recover-changed = The file was saved by somebody else after this work began. Taken up as a batch of its own, both stay.
recover-in-file = in the file
recover-aside = set aside
recover-other = changed
recover-signed = Signed findings
recover-copies = Copies off the shelf
recover-differs = { $count ->
        [one] One part of it differs from the file.
       *[other] { $count } parts of it differ from the file.
    }
recorded-stays = The record or a quote tells of it, so it stays. A piece that is not wanted any more is said so under single pieces.
message-close = Put this message away
name-flask = Flask { $name }
name-tree = Tree { $name }
name-pattern = Pattern { $name }
place-job = this batch
place-studio = the studio
place-order = order { $number }, { $name }
place-piece = { $name }, piece { $number }
place-row = { $name }, row { $number }
place-mix = { $name }, mix { $number }
place-stage = { $name }, stage { $number }
place-quote = quote { $number }
place-record = entry { $number } of the record
edit-drop-pattern = add pattern files

## Tree on the scale.

start-says = Six entries to charge, mix and kiln start. Everything else can wait.
start-several = The batch at a glance
start-alloy = alloy
start-vessel = flask
start-base = base
start-weight = tree and base on the scale
start-tare = base alone
start-material = pattern material
start-pour-at = pour at
start-investment = powder
start-charge = charge
start-powder = powder
start-water = water
start-kiln = kiln on
start-button = button { $what }
start-finish = at rest by { $what }
start-water-at = at { $what }
start-invested = invested by { $what }
edit-alloy = choose an alloy
edit-vessel = choose a flask
edit-base = choose a base
edit-tree-weight = weigh the tree
edit-tare = weigh the base
edit-material = choose a pattern material
edit-pour-at = set the time of the pour
edit-powder = choose a powder
start-more = weighed beside it
start-more-parts = { $count ->
        [one] one more material
       *[other] { $count } more materials
    }
do-open-last = Open the last batch
do-help = What can be done, and the keys
help-enter = In a field, Enter takes what is written and moves down.
help-tab = Tab takes it and moves on.
help-escape = Escape puts back what stood there.
help-space = Where a default stands in lighter ink, Space takes it.
help-choice = On a list of choices, letters look through it, arrows go along it, Enter takes one.
help-figure = On a figure, Enter leads to its working.
help-units = Any unit of the kind may be typed, with a comma or a point, and simple sums such as 61.34-59.18.
edit-studio-of-folder = take the studio of the folder
do-look-again = Look for pattern files again

## What now

cards-choose = People first, then metal. What is wrong? Press its figure, or Enter on it.
cards-key-leave = Esc back to the work
cards-key-list = Esc all cards
cards-key-before = ← card before
cards-key-next = → next card
bench-key-what-now = F2 what now

## Paper

rail-paper = bench, kiln, clients
paper-under = as it is printed
paper-first = What stands in the batch is laid out here page by page as soon as there is some of it.
paper-sort = What
paper-for = Whose
paper-dress = How
paper-format = Paper
paper-a4 = A4
paper-letter = Letter
paper-language = Language
paper-units = Units
paper-metric = mm, g, °C
paper-trade = in, dwt, °F
paper-mark = Decimal mark
paper-point = point
paper-comma = comma
paper-print = Print
paper-viewer = Open in the viewer
paper-pdf = Save as PDF
paper-text = Save as text
paper-all = All { $count } as PDFs
paper-before = Page before
paper-next = Next page
paper-wide = As wide as the window
paper-whole = Whole page
paper-says = { $title }, page { $page } of { $pages }
paper-pending = Pattern files are still being read. Until then the page says in a figure's place that it is not known yet.
paper-goes-out = This leaves the house. Nothing of another client stands on it. Read it before it goes.
paper-printed = Sent to the printer.
paper-no-printer = No way to the printer was found ({ $why }). Open it in the viewer, and print from there.
paper-no-viewer = No viewer took it ({ $why }). It lies at { $path }
paper-opened = Opened from { $path }
paper-failed = This cannot be printed ({ $why }).

# Pattern files on their way in
do-ask-patterns = Add pattern files…
do-add-patterns = Add
add-patterns-title = Add pattern files
add-patterns-says = STL, OBJ, PLY or 3MF. Several at once can be looked for, or dropped on the window.
add-patterns-hint = path of a file
add-patterns-filter = Pattern files
add-patterns-not = { $file } is no pattern file. STL, OBJ, PLY and 3MF are read.
add-patterns-failed = A file could not be copied beside the batch ({ $why }). Nothing else was changed.
outside-add-title = These files lie outside the batch's folder
outside-add-says = They are in { $folder }. Copied beside the batch, they travel with it and stay as they are. Left where they are, they are read there from now on.
outside-copy = Copy beside the batch
outside-leave = Leave them there
outside-read-title = This batch names files outside its folder
outside-read-says = They are in { $folder }. They are only measured. A batch from somebody else has no need to look there; your own may.
outside-allow = Read them, now and later
outside-refuse = Do not read them
outside-more = { $count ->
        [one] and one more
       *[other] and { $count } more
    }
edit-patterns-take-file = file taken as it is now
patterns-take-file = Take it as it is now
