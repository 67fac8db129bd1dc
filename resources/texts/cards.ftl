### The cards for when something goes wrong, for window and paper: people first, then metal. Short words, plain orders.

sort-what-now = What-now cards
what-now-none = No card to print.
card-first = First: { $first }
card-do = Do this, in this order
card-never = Do not
card-help = Call for help
card-facts = In this batch
card-number = Emergency number
card-address = Address of this place
card-source-trade = Source: common practice of the trade and of first aid, no published source.
card-source-kiln-off = Source: common practice of the trade, no published source. The temperatures at which cristobalite turns back are from memory.
card-source-kiln-over = Source: common practice of the trade, no published source. The ceilings stand on the shelf with their sources.
card-source-fume = Source: what poison centres say of carbon monoxide (NC Poison Control, Poison Help of the HRSA). The rest is common practice.
card-source-burn = Source: first aid for burns as North Bristol NHS Trust teaches it, which cools for 10 to 30 minutes. The rest is common first-aid practice.
card-more = { $list } and { $count } more
card-load = { $load }, flasks { $flasks }
card-load-empty = { $load }, no flask in it
card-ceiling = { $powder }, not above
card-ceiling-stones = { $powder } with stones, not above
card-ceiling-value = { $stop }, planned up to { $planned }
card-metal = { $alloy }, poured at
card-by-weight = Poured by their own weight
card-more-facts = And { $count ->
        [one] one more
       *[other] { $count } more
    }, see the bench sheet

## Kiln off

card-kiln-off-title = Kiln off
card-kiln-off-first = The hood is off too. Open the doors to the air, and leave if it smells of smoke or a head aches.
card-kiln-off-1 = Leave the kiln door shut.
card-kiln-off-2 = Write down the time and the last reading.
card-kiln-off-3 = Switch the kiln off, so that it does not start alone. Shut its gas.
card-kiln-off-4 = When power is back: hood on first, then read the kiln. Write down time and reading.
card-kiln-off-5 = Find out how cold the coldest corner of a mould became. From { $from } down to { $to } its cristobalite turns back and shrinks.
card-kiln-off-6 = Stayed hotter, or never was so hot: go on soon, slowly.
card-kiln-off-7 = Fell below: take the mould for cracked. Do not pour it.
card-kiln-off-never-1 = Do not open the door to look.
card-kiln-off-never-2 = Do not heat fast to catch up.
card-kiln-off-never-3 = No generator, no open burner indoors.
card-kiln-off-help = Smoke, smell of gas or a headache: out, and the emergency number. Fuses, wiring and gas: a licensed trade.

## Kiln over temperature

card-kiln-over-title = Kiln too hot
card-kiln-over-first = Everybody back from the kiln, hood on, doors to the open air.
card-kiln-over-1 = Power off at the main switch, gas shut. The controller may be what failed.
card-kiln-over-2 = Leave the door shut: overheated gypsum gives off sulphur gas. The hood stays on.
card-kiln-over-3 = Do not breathe what comes out. Leave the room if it stings.
card-kiln-over-4 = Write down the highest reading and the time.
card-kiln-over-5 = Let the kiln cool shut.
card-kiln-over-6 = A flask that was over its powder’s ceiling is not poured.
card-kiln-over-7 = Find what failed, and try the kiln empty before the next load.
card-kiln-over-never-1 = Do not open the door to cool it.
card-kiln-over-never-2 = Do not trust the controller that let it run away.
card-kiln-over-help = A burning throat, a cough or short breath: out into the air, and the emergency number. Fire: the same. Repairs: a licensed trade.

## Pump dead

card-pump-dead-title = Pump dead, metal liquid
card-pump-dead-first = Nobody hurries. Nobody leans over flask or chamber.
card-pump-dead-1 = Keep the metal in its crucible, in the furnace.
card-pump-dead-2 = Do not pour without vacuum, unless the flask is one that fills by the metal’s own weight.
card-pump-dead-3 = Let air in slowly. Pump off, plug out.
card-pump-dead-4 = Look from outside: plug, fuse, hose, valve, gasket, trap.
card-pump-dead-5 = Vacuum again: see it on the gauge before you pour.
card-pump-dead-6 = No vacuum: metal into a warm, dry ingot mould, or heat off and let it freeze in the crucible.
card-pump-dead-7 = Flask back into the kiln, kept at pouring temperature.
card-pump-dead-never-1 = Do not pour and hope.
card-pump-dead-never-2 = No cold or damp ingot mould.
card-pump-dead-never-3 = No hand in a pump that is hot or has power.
card-pump-dead-help = Smoke from the pump, a smell of burning, or a fuse that goes again: leave it off and call an electrician. Fire: the emergency number.

## Flask leaking

card-flask-leak-title = Flask leaking
card-flask-leak-first = Metal runs out: everybody back. Nobody catches it.
card-flask-leak-1 = Metal: stop the pour. Crucible upright, back into the furnace.
card-flask-leak-2 = Vacuum off, at once.
card-flask-leak-3 = Away. Let the metal freeze where it runs.
card-flask-leak-4 = Touch nothing until it is cold: it burns long after it stops glowing.
card-flask-leak-5 = Pump stays off until plate, hose and trap were looked through, cold.
card-flask-leak-6 = Slurry, while investing: let air in slowly, seal the leak with tape or wax, top up while it flows.
card-flask-leak-7 = Will not seal: empty it, and mix anew. Wipe slurry up wet.
card-flask-leak-never-1 = No hand, no cloth and no water on running metal.
card-flask-leak-never-2 = Do not lift or turn a flask that leaks metal.
card-flask-leak-never-3 = Do not start the pump again to save the casting.
card-flask-leak-help = Something burns and sand does not put it out at once: out, and the emergency number. Metal in pump or wiring: main switch off, an electrician.

