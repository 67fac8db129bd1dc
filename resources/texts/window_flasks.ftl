## Trees.

trees-about = what hangs where, and what the scale says
trees-what = A tree holds the pieces of one flask: which pieces, on which sprues, and what the whole weighs.
trees-first = Add a tree, then hang pieces on it or write down what the scale says.
trees-add = Add a tree
trees-remove = Remove this tree
trees-in-no-flask = in no flask
trees-name = Name
trees-base = Base
trees-base-number = Number on the base
trees-pieces = Pieces hung
trees-pieces-none = Nothing hangs on this tree yet.
trees-no-lines = There are no orders yet, so there is nothing to hang. A tree that was weighed needs none.
trees-hang = Hang a line
trees-hang-rest = Hang everything of its alloy that hangs nowhere yet
trees-line = line
trees-line-words = { $design }, { $client }, { $count }
trees-numbers = which pieces
trees-numbers-all = all
trees-numbers-form = { $most ->
        [one] This line has one piece. Write 1, or leave it empty.
       *[other] Write numbers from 1 to { $most } such as 1-3, 5, or leave it empty for all of them.
    }
trees-tier = tier
trees-around = direction
trees-take-off = take off
trees-take-off-what = Take { $what } off this tree
trees-weighed = On the scale
trees-weighed-none = Not weighed. The volume comes from patterns and sprues until it is.
trees-weigh = Add a weighing
trees-material = Material
trees-weight = On the scale
trees-way = What was on the scale
trees-gross = with its base
trees-net = without base
trees-tare = Base alone
trees-scale = Scale
trees-part-net = Weight
trees-part-volume = Volume
trees-part-remove = remove
trees-part-take-out = Take out weighing
trees-part-unsaid = (material not said)
trees-main = Main sprue
trees-main-diameter = Diameter
trees-main-length = Length above the dome
trees-sprues = Feed sprues
trees-sprues-none = No feed sprues yet. Equal ones go into one run.
trees-sprue-add = Add a run
trees-sprue-count = Count
trees-sprue-diameter = Diameter
trees-sprue-length = Length
trees-sprue-angle = Angle
trees-sprue-remove = remove
trees-sprue-take-out = Take out run
trees-sprue-material = Sprue material
trees-outer = Measured with the ruler
trees-diameter = Diameter
trees-height = Height above the base
trees-diameter-unknown = The diameter is not known. Measure it, or say the main sprue, the feed sprues and the sizes of the patterns.
trees-height-unknown = The height is not known. Measure it, or choose the base and say the sprues and the sizes of the patterns.
trees-from-scale = From the scale
trees-from-patterns = From patterns and sprues
trees-volume = Volume
trees-parts = Part by part
trees-parts-more = and { $count } more
trees-notes = Notes

edit-trees-add = add a tree
edit-trees-remove = remove a tree
edit-trees-name = name a tree
edit-trees-base = choose a tree’s base
edit-trees-base-number = number a tree’s base
edit-trees-outer = measure a tree
edit-trees-notes = notes on a tree
edit-trees-hang = hang a line
edit-trees-hang-rest = hang what hangs nowhere
edit-trees-line = hang another line
edit-trees-numbers = say which pieces hang
edit-trees-tier = choose a tier
edit-trees-around = turn a piece around the sprue
edit-trees-take-off = take a line off a tree
edit-trees-weigh = add a weighing
edit-trees-material = choose a weighed material
edit-trees-part-weight = weigh a material
edit-trees-scale = name the scale
edit-trees-part-remove = remove a weighing
edit-trees-main-material = choose the main sprue’s material
edit-trees-main-diameter = measure the main sprue’s diameter
edit-trees-main-length = measure the main sprue’s length
edit-trees-sprue-add = add a run of sprues
edit-trees-sprue-remove = remove a run of sprues
edit-trees-run-material = choose a run’s material
edit-trees-run-count = count a run’s sprues
edit-trees-run-diameter = measure a run’s diameter
edit-trees-run-length = measure a run’s length
edit-trees-run-angle = set a run’s angle

## Flasks.

flasks-about = tree, steel, metal, room
flasks-what = A flask is one tree in one steel cylinder, with its powder, its place in the kiln and its metal.
flasks-first = Add a flask. It comes with a tree and a kiln load where there is none yet.
flasks-add = Add a flask
flasks-remove = Remove this flask
flasks-size = Ø { $size }
flasks-no-vessel = steel not chosen
flasks-no-alloy = alloy not known
flasks-scratch = Number on its face
flasks-vessel = Steel
flasks-tree = Tree
flasks-alloy = Alloy if no piece says
flasks-collar = Collar
flasks-load = Kiln load
flasks-melt = Melt
flasks-melt-own = of its own
flasks-metal = Metal
flasks-tree-metal = In place of the tree
flasks-button = Button
flasks-charge = To charge
flasks-button-least = Button at least
flasks-button-share = Or share of the tree
flasks-reserve = Reserve
flasks-loss = Melt loss
flasks-room = Room
flasks-wall = To the wall
flasks-wall-needed = Needed there
flasks-above = Beyond the tree
flasks-above-needed = Needed there
flasks-pour = At the pour
flasks-section = Section
flasks-turn = Turn
flasks-drive = Drive
flasks-notes = Notes
flasks-missing-vessel = The room around the tree is not known until the steel is chosen.
flasks-missing-tree = The room around the tree is not known until a tree is chosen.
flasks-missing-both = The tree’s diameter and height are not known. Measure them on the Trees page.
flasks-missing-diameter = The tree’s diameter is not known. Measure it on the Trees page.
flasks-missing-height = The tree’s height is not known. Measure it on the Trees page.
flasks-missing-number = A measure of the tree is missing. Its row on the Trees page says which.
flasks-drawing-no-vessel = Choose the steel, and the flask is drawn here to scale.
flasks-section-to-scale = section, to scale
flasks-above-to-scale = from the far end, to scale
flasks-drawing-unknown = not known
flasks-drawing-says = Drawing of { $flask }, { $size }, { $count ->
        [one] one piece
       *[other] { $count } pieces
    } drawn. Room to the wall { $wall }, beyond the tree { $above }.
flasks-drawing-above = Drawing of { $flask } seen from the far end.
flasks-drawing-outline = Only the tree’s outline is drawn. Say its main sprue on the Trees page, and its pieces are drawn too.
flasks-drawing-spread = Pieces without a tier or a direction of their own are spread evenly.
flasks-drawing-more = { $count ->
        [one] One more piece is not drawn.
       *[other] { $count } more pieces are not drawn.
    }
flasks-key = { $place } order { $order }, { $client }

edit-flasks-add = add a flask
edit-flasks-remove = remove a flask
edit-flasks-scratch = number a flask’s face
edit-flasks-vessel = choose a flask’s steel
edit-flasks-tree = choose a flask’s tree
edit-flasks-alloy = choose a flask’s alloy
edit-flasks-collar = set a collar
edit-flasks-load = choose a kiln load
edit-flasks-melt = choose a melt
edit-flasks-button = set the button
edit-flasks-reserve = set the reserve
edit-flasks-loss = set the melt loss
edit-flasks-section = choose the section
edit-flasks-turn = set the turn
edit-flasks-drive = choose the drive
edit-flasks-notes = notes on a flask

## Investment.

invest-about = powder, water, clock, vacuum
invest-what = Here each flask’s powder and water are weighed, and its mix runs by the clock.
invest-powder = Powder
invest-lot = Lot
invest-ratio = Water to powder
invest-spill = For spill
invest-bowl = Bowl
invest-water-at = Water at
invest-weigh = To weigh out
invest-water = Water
invest-mixes = Mixes
invest-powder-each = Powder each
invest-water-each = Water each
invest-slurry = Slurry
invest-density = Density of the slurry
invest-clock = From powder in the water
invest-takes = takes
invest-over = over at
invest-step-mix = Mix
invest-step-bowl = Vacuum, bowl
invest-step-pour = Fill
invest-step-flask = Vacuum, flask
invest-finish = At rest by
invest-by = Start to mix by
invest-invested = Invested by
invest-no-load = The clock of the day follows once the flask has a kiln load with a time to pour.
invest-vacuum = Vacuum
invest-gauge = Gauge
invest-gauge-other = On the other gauge
invest-gauge-says = Here the water boils at this reading. A pump that does not reach it leaves air in.
invest-mind = Mind

edit-invest-powder = choose a flask’s powder
edit-invest-lot = name the powder’s lot
edit-invest-ratio = set water to powder
edit-invest-spill = set what is mixed for spill
edit-invest-bowl = set the bowl
edit-invest-water = set the water’s temperature

flasks-trial = Experiment: something in it is tried for the first time
edit-flasks-trial = call a flask an experiment