## Crucible cracked

card-crucible-title = Crucible cracked
card-crucible-first = Everybody back. The metal may come through at any moment.
card-crucible-1 = Power or gas off. Torch away.
card-crucible-2 = Do not lift it, do not tip it.
card-crucible-3 = Step away, and keep others away.
card-crucible-4 = Let the metal freeze in it, where it stands.
card-crucible-5 = Water-cooled coil: stay well away. Water on liquid metal bursts.
card-crucible-6 = Cold: out with tongs. Look at the furnace’s lining and coil before it is used again.
card-crucible-7 = Break the crucible up, so that nobody melts in it again. Weigh the metal.
card-crucible-never-1 = Do not pour what is left.
card-crucible-never-2 = No water near it.
card-crucible-never-3 = Do not patch it, do not use it once more.
card-crucible-help = Metal in the furnace, in its coil or on a floor that burns: main switch off on the way, everybody out, the emergency number.

## Spill

card-spill-title = Metal spilt
card-spill-first = Everybody away from it. Somebody is burnt: take the card Somebody is burnt.
card-spill-1 = Step back. Say it loud.
card-spill-2 = Heat off, if you reach it without passing the metal.
card-spill-3 = Let it freeze where it lies. No water.
card-spill-4 = It spreads, or something smoulders: dry sand, from a distance.
card-spill-5 = Stay off bare concrete beside it: hot concrete bursts.
card-spill-6 = Pick it up cold, with tongs. It burns long after it stops glowing.
card-spill-7 = Watch the place for an hour. Look under boards and benches.
card-spill-never-1 = No water, no wet cloth, no damp sand.
card-spill-never-2 = Do not step on it or kick it.
card-spill-never-3 = Do not catch what falls.
card-spill-help = A fire that sand or the right extinguisher does not put out at once: everybody out, the emergency number.

## Centrifuge misfire

card-spin-title = Centrifuge misfired
card-spin-first = Everybody out of the plane of the arm. Nobody touches it.
card-spin-1 = Stay out of its plane until it stands still.
card-spin-2 = Power off, torch off, gas shut.
card-spin-3 = Guard and lid stay shut until it stands.
card-spin-4 = Let the metal freeze. Look for splashes that smoulder, in clothes too.
card-spin-5 = Spring still wound: block the arm as its manual says, before any hand goes in.
card-spin-6 = Take out flask and crucible with tongs.
card-spin-7 = Before the next: crucible whole, flask seated, arm balanced, turns counted.
card-spin-never-1 = Do not reach in.
card-spin-never-2 = Do not slow the arm by hand or with a tool.
card-spin-never-3 = Do not look over the guard.
card-spin-help = Somebody was hit or burnt: the emergency number, then the card Somebody is burnt. An eye was hit: the same, even if it seems small.

## Fume alarm

card-fume-title = Fume alarm
card-fume-first = Everybody out into the open air, now. The metal stays.
card-fume-1 = Call out. Take everybody along.
card-fume-2 = Power or gas off only where it lies on the way out.
card-fume-3 = Outside: count heads.
card-fume-4 = Headache, dizzy, sick, sleepy: take it for carbon monoxide. Call the emergency number, even if it gets better outside.
card-fume-5 = Somebody is missing: tell the rescuers. Do not go in.
card-fume-6 = Nobody goes back until the air was measured by those who came.
card-fume-7 = Find the cause before anything is lit: hood, flue, burner.
card-fume-never-1 = Do not go back for metal, flask or telephone.
card-fume-never-2 = Do not silence the alarm and go on.
card-fume-never-3 = Smell of gas: no switch, no flame, call from outside.
card-fume-help = Always, when a head aches, somebody is sick or has fainted. No breath: the emergency number first, then what it tells you. Flue and burner: a licensed trade.

## Burn

card-burn-title = Somebody is burnt
card-burn-first = Away from the heat, flames out. Do not become the next.
card-burn-1 = Cool, running water on the burn for 20 minutes, at once.
card-burn-2 = Somebody else calls for help meanwhile.
card-burn-3 = Rings, watch and loose clothes off, before it swells.
card-burn-4 = What sticks stays: metal, cloth, wax, resin.
card-burn-5 = Cool the burn, keep the person warm.
card-burn-6 = Then lay cling film or a clean, smooth cloth on it, loosely.
card-burn-7 = An eye: rinse on and on with clean water. Stay with the person.
card-burn-never-1 = No ice, no cream, no butter, no powder.
card-burn-never-2 = Do not pull off what sticks.
card-burn-never-3 = Do not open blisters.
card-burn-help = The emergency number for a burn larger than the person’s palm, deep, white or charred; on face, eyes, hands, feet, joints or groin; with fume breathed in; for a child; and when in doubt.