# The tree as it stands
trees-standing = As it stands
trees-standing-no-pieces = Once pieces hang on the tree it is drawn here, to scale.
trees-standing-no-main = Once the main sprue's diameter and length are known the tree is drawn here, to scale.
trees-standing-says = The tree as it stands, to scale: { $count } pieces, { $size }.
trees-standing-above-says = The tree from the far end, to scale: { $count } pieces, { $size }.
trees-standing-keys = Take hold of a piece and draw it along; draw beside it to turn the tree. By keys: Page Up and Page Down choose a piece, arrows move it (with Shift a little), T turns it, comma and full stop turn the tree.
trees-standing-guessed = Pieces or sprues whose measures nobody knows are drawn as small blocks. With outer sizes and sprues the room between them is known.
trees-turned = Turned by { $degrees }°
trees-turn-back = To the front
trees-spot = { $height } up, { $degrees }°
trees-spot-near = { $room } to { $other }
trees-joint = Joint over the dome
trees-piece-turn = Turned on its sprue
trees-piece-sprue = Run of sprues
trees-unplace = As its row says
trees-unplace-all = Spread all anew
trees-tier-height = Height of tier
trees-tiers = Heights of the tiers
trees-tiers-what = How high over the dome the sprues of a tier are joined, from the button's end. Tiers are spread evenly where nothing is said.
trees-difference = Scale against parts
edit-trees-move = move a piece
edit-trees-turn = turn a piece on its sprue
edit-trees-piece-sprue = choose a piece's sprue
edit-trees-unplace = let a piece hang as its row says
edit-trees-unplace-all = spread all pieces anew
edit-trees-tiers = set a tier's height
flasks-smallest = The smallest that takes this tree is { $size }.
flasks-smallest-take = take it
flasks-none-takes = No flask on the shelf takes a tree of { $diameter } by { $height } with { $wall } to the wall and room above. Hang fewer pieces, or part the tree.
flasks-none-for-base = No flask that closes with this base takes a tree of { $diameter } by { $height } with { $wall } to the wall and room above. Take another base, or hang fewer pieces.
## The batch plan.

plan-batch = Plan the batch
plan-says = Puts every piece that hangs on no tree into as few flasks as will do, and then into those that take the least investment. Sets and pairs stay together.
plan-open = Hanging nowhere yet
plan-open-of = { $alloy }: { $count ->
        [one] one piece
       *[other] { $count } pieces
    }
plan-open-unknown = { $count ->
        [one] One more piece cannot be planned yet; the plan says why.
       *[other] { $count } more pieces cannot be planned yet; the plan says why.
    }
plan-crucible = Crucible
plan-crucible-largest = None is chosen: for each alloy the largest of the studio’s that may melt it, or of the shelf’s.
plan-kiln = Places in the kiln
plan-kiln-of-load = of the open load’s kiln
plan-kiln-no-matter = do not matter
plan-add = Flasks that are neither weighed nor invested may take more
plan-do = Plan
plan-stop = Stop and keep the best
plan-running = Looking for fewer flasks and less investment
plan-result = The plan
plan-stale = The batch, or what is asked for, has changed since. Plan again.
plan-column-keep = Keep
plan-keep = keep
plan-let-go = let go
plan-build = Build these trees and flasks
edit-plan-build = build the trees and flasks of the plan
trees-arrange = Arrange the pieces
trees-arrange-hold = pieces that have a place of their own stay there
trees-arranging = The pieces are being arranged.
trees-arrange-stop = Stop with the best so far
trees-arrange-stopped = Stopped before the end.
trees-arranged = { $count ->
        [one] The piece hangs with all the room it needs. Move it by hand where you know better, and see what it costs.
       *[other] All { $count } pieces hang with the room they need. Move them by hand where you know better, and see what it costs.
    }
trees-arrange-no-flask = To arrange the pieces, put the tree into a flask whose steel is chosen.
trees-arrange-no-sprue = To arrange the pieces, say a run of sprues with its length; { $piece } has none.
trees-arrange-no-size = To arrange the pieces, their sizes must be known. Give the pattern of { $piece } its outer size or a file.
trees-arrange-fewer = So many pieces are more than any tree of this trade holds.
trees-cost = Off the best
trees-cost-share = { $share } %
trees-cost-of = (heavy pieces too far from the button { $heavy }, thin ones too near to it { $thin }, weight to one side { $balance })
trees-cannot-sizes = Some measure of the tree or its flask cannot be right.
trees-cannot-trunk-long = The main sprue needs a flask { $needs } high, and this one has { $has }.
trees-cannot-trunk-thick = The main sprue needs a flask { $needs } wide, and this one has { $has }.
trees-cannot-wide = However it is turned, { $piece } needs a flask { $needs } wide, and this one has { $has }. Take a wider flask, or a shorter sprue.
trees-cannot-feed = However it is turned, { $piece } keeps { $has } to the main sprue, and { $needs } are needed. Take a longer sprue.
trees-cannot-high = As low as it may be joined, { $piece } needs a flask { $needs } high, and this one has { $has }. Take a higher flask, or a flatter sprue.
trees-cannot-trunk-short = To hang high enough over the base, { $piece } needs a main sprue { $needs } long, and this one has { $has }.
trees-cannot-held = { $piece } does not hang on the main sprue where it is held.
trees-cannot-held-wall = Where it is held, { $piece } has { $has } to the wall, and { $needs } are needed.
trees-cannot-held-near = Where it is held, { $piece } has { $has } to its neighbour, and { $needs } are needed.
trees-cannot-held-ends = What is held leaves { $has } above or below, and { $needs } are needed.
trees-cannot-room = Room was found for { $most } of { $of } pieces; { $piece } is the first without. Take a larger flask, a longer main sprue, or part the tree.
edit-trees-arrange = arrange the pieces of a tree
